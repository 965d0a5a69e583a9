import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toleranceNights } from '../../../bot/features/evening/tolerance-nights.js';
import { keepingTolerance } from '../../../bot/features/tolerance/set-tolerance.js';
import { subjectOf } from '../../../bot/post/subject.js';
import { UNDO } from '../../../bot/text/undo-text.js';
import type { GreenhouseFile } from '../../../engine/index.js';
import { outsideGsm } from '../text/gsm.js';
import { HOUSE, issued, toldRig, type ToldRig } from '../told/told-rig.js';

const COVER = { action: 'cover', target: 'the north bed' } as const;
const SOUTH = { action: 'cover', target: 'the south bed' } as const;
const VENTS = { action: 'vents', target: 'shut' } as const;
const LESS = 'From now on I call you out a little less readily.';
const MORE = 'from now on I call you out more readily.';

const BOTH_COVERED: GreenhouseFile = { ...HOUSE, beds: HOUSE.beds!.map((bed) => ({ ...bed, cover: { kind: 'fabric', weight: 50 } })) };

let rig: ToldRig;
beforeEach(async () => {
  rig = await toldRig('2026-01-14T16:30');
});
afterEach(() => rig.close());

const nights = async () => toleranceNights(rig.memory, (await subjectOf('h', rig.memory))!);
const grower = async () => (await rig.house()).grower!;

describe('the three questions', () => {
  it('come once, after the first answer to a call, each by itself', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [COVER] });
    const first = await rig.says('done');
    expect(first).toContain('Noted for tonight');
    expect(first).toContain('about 3 to 5 turn out not needed');
    expect(first).toContain('If frost took the kale and the lettuce in the north bed:');
    const second = await rig.says('6 weeks, 12 a week');
    expect(second).toContain('The north bed is worth 72 to you.');
    expect(second).toContain('easy, annoying or awful?');
    const third = await rig.says('annoying, 20 minutes');
    expect(third).toContain('How many needless trips');
    const last = await rig.says('9');
    expect(last).toContain('One saved bed is worth 9 needless trips to you.');
    for (const text of [first, second, third, last]) expect(outsideGsm(text)).toEqual([]);
    const { beds } = await rig.house();
    expect([beds![0]!.worth, beds![0]!.coverMinutes]).toEqual([72, 20]);
    expect(await grower()).toMatchObject({ trip: 'annoying', careful: 9, carefulAsked: true, tripSince: '2026-01-14T21:33:00.000Z', carefulSince: '2026-01-14T21:34:00.000Z' });
    // 20 minutes at 15 an hour, one and a half times, and half a unit for the cover, beside 72.
    expect((await grower()).tripShare).toBeCloseTo((15 * 1.5 * 20 / 60 + 0.5) / 72, 9);
    await issued(rig.memory, '2026-01-15', { actions: [COVER] });
    expect(await rig.says('not tonight', '2026-01-15T16:30')).not.toContain('about 3 to 5');
  });

  it('may be skipped one by one, and left', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [COVER] });
    await rig.says('done');
    expect(await rig.says('skip')).toContain('easy, annoying or awful?');
    expect(await rig.says('later')).toContain('Say "ask me"');
    expect(await grower()).toEqual({ units: 'C', carefulAsked: true });
    expect(await rig.says('ask me')).toContain('If frost took');
  });

  it('may be answered by buttons, each for its own question alone', async () => {
    await rig.says('ask me');
    expect(await rig.presses('Skip')).toContain('easy, annoying or awful?');
    expect(await rig.presses('Awful')).toContain('Going out is awful for you');
    expect(await rig.presses('Easy')).toContain('That question is over.');
    expect(await rig.presses('20')).toContain('One saved bed is worth 20 needless trips to you.');
    expect(await grower()).toMatchObject({ trip: 'awful', careful: 20 });
  });

  it('ask for the worth of a week where weeks alone were said', async () => {
    await rig.says('ask me');
    expect(await rig.says('5 weeks')).toBe('What is a week of picking there worth to you, in money?');
    expect(await rig.says('10')).toContain('The north bed is worth 50 to you.');
  });

  it('an answer is taken back by a word, and asked for again', async () => {
    await rig.says('ask me');
    await rig.says('60');
    const again = await rig.says('undo');
    expect(again).toContain('Taken back');
    expect(again).toContain('If frost took');
    expect((await rig.house()).beds![0]!.worth).toBeUndefined();
    expect(await rig.says('80')).toContain('worth 80');
  });

  it('do not come where nothing was called, and are forgotten after an hour', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [] });
    expect(await rig.says('covered the north bed')).not.toContain('If frost took');
    await rig.says('ask me');
    expect(await rig.says('5', '2026-01-14T18:30')).not.toContain('worth');
  });

  it('leave readings, deeds and questions to those who answer them', async () => {
    await rig.says('ask me');
    expect(await rig.says('2C inside')).toContain('2C inside');
    expect(await rig.says('stop')).toContain('start');
  });
});

