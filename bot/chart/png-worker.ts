/** Runs in a thread of its own: a picture takes a tenth of a second, in which the assistant must go on listening. */
import { parentPort } from 'node:worker_threads';
import { Resvg } from '@resvg/resvg-js';
import { FONT_FAMILY, FONT_FILES } from './font-files.js';

export interface PngRequest {
  readonly id: number;
  readonly svg: string;
}

export type PngReply = { readonly id: number } & ({ readonly png: Uint8Array } | { readonly fault: string });

function render(svg: string): Uint8Array {
  return new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY } }).render().asPng();
}

parentPort?.on('message', ({ id, svg }: PngRequest) => {
  let reply: PngReply;
  try {
    reply = { id, png: render(svg) };
  } catch (error) {
    reply = { id, fault: error instanceof Error ? error.message : String(error) };
  }
  parentPort?.postMessage(reply);
});
