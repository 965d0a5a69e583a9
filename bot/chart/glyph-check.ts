import { drawnText } from './drawn-text.js';
import type { RenderPng } from './png-renderer.js';
import { svgElement } from './svg-element.js';
import { fittedText, textAt } from './text-line.js';

const SIZE_PX = 64;

/**
 * At the start: are letters really drawn? Without its font a picture comes out without any words and without any error.
 * Each sample must differ from a blank sheet and from every other: a box in place of each letter would not do either.
 */
export async function checkGlyphs(renderPng: RenderPng): Promise<void> {
  const samples = (['regular', 'bold'] as const).flatMap((weight) => ['0', 'F'].map((text) => drawnText(textAt(fittedText(text, { sizePx: SIZE_PX / 2, weight, mostPx: SIZE_PX }), 0, 0), { color: '#000000' })));
  const sheets = [[], ...samples.map((sample) => [sample])].map((inside) => svgElement('svg', { xmlns: 'http://www.w3.org/2000/svg', width: SIZE_PX, height: SIZE_PX }, ...inside).markup);
  const pictures = await Promise.all(sheets.map(renderPng));
  const different = new Set(pictures.map((png) => png.toString('base64'))).size;
  if (different !== sheets.length) throw new Error('pictures would come out without words: their font is not drawn. Install the packages anew with npm ci.');
}
