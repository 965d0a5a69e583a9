import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toleranceNights } from '../../../bot/features/evening/tolerance-nights.js';
import { withTolerance } from '../../../bot/features/tolerance/set-tolerance.js';
import { subjectOf } from '../../../bot/post/subject.js';
import type { ToleranceSaid } from '../../../bot/language/tolerance.js';
import { checkGreenhouse, toleranceOf, tripsHeld, type Greenhouse, type GreenhouseFile, type ToleranceNights } from '../../../engine/index.js';
import { HOUSE, issued, toldRig, type ToldRig } from '../told/told-rig.js';

const houseOf = (file: GreenhouseFile): Greenhouse => {
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error('no house');
  return check.greenhouse;
};
const NONE: ToleranceNights = { left: 0, lost: 0 };
const weightOf = (file: GreenhouseFile, nights = NONE): number => toleranceOf(houseOf(file).grower, nights).lossWeight;
const after = (file: GreenhouseFile, nights: ToleranceNights, ...said: readonly ToleranceSaid[]): GreenhouseFile => withTolerance(file, said.map((one) => ({ said: one, text: '' })), { nowS: 0, nights }).file;
const trips = (count: number): ToleranceSaid => ({ about: 'trips', trips: count });
const bedWorth = (worth: number, grower: GreenhouseFile['grower'] = {}): GreenhouseFile => ({ ...HOUSE, beds: [{ ...HOUSE.beds![0]!, worth }, HOUSE.beds![1]!], grower });

const HOUSES: readonly (readonly [string, GreenhouseFile, ToleranceNights])[] = [
  ['nothing said yet', HOUSE, NONE],
  ['a bed of little worth and an awful trip', bedWorth(4, { trip: 'awful' }), NONE],
  ['a bed of much worth', bedWorth(400), NONE],
  ['no cover', { ...HOUSE, beds: [HOUSE.beds![1]!] }, NONE],
  ['a word in the file', bedWorth(50, { careful: 'careful' }), NONE],
  ['a number in the file', bedWorth(50, { careful: 9 }), NONE],
  ['a number said before, and the bed worth more since', { ...bedWorth(200), grower: { careful: 9, tripShare: 0.1 } }, NONE],
  ['losses', HOUSE, { left: 0, lost: 2 }],
  ['a number said before, and losses', { ...HOUSE, grower: { careful: 9, tripShare: 0.1 } }, { left: 0, lost: 3 }],
  ['as seldom as it goes', after(HOUSE, NONE, trips(0)), NONE],
  ['as readily as it goes', after(HOUSE, NONE, trips(100)), NONE],
  ['never lose it, after a number', after(HOUSE, NONE, trips(9), { about: 'careful', careful: 'never-lose-it' }), NONE],
];

describe.each(HOUSES)('needless trips for a saved bed: %s', (_name, file, nights) => {
  const { trips: shown } = tripsHeld(houseOf(file), nights);
  const before = weightOf(file, nights);

  it('who says the number that is shown moves nothing, also when it is said twice', () => {
    const once = after(file, nights, trips(shown));
    expect(weightOf(once)).toBeCloseTo(before, 9);
    expect(weightOf(after(once, NONE, trips(shown)))).toBeCloseTo(before, 9);
  });

  it('who says more is never called less, who says less never more', () => {
    for (const more of [shown + 1, shown + 5, 2 * shown + 50]) expect(weightOf(after(file, nights, trips(more)))).toBeGreaterThanOrEqual(before - 1e-9);
    for (const less of [0, shown / 2, shown - 1].filter((count) => count >= 0)) expect(weightOf(after(file, nights, trips(less)))).toBeLessThanOrEqual(before + 1e-9);
  });

  it('the words of the question are so: relaxed less than careful, never losing one the most and never less than now', () => {
    const { named } = tripsHeld(houseOf(file), nights);
    const weighed = [named.relaxed, named.careful, named['never-lose-it']].map((count) => weightOf(after(file, nights, trips(count))));
    expect(weighed).toEqual([...weighed].sort((a, b) => a - b));
    expect(weighed[0]).toBeLessThanOrEqual(before + 1e-9);
    expect(weighed[2]).toBeGreaterThanOrEqual(before - 1e-9);
  });

  it('"never lose it" does not call less, "relaxed" not more', () => {
    expect(weightOf(after(file, nights, { about: 'careful', careful: 'never-lose-it' }), NONE)).toBeGreaterThanOrEqual(before - 1e-9);
    expect(weightOf(after(file, nights, { about: 'careful', careful: 'relaxed' }), NONE)).toBeLessThanOrEqual(before + 1e-9);
  });

  it('a step to more never lowers, one to less never raises', () => {
    expect(weightOf(after(file, nights, { about: 'careful', step: 1 }), nights)).toBeGreaterThanOrEqual(before - 1e-9);
    expect(weightOf(after(file, nights, { about: 'careful', step: -1 }), nights)).toBeLessThanOrEqual(before + 1e-9);
  });
});

