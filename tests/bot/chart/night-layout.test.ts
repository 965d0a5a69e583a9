import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nightLayout, PICTURE_WIDTH_PX, type NightLayout } from '../../../bot/chart/night-layout.js';
import type { Rectangle } from '../../../bot/chart/rectangle.js';
import { SMALLEST_TEXT_PX, type PlacedText } from '../../../bot/chart/text-line.js';
import { ANY_SHAPE, AFTERNOON_S, inventedPicture } from './invented-picture.js';

const SEED = 20261125;
const NIGHTS = 300;

/** All texts of a picture with what they are. */
function textsOf(layout: NightLayout): readonly { readonly what: string; readonly text: PlacedText }[] {
  const named = (what: string, texts: readonly PlacedText[]): { what: string; text: PlacedText }[] => texts.map((text) => ({ what: `${what} "${text.text}"`, text }));
  return [
    ...named('header', [layout.title, layout.nightLine, layout.verdictLine, ...(layout.tag ? [layout.tag.words] : [])]),
    ...named('mark', layout.marks.map(({ words }) => words)),
    ...named('sky', layout.sky.words),
    ...layout.plot.labels.flatMap(({ role, lines }) => named(role, lines)),
    ...named('tick', layout.tickTexts),
    ...named('flag', layout.flags.map(({ words }) => words)),
    ...named('idle', layout.idle ? [layout.idle] : []),
    ...named('footer', layout.footer),
  ];
}

const meet = (a: Rectangle, b: Rectangle): boolean => Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x) > 0.01 && Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y) > 0.01;
const leaves = ({ x, y, width, height }: Rectangle, layout: NightLayout): boolean => x < 0 || y < 0 || x + width > layout.widthPx || y + height > layout.heightPx;

describe('the layout of any night', () => {
  const layouts = fc.sample(ANY_SHAPE, { numRuns: NIGHTS, seed: SEED }).map((shape) => ({ shape, layout: nightLayout(inventedPicture(shape)) }));

  it('lets no two texts touch', () => {
    const touching = layouts.flatMap(({ layout }, night) => {
      const texts = textsOf(layout);
      return texts.flatMap((a, i) => texts.slice(i + 1).filter((b) => meet(a.text.box, b.text.box)).map((b) => `night ${night}: ${a.what} and ${b.what}`));
    });
    expect(touching).toEqual([]);
  });

  it('keeps every text on the page and large enough for a phone', () => {
    const offenders = layouts.flatMap(({ layout }, night) => textsOf(layout).filter(({ text }) => leaves(text.box, layout) || text.sizePx < SMALLEST_TEXT_PX || text.text === '').map(({ what }) => `night ${night}: ${what}`));
    expect(offenders).toEqual([]);
  });

  it('names every line, every limit and the low, always', () => {
    const missing = layouts.flatMap(({ shape, layout }, night) => {
      const wanted = ['low', 'plant', 'outside', 'damage', ...(shape.offsetsC.inside === null ? [] : ['inside']), ...(shape.offsetsC.cover === null ? [] : ['cover']), ...(shape.killedBelowDamageC === null ? [] : ['killed'])];
      const there = layout.plot.labels.map(({ role }) => role as string);
      return wanted.filter((role) => !there.includes(role)).map((role) => `night ${night}: ${role}`);
    });
    expect(missing).toEqual([]);
  });

  it('never cuts a number off: the low and the limits are written whole', () => {
    const offenders = layouts.flatMap(({ layout }, night) => layout.plot.labels.filter(({ role }) => role === 'low' || role === 'damage' || role === 'killed').flatMap(({ lines }) => lines.filter(({ text }) => text.endsWith('...')).map(({ text }) => `night ${night}: ${text}`)));
    expect(offenders).toEqual([]);
  });

  it('runs no pole of a flag through the words of another, as long as the flags fly free', () => {
    const free = layouts.filter(({ layout }) => layout.flags.every(({ poleX, cloth }) => cloth.x === poleX));
    expect(free.length).toBeGreaterThan(NIGHTS / 10);
    const offenders = free.flatMap(({ layout }, night) =>
      layout.flags.flatMap((flag, i) => layout.flags.filter((other, j) => j !== i && flag.poleX > other.cloth.x + 1 && flag.poleX < other.cloth.x + other.cloth.width && other.cloth.y < flag.cloth.y).map(() => `night ${night}`)),
    );
    expect(offenders).toEqual([]);
  });

  it('is as wide as three times a phone', () => {
    expect(new Set(layouts.map(({ layout }) => layout.widthPx))).toEqual(new Set([PICTURE_WIDTH_PX]));
    expect(PICTURE_WIDTH_PX).toBe(3 * 360);
  });
});

