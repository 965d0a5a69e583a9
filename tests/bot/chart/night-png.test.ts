import { Resvg } from '@resvg/resvg-js';
import { PNG } from 'pngjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawNight } from '../../../bot/chart/draw-night.js';
import { checkGlyphs } from '../../../bot/chart/glyph-check.js';
import { nightLayout, type NightLayout } from '../../../bot/chart/night-layout.js';
import { nightPng } from '../../../bot/chart/night-png.js';
import { LINE_STYLES, PALETTE } from '../../../bot/chart/palette.js';
import { pngRenderer, type PngRenderer, type RenderPng } from '../../../bot/chart/png-renderer.js';
import type { Rectangle } from '../../../bot/chart/rectangle.js';
import { inventedPicture } from './invented-picture.js';

let renderer: PngRenderer;
beforeAll(() => {
  renderer = pngRenderer();
});
afterAll(() => renderer.close());

/** What a machine without the fonts would draw. */
const renderWithoutFonts: RenderPng = (svg) => Promise.resolve(new Resvg(svg, { font: { loadSystemFonts: false } }).render().asPng());

const colorAt = (png: PNG, x: number, y: number): string => `#${png.data.subarray((Math.round(y) * png.width + Math.round(x)) * 4, (Math.round(y) * png.width + Math.round(x)) * 4 + 3).toString('hex')}`;

/** Share of the pixels of a box that have a colour. */
function shareOf(png: PNG, { x, y, width, height }: Rectangle, color: string): number {
  let found = 0;
  let all = 0;
  for (let row = Math.round(y); row < Math.round(y + height); row += 1) {
    for (let column = Math.round(x); column < Math.round(x + width); column += 1) {
      all += 1;
      if (colorAt(png, column, row) === color) found += 1;
    }
  }
  return found / all;
}

describe('the picture as pixels', () => {
  const picture = inventedPicture();
  let layout: NightLayout;
  let png: PNG;
  beforeAll(async () => {
    layout = nightLayout(picture);
    png = PNG.sync.read(await nightPng(picture, renderer.renderPng));
  });

  it('is 1080 pixels wide and as high as its layout', () => {
    expect([png.width, png.height]).toEqual([1080, layout.heightPx]);
  });

  it('has letters in every text, and none where the font is missing', async () => {
    const blank = PNG.sync.read(await nightPng(picture, renderWithoutFonts));
    const texts: readonly (readonly [Rectangle, string])[] = [
      [layout.title.box, PALETTE.onHeader], [layout.verdictLine.box, PALETTE.onHeader],
      ...layout.sky.words.map(({ box }) => [box, PALETTE.onSky] as const),
      ...layout.tickTexts.map(({ box }) => [box, PALETTE.ink] as const),
      ...layout.flags.map(({ words }) => [words.box, PALETTE.ink] as const),
      ...layout.footer.map(({ box }) => [box, PALETTE.quietInk] as const),
    ];
    for (const [box, ink] of texts) {
      expect(shareOf(png, box, ink)).toBeGreaterThan(0.03);
      expect(shareOf(blank, box, ink)).toBe(0);
    }
  });

  it('marks the low where its value and its time lie', () => {
    const { low } = layout.plot;
    expect(colorAt(png, low.x, low.y)).toBe(PALETTE.paper);
    for (const [dx, dy] of [[15, 0], [-15, 0], [0, -15], [0, 15]] as const) expect(colorAt(png, low.x + dx, low.y + dy)).toBe(LINE_STYLES.plant.color);
  });

  it('draws both limits across the plot, and hatches below the first alone', () => {
    const { box, limits } = layout.plot;
    const [damage, killed] = limits;
    expect(shareOf(png, { x: box.x + 3, y: damage!.y, width: box.width - 6, height: 1 }, PALETTE.danger)).toBeGreaterThan(0.6);
    expect(shareOf(png, { x: box.x + 3, y: killed!.y, width: box.width - 6, height: 1 }, PALETTE.killed)).toBeGreaterThan(0.6);
    const ground = PALETTE.night;
    expect(shareOf(png, { ...box, y: box.y + 4, height: 40 }, ground)).toBeGreaterThan(0.3);
    expect(shareOf(png, { ...box, y: damage!.y + 20, height: box.y + box.height - damage!.y - 24 }, ground)).toBe(0);
  });

  it('draws every line through its points', () => {
    for (const { name, points } of layout.plot.curves) {
      const { color } = LINE_STYLES[name as keyof typeof LINE_STYLES];
      const { box } = layout.plot;
      const free = points.filter(({ x, y }) => y > box.y + 12 && y < box.y + box.height - 12 && x > box.x + 12 && x < box.x + box.width - 12 && !layout.plot.labels.some(({ box: label }) => x > label.x - 20 && x < label.x + label.width + 20 && y > label.y - 20 && y < label.y + label.height + 20));
      // A dashed line is looked for a dash's length to either side.
      const seen = free.filter(({ x, y }) => shareOf(png, { x: x - 16, y: y - 8, width: 32, height: 16 }, color) > 0);
      expect(free.length, name).toBeGreaterThan(20);
      expect(seen.length / free.length, name).toBeGreaterThan(0.8);
    }
  });

  it('is light where the sun is up and dusky where it is not', () => {
    const { box } = layout.plot;
    const y = box.y + 6;
    expect(colorAt(png, layout.sky.sunsetX! - 8, y)).toBe(PALETTE.day);
    expect(colorAt(png, layout.sky.sunsetX! + 8, y)).toBe(PALETTE.night);
    expect(colorAt(png, layout.sky.sunriseX! - 8, y)).toBe(PALETTE.night);
  });

  it('has the same bytes whenever and wherever it is drawn', async () => {
    const other = pngRenderer();
    try {
      const [first, second] = await Promise.all([nightPng(inventedPicture(), renderer.renderPng), nightPng(inventedPicture(), other.renderPng)]);
      expect(first.equals(second)).toBe(true);
      expect(first.equals(await nightPng(inventedPicture({ lowC: -4.1 }), renderer.renderPng))).toBe(false);
    } finally {
      await other.close();
    }
  });

  it.each(['<svg/onload="x">', '"]]></text><image href="http://x"/>', '\u0000\ud800', '家'.repeat(60), 'W'.repeat(60)])('is drawn for a house and a crop called %j', async (name) => {
    const strange = inventedPicture({ greenhouse: name, asked: name, bed: name });
    const svg = drawNight(nightLayout(strange));
    expect(svg).not.toMatch(/<(?:image|svg\/|script)/u);
    const { width, height } = PNG.sync.read(await renderer.renderPng(svg));
    expect([width, height]).toEqual([1080, nightLayout(strange).heightPx]);
    expect(nightLayout(strange).title.text).not.toBe('');
  });
});