describe('in words', () => {
  let rig: ToldRig;
  beforeEach(async () => {
    rig = await toldRig('2026-01-14T16:30');
  });
  afterEach(() => rig.close());

  const weight = async (): Promise<number> => {
    const file = await rig.house();
    return weightOf(file, await toleranceNights(rig.memory, (await subjectOf('h', rig.memory))!));
  };

  // 13 minutes at 15 an hour and half a unit for the cover beside a bed of 50: 0.075. Losses weigh 1, which is 13.3 times that.
  it('the settings show what holds, and it may be said again', async () => {
    expect(await rig.says('settings')).toContain('I count one saved bed as worth 12 needless trips.');
    expect(await rig.says('12 trips for a saved bed')).not.toContain('until now');
    expect(await weight()).toBeCloseTo(1, 9);
    expect(await rig.says('settings')).toContain('I count one saved bed as worth 12 needless trips.');
  });

  it('a number that calls less says so', async () => {
    expect(await rig.says('8 trips for a saved bed')).toContain('I counted 12 until now: I call you out less readily.');
    expect(await weight()).toBeCloseTo(9 / 13, 9);
  });

  it('a number beyond what can be counted says so', async () => {
    expect(await rig.says('0 trips for a saved bed')).toContain('Fewer than 6 change nothing');
    expect(await weight()).toBe(0.5);
    expect(await rig.says('100 trips for a saved bed')).toMatch(/More than 5\d change nothing/u);
    expect(await weight()).toBe(4);
  });

  it('the question tells what is counted now, and its words and buttons do what it says', async () => {
    await rig.says('ask me');
    await rig.says('skip');
    // (1 + 3) / 6, (1 + 10) / 6 and (1 + 20) / 6, by thirteenths.
    expect(await rig.says('skip')).toContain('I count 12 now. The relaxed say 8, the careful 23. Who must never lose one says 45.');
    await rig.presses('23');
    expect(await weight()).toBeCloseTo(24 / 13, 9);
    expect(await rig.says('be more careful')).toContain('as worth 45 needless trips now, not 23');
    expect(await rig.says('never lose the lettuce')).toContain('as careful as my words go');
  });

  it('the number that is shown holds what losses have taught', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { lettuce: 0.2 }, couldDo: [{ action: 'cover', target: 'the north bed' }] });
    await rig.says('the lettuce is dead', '2026-01-15T09:00');
    expect(await weight()).toBe(1.25);
    const [, shown] = /I count one saved bed as worth (\d+) /u.exec(await rig.says('settings'))!;
    await rig.says(`${shown} trips for a saved bed`);
    expect(await weight()).toBeCloseTo(1.25, 9);
  });

  it('work that never fits before dark is not taken', async () => {
    expect(await rig.says('covering takes me 600 minutes')).toContain('I cannot count more than 180 minutes');
    expect((await rig.house()).beds![0]!.coverMinutes).toBeUndefined();
  });
});
