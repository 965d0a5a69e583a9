import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Advisory, AdvisoryHeat, AdvisoryPlace } from '../../../bot/features/evening/advisory.js';
import { whyText } from '../../../bot/text/why-text.js';
import { readingRig, type ReadingRig } from '../reading/reading-rig.js';
import { outsideGsm } from '../text/gsm.js';
import { REASONS } from '../text/invented-advisory.js';

const HEAT: AdvisoryHeat = { code: 'heat', lostW: 3560, to: { sky: 0.71, outside: 0.22, gaps: 0.07 }, from: { ground: 0.6, water: 0.2, stones: 0, heater: 0.1, compost: 0, outside: 0.02 }, cloud: 0.1, windMPerS: 1.5, forecastOffC: 2.4 };
const place = (name: AdvisoryPlace['place'], q50: number): AdvisoryPlace => ({ place: name, lowC: { mean: q50, q10: q50 - 2, q50, q90: q50 + 2 }, lowAt: '2026-01-15T06:00:00-05:00' });
const PLACES = [place('outside', -5), place('inside', -1.5), place('soil', 3.8), place('soil', 4.2)];
const why = (parts: Partial<Pick<Advisory, 'places' | 'reasons'>> = {}, units: 'C' | 'F' = 'C'): readonly string[] => {
  const text = whyText({ places: PLACES, reasons: [HEAT], ...parts }, { units, cropName: (id) => id });
  expect(outsideGsm(text), text).toEqual([]);
  expect(text, text).not.toMatch(/undefined|NaN|null/u);
  return text.split('\n');
};

describe('why', () => {
  it('says how cold, what takes the heat, what gives it, and how sure the forecast is', () => {
    expect(why()).toEqual([
      'I expect about -1.5C inside at the coldest, 3.5C warmer than outside.',
      'The sky is clear, the wind about 5 km/h: the house loses about 3.6 kW, 7 of 10 parts to the sky, 2 into the air outside, 1 out through gaps.',
      'The ground (4C at root depth) gives 6 of 10 parts, the drums 2, the heater 1.',
      'The forecast for outside may be 2.4C off either way.',
    ]);
  });

  it('speaks in the units of the grower', () => {
    // 1.5 m/s is 3.4 miles an hour; -1.5 and 4 degrees C are 29 and 39 F; 3.5 and 2.4 K are 6 and 4 degrees F.
    expect(why({}, 'F').join(' ')).toMatch(/29F inside at the coldest, 6F warmer[\s\S]* 3 mph[\s\S]*39F at root depth[\s\S]* 4F off/u);
  });

  it.each([
    [0.1, 'The sky is clear'],
    [0.5, 'The sky is partly clear'],
    [0.9, 'Cloud covers the sky'],
  ])('tells %s of cloud in words', (cloud, words) => {
    expect(why({ reasons: [{ ...HEAT, cloud }] })[1]).toContain(words);
  });

  it('says so where all goes one way, and where the house is no warmer or colder than outside', () => {
    expect(why({ reasons: [{ ...HEAT, to: { sky: 1, outside: 0, gaps: 0 } }] })[1]).toContain('all of it to the sky.');
    expect(why({ places: [place('outside', -5), place('inside', -4.8)] })[0]).toContain('about as cold as outside');
    expect(why({ places: [place('outside', -5), place('inside', -6)] })[0]).toContain('1C colder than outside');
  });

  it('names no more parts than there are', () => {
    // 3.6 + 3.6 + 2.8 of ten would be 4 + 4 + 3, each rounded by itself.
    expect(why({ reasons: [{ ...HEAT, to: { sky: 0.36, outside: 0.36, gaps: 0.28 } }] })[1]).toMatch(/4 of 10 parts to the sky, 3 into the air outside, 3 out through gaps/u);
  });

  it('adds the crop that the plan helps most, and stays within five sentences whatever the reasons', () => {
    const lines = why({ reasons: [...Object.values(REASONS).flat(), { code: 'plan-helps', crop: 'lettuce', asked: 'lettuce', bed: 'south', withoutDamageProbability: 0.9, withDamageProbability: 0.1 }] });
    expect(lines).toHaveLength(5);
    expect(lines[3]).toContain('the lettuce in south gets marked on 9 in 10 nights');
  });
});

describe('asked of what went out', () => {
  let rig: ReadingRig;
  beforeEach(async () => {
    rig = await readingRig();
    await rig.forecasts('2026-01-14', { inside: { lowC: -1 }, outside: { lowC: -6 } }, { reasons: [HEAT] });
  });
  afterEach(() => rig.close());

  it('it is that advisory, and nothing is worked out anew', async () => {
    expect(await rig.says('why?', '2026-01-14T17:00')).toContain('I expect about 30F inside');
  });

  it.each([
    ['hours later', async (): Promise<unknown> => rig.says('why?', '2026-01-14T22:30')],
    ['once something was done', async (): Promise<unknown> => {
      await rig.says('covered north', '2026-01-14T16:30');
      return rig.says('why?', '2026-01-14T17:00');
    }],
    ['of another night', async (): Promise<unknown> => rig.says('why?', '2026-01-15T12:00')],
  ])('%s the night is worked out anew', async (_when, ask) => {
    await expect(ask()).rejects.toThrow('nothing is worked out here');
  });
});