describe('in words, at any time', () => {
  it('the worth of a crop is kept with it', async () => {
    expect(await rig.says('the kale is worth 60')).toBe(`Noted. The kale is worth 60 to you. ${UNDO}`);
    expect((await rig.house()).beds![0]!.crops).toEqual([{ crop: 'kale', worth: 60 }, 'lettuce']);
    expect(await rig.says('settings')).toContain('kale 60; lettuce 25, leek 40 (my guess by the size of the bed)');
    await rig.says('the north bed is worth 90');
    expect((await rig.house()).beds![0]).toMatchObject({ worth: 90, crops: ['kale', 'lettuce'] });
    expect(await rig.says('the celery is worth 9')).toContain('no such crop');
    expect(await rig.says('undo')).toContain('Taken back');
    expect((await rig.house()).beds![0]).toMatchObject({ crops: [{ crop: 'kale', worth: 60 }, 'lettuce'] });
  });

  it('beds are each worth what is said of each, and together what is said of all', async () => {
    await rig.says('each bed is worth 70');
    expect((await rig.house()).beds!.map(({ worth }) => worth)).toEqual([70, 70]);
    expect(await rig.says('all the beds are worth 100')).toContain('50 in each place');
    expect((await rig.house()).beds!.map(({ worth }) => worth)).toEqual([50, 50]);
  });

  it('the worth of the crops of the bed that is asked about may be told one by one', async () => {
    await rig.says('ask me');
    expect(await rig.says('kale 60, lettuce 40')).toContain('The kale is worth 60 to you. The lettuce is worth 40 to you.');
    expect((await rig.house()).beds![0]!.crops).toEqual([{ crop: 'kale', worth: 60 }, { crop: 'lettuce', worth: 40 }]);
  });

  it('minutes, the trip and care are kept, and said in the settings', async () => {
    await rig.says('covering takes me 30 minutes');
    await rig.says('I hate going out at night');
    // Half an hour at 15, two and a half times, and half a unit for the cover, beside 50: 0.385. Losses weigh 1 before, (1 + 10) / 6 after.
    expect(await rig.says('be more careful')).toContain('I count one saved bed as worth 4 needless trips now, not 2');
    expect((await rig.house()).beds!.map(({ coverMinutes }) => coverMinutes)).toEqual([30, undefined]);
    const settings = await rig.says('settings');
    expect(settings).toContain('I count one saved bed as worth 4 needless trips.');
    expect(settings).toContain('awful, 30 minutes to cover all');
    expect(settings).not.toMatch(/lambda|weight|threshold/u);
    expect(await rig.says('too many calls')).toContain('about 3 to 5 turn out not needed');
  });

  it('beside a deed both count', async () => {
    const said = await rig.says('covered the north bed. the kale is worth 60');
    expect(said).toContain('done: cover');
    expect(said).toContain('The kale is worth 60');
  });

  it.each(['the north bed is worth 90. the south bed is worth 40', 'the north bed is worth 90 and the south bed is worth 40'])('each bed takes what is said of it: %s', async (text) => {
    expect(await rig.says(text)).toContain('The north bed is worth 90 to you. The south bed is worth 40 to you.');
    expect((await rig.house()).beds!.map(({ worth }) => worth)).toEqual([90, 40]);
  });

  it.each(['covering the north bed takes 10 minutes. covering the south bed takes 25 minutes', 'covering the north bed takes 10 minutes and covering the south bed takes 25 minutes'])('each bed takes its own minutes: %s', async (text) => {
    await rig.memory.saveGreenhouse({ id: 'h', body: JSON.stringify(BOTH_COVERED), savedAtS: 0 });
    await rig.says(text);
    expect((await rig.house()).beds!.map(({ coverMinutes }) => coverMinutes)).toEqual([10, 25]);
  });

  it('the bed of a deed is not that of a crop beside it', async () => {
    await rig.memory.saveGreenhouse({ id: 'h', body: JSON.stringify(BOTH_COVERED), savedAtS: 0 });
    const said = await rig.says('covered the south bed. the kale is worth 60');
    expect(said).toContain('done: cover');
    expect(said).toContain('The kale is worth 60 to you.');
    expect((await rig.house()).beds![0]!.crops).toEqual([{ crop: 'kale', worth: 60 }, 'lettuce']);
  });

  it('a description that goes on keeps it', () => {
    const [north, south] = HOUSE.beds!;
    const crops = [{ crop: 'kale', worth: 60 }, 'lettuce'];
    const before: GreenhouseFile = { ...HOUSE, beds: [{ ...north!, worth: 90, coverMinutes: 12, crops }, south!], grower: { units: 'C', trip: 'awful', careful: 7, tripShare: 0.2, carefulAsked: true } };
    const draft: GreenhouseFile = { ...HOUSE, beds: [{ ...north!, area: 12 }], grower: { units: 'F' } };
    expect(keepingTolerance(draft, before)).toEqual({ ...draft, beds: [{ ...north!, area: 12, worth: 90, coverMinutes: 12, crops }], grower: { ...before.grower, units: 'F' } });
  });
});

