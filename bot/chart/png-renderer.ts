import type { Worker } from 'node:worker_threads';
import { startThread } from '../threads/start-thread.js';
import type { PngReply, PngRequest } from './png-worker.js';

/** Draws an SVG as a PNG, away from the thread that talks. */
export type RenderPng = (svg: string) => Promise<Buffer>;

export interface PngRenderer {
  readonly renderPng: RenderPng;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly resolve: (png: Buffer) => void;
  readonly reject: (error: Error) => void;
}

const MODULE = new URL(import.meta.url.endsWith('.ts') ? './png-worker.ts' : './png-worker.js', import.meta.url);

/** One worker thread for all pictures, started with the first; it keeps no program alive that has nothing to draw. */
export function pngRenderer(): PngRenderer {
  const waiting = new Map<number, Waiting>();
  let worker: Worker | null = null;
  let lastId = 0;

  function started(): Worker {
    const fresh = startThread(MODULE);
    let fault = new Error('the thread that draws pictures has ended');
    fresh.on('message', (reply: PngReply) => {
      const { resolve, reject } = waiting.get(reply.id)!;
      waiting.delete(reply.id);
      if (waiting.size === 0) fresh.unref();
      if ('png' in reply) resolve(Buffer.from(reply.png));
      else reject(new Error(`the picture could not be drawn: ${reply.fault}`));
    });
    fresh.on('error', (error) => (fault = error));
    // Whatever ends it, those who wait are told, and the next picture starts another.
    fresh.on('exit', () => {
      worker = null;
      for (const { reject } of waiting.values()) reject(fault);
      waiting.clear();
    });
    return fresh;
  }

  return {
    renderPng: (svg) =>
      new Promise((resolve, reject) => {
        worker ??= started();
        lastId += 1;
        waiting.set(lastId, { resolve, reject });
        worker.ref();
        worker.postMessage({ id: lastId, svg } satisfies PngRequest);
      }),
    close: async () => {
      await worker?.terminate();
    },
  };
}
