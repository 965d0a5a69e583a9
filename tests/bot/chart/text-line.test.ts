import { Resvg } from '@resvg/resvg-js';
import { describe, expect, it } from 'vitest';
import { FONT_FAMILY, FONT_FILES, type FontWeight } from '../../../bot/chart/font-files.js';
import { fontMetrics } from '../../../bot/chart/font-metrics.js';
import { escapeText } from '../../../bot/chart/svg-element.js';
import { fittedText, SMALLEST_TEXT_PX } from '../../../bot/chart/text-line.js';

const WEIGHTS = ['regular', 'bold'] as const satisfies readonly FontWeight[];

/** Width of what the drawing library itself draws. */
function drawnWidthPx(text: string, sizePx: number, weight: FontWeight): number {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="9000" height="400"><text x="500" y="200" font-family="${FONT_FAMILY}" font-size="${sizePx}" font-weight="${weight === 'bold' ? 700 : 400}" xml:space="preserve">${escapeText(text)}</text></svg>`;
  return new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES) } }).getBBox()!.width;
}

describe('widths of characters', () => {
  // The difference of two lengths of the same letter holds no margin at either end.
  it.each(WEIGHTS.flatMap((weight) => [...'0Fmi-:.W'].map((character) => [weight, character] as const)))('%s %s is as wide as it is drawn', (weight, character) => {
    const sizePx = 100;
    const tenPx = drawnWidthPx(character.repeat(20), sizePx, weight) - drawnWidthPx(character.repeat(10), sizePx, weight);
    expect(fontMetrics(weight).widthOf(character)! * sizePx).toBeCloseTo(tenPx / 10, 1);
  });

  it('knows what the font cannot draw', () => {
    for (const weight of WEIGHTS) {
      expect(fontMetrics(weight).widthOf('家')).toBeNull();
      expect(fontMetrics(weight).widthOf('é')).toBeGreaterThan(0);
    }
  });
});

describe('lines of text', () => {
  const fit = { sizePx: 50, weight: 'bold', mostPx: 600 } as const;

  it.each(['Wren Hollow', 'Zürich–Nord', 'Ιθάκη', 'Дом у озера', 'AVAVAVAV To. Te'])('%s takes no more room than it is given', (text) => {
    const line = fittedText(text, fit);
    expect(line.text).toBe(text);
    // Letters that hang over are drawn closer together than the table of widths says, never farther apart.
    expect(drawnWidthPx(text, fit.sizePx, fit.weight)).toBeLessThan(line.widthPx + 0.1 * fit.sizePx);
  });

  it('grow smaller before they are cut, and are cut before they leave their room', () => {
    const shrunk = fittedText('The house behind the old mill', { ...fit, smallestPx: 32 });
    expect([shrunk.text, shrunk.sizePx < 50, shrunk.sizePx >= 32]).toEqual(['The house behind the old mill', true, true]);
    const cut = fittedText('W'.repeat(60), { ...fit, smallestPx: 32 });
    expect(cut.sizePx).toBe(32);
    expect(cut.text).toMatch(/^W+\.\.\.$/u);
    expect(cut.widthPx).toBeLessThanOrEqual(fit.mostPx);
  });

  it('never shrink below what a phone shows', () => {
    expect(fittedText('W'.repeat(60), { ...fit, smallestPx: 1 }).sizePx).toBe(SMALLEST_TEXT_PX);
  });

  it.each([
    ['line\nbreak\tand   spaces', 'line break and spaces'],
    ['turned \u202Eround\u202C', 'turned round'],
    ['a\u0000b\u0007c', 'a b c'],
    ['Hof 家 am See', 'Hof am See'],
    ['家', ''],
  ])('%j becomes %j', (given, shown) => {
    expect(fittedText(given, { ...fit, mostPx: 1000 }).text).toBe(shown);
  });
});