describe('what nights say', () => {
  const leave = async (date: string): Promise<string> => {
    await issued(rig.memory, date, { actions: [COVER] });
    return rig.says('not tonight', `${date}T16:30`);
  };

  it('a call that was left is said once and counts once a night, also when it is told again', async () => {
    expect(await leave('2026-01-14')).toContain(LESS);
    expect(await rig.says("didn't cover")).not.toContain(LESS);
    expect(await nights()).toEqual({ left: 1, lost: 0 });
    expect(await leave('2026-01-15')).toContain(LESS);
    expect(await nights()).toEqual({ left: 2, lost: 0 });
    expect(await rig.says('settings')).toContain('You left my call on 2 nights');
  });

  it('it is taken back with the deed, and by doing it after all', async () => {
    await leave('2026-01-14');
    await rig.says('undo');
    expect(await nights()).toEqual({ left: 0, lost: 0 });
    await leave('2026-01-15');
    await rig.says('done');
    expect(await nights()).toEqual({ left: 0, lost: 0 });
  });

  it('what nobody called for is no call that was left', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [] });
    expect(await rig.says("didn't cover the north bed")).not.toContain(LESS);
    expect(await nights()).toEqual({ left: 0, lost: 0 });
  });

  it('a call is left only where all of its beds are', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [COVER, SOUTH] });
    await rig.says('covered the north bed');
    expect(await rig.says("didn't cover the south bed")).not.toContain(LESS);
    await issued(rig.memory, '2026-01-15', { actions: [COVER, SOUTH] });
    expect(await rig.says("didn't cover the south bed", '2026-01-15T16:30')).not.toContain(LESS);
    expect(await rig.says("didn't cover the north bed")).toContain(LESS);
    expect((await nights()).left).toBe(1);
  });

  it('vents that stay open leave no call to cover', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [COVER, VENTS] });
    expect(await rig.says('did not shut the vents')).not.toContain(LESS);
    expect((await nights()).left).toBe(0);
  });

  it('what was forgotten is no call that was left', async () => {
    await issued(rig.memory, '2026-01-14', { actions: [COVER] });
    expect(await rig.says('forgot to cover last night', '2026-01-15T08:00')).not.toContain(LESS);
    expect(await rig.says("didn't cover last night")).toContain(LESS);
  });

  it('a loss after a night without a call is said and counts once; one after a call does not', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { kale: 0.1, lettuce: 0.2 }, couldDo: [COVER] });
    expect(await rig.says('the lettuce is dead', '2026-01-15T09:00')).toContain(MORE);
    expect(await rig.says('the kale is marked', '2026-01-15T09:30')).not.toContain(MORE);
    expect(await nights()).toEqual({ left: 0, lost: 1 });
    await issued(rig.memory, '2026-01-20', { crops: { kale: 0.3 }, actions: [COVER] });
    expect(await rig.says('the kale is dead', '2026-01-21T09:00')).not.toContain(MORE);
    expect(await rig.says('undo')).toContain('kale');
    expect(await nights()).toEqual({ left: 0, lost: 1 });
  });

  it('a loss where nothing that protects could be called for is no missing call', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { lettuce: 0.2 }, couldDo: [VENTS] });
    expect(await rig.says('the lettuce is dead', '2026-01-15T09:00')).not.toContain(MORE);
    expect((await nights()).lost).toBe(0);
  });

  it('a loss after a call for a fan or the vents alone, where beds could have been covered, is a missing call', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { lettuce: 0.2 }, actions: [{ action: 'tube-fan', run: true }, VENTS], couldDo: [COVER] });
    expect(await rig.says('the lettuce is dead', '2026-01-15T09:00')).toContain(MORE);
    expect((await nights()).lost).toBe(1);
  });

  it('is taken back with the word on the crop, and what came through says nothing', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { lettuce: 0.2 }, couldDo: [COVER] });
    await rig.says('the lettuce is dead', '2026-01-15T09:00');
    expect((await nights()).lost).toBe(1);
    await rig.says('undo');
    await rig.says('the lettuce is fine');
    expect(await nights()).toEqual({ left: 0, lost: 0 });
  });

  it('begins anew when somebody says how many trips, or how bad they are', async () => {
    await leave('2026-01-14');
    await leave('2026-01-15');
    await rig.says('be more careful');
    expect((await nights()).left).toBe(2);
    await rig.says('10 trips for a saved bed');
    expect((await nights()).left).toBe(0);
    expect(await leave('2026-01-16')).toContain(LESS);
    expect((await nights()).left).toBe(1);
    await rig.says('the trip is annoying');
    expect((await nights()).left).toBe(0);
    await rig.says('undo');
    expect((await nights()).left).toBe(1);
  });

  it('how bad the trip is takes nothing from what losses have taught', async () => {
    await issued(rig.memory, '2026-01-14', { crops: { lettuce: 0.2 }, couldDo: [COVER] });
    await rig.says('the lettuce is dead', '2026-01-15T09:00');
    await leave('2026-01-16');
    expect(await nights()).toEqual({ left: 1, lost: 1 });
    await rig.says('I hate going out at night');
    expect(await nights()).toEqual({ left: 0, lost: 1 });
    await rig.says('10 trips for a saved bed');
    expect(await nights()).toEqual({ left: 0, lost: 0 });
  });

  it('calls that were left are no reason to call less where an hour is worth nothing', async () => {
    await rig.says('my time is worth 0 an hour');
    expect(await leave('2026-01-14')).not.toContain(LESS);
    expect(await rig.says('settings')).not.toContain('less readily');
  });

  it('at the bound nothing moves, and nothing is said', async () => {
    const days = Array.from({ length: 16 }, (_, i) => `2026-02-${String(i + 1).padStart(2, '0')}`);
    const said: string[] = [];
    for (const date of days) said.push(await leave(date));
    // 1.1 to the power of 15 is the first above 4.
    expect(said.map((text) => text.includes(LESS))).toEqual(days.map((_, i) => i < 15));
  });
});