describe('the thread that draws', () => {
  it('leaves this one free to do other work meanwhile', async () => {
    let turns = 0;
    let isDrawn = false;
    const turn = (): void => {
      turns += 1;
      if (!isDrawn) setImmediate(turn);
    };
    setImmediate(turn);
    await nightPng(inventedPicture(), renderer.renderPng).then(() => (isDrawn = true));
    // Drawn on this thread it would be at most one or two.
    expect(turns).toBeGreaterThan(20);
  });

  it('says what is wrong with what cannot be drawn, and goes on', async () => {
    await expect(renderer.renderPng('no picture')).rejects.toThrow('could not be drawn');
    await expect(nightPng(inventedPicture(), renderer.renderPng)).resolves.toBeInstanceOf(Buffer);
  });

  it('gives each its own picture, however many are asked for at once', async () => {
    const lows = [-9, -6, -3, 0];
    const drawn = await Promise.all(lows.map((lowC) => nightPng(inventedPicture({ lowC }), renderer.renderPng)));
    for (const [i, lowC] of lows.entries()) expect(drawn[i]!.equals(await nightPng(inventedPicture({ lowC }), renderer.renderPng))).toBe(true);
  });

  it('is started anew after it was ended, and ending it lets nobody wait for ever', async () => {
    const short = pngRenderer();
    const waiting = nightPng(inventedPicture(), short.renderPng);
    const refused = expect(waiting).rejects.toThrow('has ended');
    await short.close();
    await refused;
    await expect(short.renderPng('<svg xmlns="http://www.w3.org/2000/svg" width="4" height="4"/>')).resolves.toBeInstanceOf(Buffer);
    await short.close();
  });
});

describe('the check of the letters at the start', () => {
  it('passes with the fonts', async () => {
    await expect(checkGlyphs(renderer.renderPng)).resolves.toBeUndefined();
  });

  it('fails without them', async () => {
    await expect(checkGlyphs(renderWithoutFonts)).rejects.toThrow('without words');
  });
});
