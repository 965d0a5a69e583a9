import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { drawNights } from '../../../bot/chart/draw-nights.js';
import { nightsLayout, type NightsLayout } from '../../../bot/chart/nights-layout.js';
import { pngRenderer } from '../../../bot/chart/png-renderer.js';
import { lies, overlap } from '../../../bot/chart/rectangle.js';
import type { NightsPicture, PicturedNight } from '../../../bot/features/record/nights-picture.js';
import { NIGHTS_LEGEND } from '../../../bot/text/nights-chart-text.js';
import { outsideGsm } from '../text/gsm.js';

const night = (n: number, more: Partial<PicturedNight> = {}): PicturedNight => ({ date: new Date(Date.UTC(2025, 11, 1 + n)).toISOString().slice(0, 10), said: { q10: -2, q50: 0, q90: 2 }, read: { tempC: 1, kind: 'low' }, compares: true, ...more });
const picture = (nights: readonly PicturedNight[], more: Partial<NightsPicture> = {}): NightsPicture => ({ greenhouse: 'Hill Tunnel', units: 'C', thermometer: { place: 'inside', name: null }, nights, sources: ['open-meteo', 'met-norway'], ...more });
const many = (count: number): readonly PicturedNight[] => Array.from({ length: count }, (_, n) => night(n, { said: n % 5 === 4 ? null : { q10: n % 7, q50: 2 + (n % 7), q90: 4.5 + (n % 7) }, read: n % 3 === 2 ? null : { tempC: (n % 11) - 3, kind: n % 4 === 1 ? 'bound' : 'low' }, compares: n % 6 !== 0 }));

const textsOf = ({ title, line, tickTexts, legend, footer }: NightsLayout): NightsLayout['tickTexts'] => [title, line, ...tickTexts, ...legend.map(({ words }) => words), ...footer];

describe('the picture of past nights', () => {
  it.each([1, 2, 7, 8, 23, 40])('has all words on the page and none on another, for %s nights', (count) => {
    for (const units of ['C', 'F'] as const) {
      const layout = nightsLayout(picture(many(count), { units, greenhouse: 'A greenhouse with a name that is far longer than any page is wide, and goes on' }));
      const page = { x: 0, y: 0, width: layout.widthPx, height: layout.heightPx };
      const texts = textsOf(layout);
      expect(texts.filter(({ box }) => !lies(box, page)).map(({ text }) => text)).toEqual([]);
      expect(texts.filter((one, i) => texts.some((other, j) => j > i && overlap(one.box, other.box))).map(({ text }) => text)).toEqual([]);
    }
  });

  it('draws a bar from the colder to the warmer end of what was said, with what was read at its height', () => {
    const { nights: [placed], temps } = nightsLayout(picture([night(0)]));
    expect(placed!.bar!.y).toBeCloseTo(temps.yOf(2), 9);
    expect(placed!.bar!.y + placed!.bar!.height).toBeCloseTo(temps.yOf(-2), 9);
    expect(placed!.middleY).toBeCloseTo(temps.yOf(0), 9);
    expect(placed!.mark!.y).toBeCloseTo(temps.yOf(1), 9);
    expect(placed!.mark!.x).toBeCloseTo(placed!.bar!.x + placed!.bar!.width / 2, 9);
    expect(temps.yOf(2)).toBeLessThan(temps.yOf(-2));
  });

  it('tells what was read by its mark, and explains the marks that are there alone', () => {
    const nights = [
      night(0),
      night(1, { read: { tempC: -2.1, kind: 'low' } }),
      night(2, { read: { tempC: 0, kind: 'bound' } }),
      night(3, { compares: false }),
      night(4, { said: null }),
      night(5, { read: null }),
      night(6, { read: { tempC: 2, kind: 'low' } }),
    ];
    expect(nightsLayout(picture(nights)).nights.map(({ mark }) => mark?.kind ?? null)).toEqual(['inside', 'outside', 'bound', 'leftOut', 'alone', null, 'inside']);
    expect(nightsLayout(picture(nights)).legend.map(({ mark }) => mark)).toEqual(Object.keys(NIGHTS_LEGEND));
    expect(nightsLayout(picture([night(0)])).legend.map(({ mark }) => mark)).toEqual(['said', 'inside']);
  });

  it('keeps all nights in the plot, the older left', () => {
    const { nights, plot } = nightsLayout(picture(many(40)));
    const marks = nights.flatMap(({ mark }) => mark ?? []);
    expect(marks.every(({ x, y }) => x > plot.x && x < plot.x + plot.width && y > plot.y && y < plot.y + plot.height)).toBe(true);
    expect(marks.map(({ x }) => x)).toEqual(marks.map(({ x }) => x).toSorted((a, b) => a - b));
  });

  it('names every service that gave weather, with its licence, in plain characters', () => {
    const words = textsOf(nightsLayout(picture(many(40)))).map(({ text }) => text);
    expect(words.join(' ')).toMatch(/Open-Meteo\.com, CC BY 4\.0, and by MET Norway \(met\.no\), CC BY 4\.0/u);
    expect(nightsLayout(picture([night(0)], { sources: ['demo'] })).footer.map(({ text }) => text).join(' ')).toContain('Invented weather');
    for (const text of words) expect(outsideGsm(text), text).toEqual([]);
  });

  it('is a PNG as wide as a phone asks', async () => {
    const renderer = pngRenderer();
    try {
      const layout = nightsLayout(picture(many(12), { greenhouse: '<&"' }));
      const { width, height } = PNG.sync.read(await renderer.renderPng(drawNights(layout)));
      expect([width, height]).toEqual([layout.widthPx, layout.heightPx]);
    } finally {
      await renderer.close();
    }
  });
});