describe('where things lie', () => {
  const layout = nightLayout(inventedPicture());
  const { temps, times, low, limits, box } = layout.plot;

  it('the low lies at its value and its time, by the ticks beside and below', () => {
    const [cold, warm] = [temps.ticks[0]!, temps.ticks.at(-1)!];
    const [early, late] = [times.ticks[0]!, times.ticks.at(-1)!];
    const picture = inventedPicture();
    expect(low.y).toBeCloseTo(cold.y + ((warm.y - cold.y) * (picture.low.tempC - cold.tempC)) / (warm.tempC - cold.tempC), 6);
    expect(low.x).toBeCloseTo(early.x + ((late.x - early.x) * (picture.low.timeS - early.timeS)) / (late.timeS - early.timeS), 6);
  });

  it('damage begins above where the plant is killed, both below a low that is safe', () => {
    const [damage, killed] = limits;
    expect(low.y).toBeLessThan(damage!.y);
    expect(damage!.y).toBeLessThan(killed!.y);
    expect(killed!.y).toBeLessThan(box.y + box.height);
  });

  it('a limit that is far below is said at the foot and not drawn', () => {
    const far = nightLayout(inventedPicture({ damageBelowLowC: 40, killedBelowDamageC: 5 }));
    expect(far.plot.limits.map(({ isOffPlot }) => isOffPlot)).toEqual([true, true]);
    const notes = far.plot.labels.filter(({ role }) => role === 'damage' || role === 'killed').flatMap(({ lines }) => lines);
    const words = [...notes].sort((a, b) => a.box.y - b.box.y).map(({ text }) => text);
    expect(words).toEqual(['far below: kale harmed at -44C', 'far below: kale killed at -49C']);
  });

  it('degrees F and C put the same night at the same height', () => {
    const inF = nightLayout(inventedPicture({ units: 'F' })).plot;
    expect(inF.low.y).toBeCloseTo(low.y, 6);
    expect(inF.labels.find(({ role }) => role === 'low')!.lines[0]!.text).toBe('25F');
    expect(inF.temps.ticks.find(({ written }) => written === '30')!.y).toBeGreaterThan(temps.ticks.find(({ written }) => written === '0')!.y);
  });

  it('more flags than have room end in a word that says so', () => {
    const flags = Array.from({ length: 9 }, (_, i) => ({ atS: AFTERNOON_S + 600 * (i + 1), does: 'fan' as const, fan: 'air' as const, run: true }));
    const words = nightLayout(inventedPicture({ flags })).flags.map(({ words: { text } }) => text);
    expect(words).toHaveLength(5);
    expect(words.at(-1)).toBe('and 5 more: see the message');
  });

  it('where the sun does not set there is no sunset to mark, and the rest stands', () => {
    const { sky, plot } = nightLayout({ ...inventedPicture(), sun: null });
    expect(sky).toMatchObject({ sunsetX: null, sunriseX: null, words: [] });
    expect(plot.low).toEqual(low);
  });

  it('without flags says why there are none', () => {
    const idle = (why: 'calm' | 'not-worth-it' | 'too-late'): string => nightLayout({ ...inventedPicture({ flags: [] }), idle: why }).idle!.text;
    expect(new Set([idle('calm'), idle('not-worth-it'), idle('too-late')]).size).toBe(3);
  });
});

describe('marks over the picture', () => {
  const marks = (changes: Parameters<typeof nightLayout>[0]): string[] => nightLayout(changes).marks.map(({ words }) => words.text);

  it('there are none on a plain night', () => {
    expect(marks(inventedPicture())).toEqual([]);
  });

  it('an old forecast and invented weather are said', () => {
    expect(marks({ ...inventedPicture(), stale: { ageS: 9 * 3600 }, isInvented: true })).toEqual(['OLD FORECAST, 9 h old: band widened', 'INVENTED WEATHER: not a forecast']);
  });

  it('so is a change of clocks within the night', () => {
    const shiftS = Date.parse('2027-03-13T16:00:00-05:00') / 1000 - AFTERNOON_S;
    const moved = <T extends { timeS: number }>(points: readonly T[]): T[] => points.map((point) => ({ ...point, timeS: point.timeS + shiftS }));
    const base = inventedPicture();
    const night = {
      ...base, nowS: base.nowS + shiftS, span: { fromS: base.span.fromS + shiftS, toS: base.span.toS + shiftS }, night: { fromS: base.night.fromS + shiftS, toS: base.night.toS + shiftS },
      sun: { sunsetS: base.sun!.sunsetS + shiftS, sunriseS: base.sun!.sunriseS + shiftS }, lines: base.lines.map((line) => ({ ...line, points: moved(line.points) })), band: moved(base.band), low: moved([base.low])[0]!, flags: [],
    };
    expect(marks(night)).toEqual(['The clock goes forward 1 h this night']);
  });

  it('the credit under the picture names the service that gave the weather', () => {
    const credit = (source: string): string => nightLayout({ ...inventedPicture(), source }).footer.map(({ text }) => text).join(' ');
    for (const source of ['open-meteo', 'file']) expect(credit(source)).toContain('Open-Meteo.com, CC BY 4.0');
    expect(credit('met-norway')).toContain('MET Norway (met.no), CC BY 4.0');
    expect(credit('demo')).not.toContain('CC BY');
  });
});
