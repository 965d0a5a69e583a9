import { describe, expect, it } from 'vitest';
import { bedStakes } from '../../../engine/plan/bed-stakes.js';
import { choose } from '../../../engine/plan/choose.js';
import type { Greenhouse, GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import { lossWeightFor, toleranceOf, tripShareOf } from '../../../engine/plan/tolerance.js';
import { inventedEvening } from '../../fixtures/invented-evening.js';
import { checked } from '../greenhouse/files.js';
import { oneAction } from './worked-night.js';

/** The one action of the worked cases costs 10 and saves 100. */
const SHARE = 10 / 100;
const SET = { hourWorth: 12, trip: 'easy', careful: 'normal' } as const;

describe('how many needless trips one saved bed is worth', () => {
  it.each([[4, 0.2, 0.5], [9, 0.1, 1], [19, 0.05, 2]])('%i trips: work pays from a chance of %f, losses weigh %f', (trips, chance, weight) => {
    expect(lossWeightFor(trips, SHARE)).toBeCloseTo(weight, 12);
    const { losses } = choose(oneAction(chance, { lossWeight: lossWeightFor(trips, SHARE) }));
    expect(losses.get('none')).toBeCloseTo(losses.get('act')!, 9);
  });

  it('is bounded, whatever is asked', () => {
    expect([lossWeightFor(0, SHARE), lossWeightFor(100, SHARE)]).toEqual([0.5, 4]);
  });

  it('a name and its number are the same', () => {
    for (const [name, trips] of [['relaxed', 3], ['normal', 5], ['careful', 10], ['never-lose-it', 20]] as const) expect(lossWeightFor(name, SHARE)).toBe(lossWeightFor(trips, SHARE));
  });
});

describe("the grower's own trip and main bed", () => {
  const cover = { kind: 'fabric', weight: 30 };
  const house = (grower: object, beds: readonly object[]): Greenhouse => checked({ beds: [...beds], grower } as Partial<GreenhouseFile>);

  it('is the covered bed of most worth: w h t/60 and half a unit for light and damp, over its worth', () => {
    const beds = [{ name: 'small', area: 2, cover, worth: 20, crops: ['kale'] }, { name: 'main', area: 6, cover, worth: 60, coverMinutes: 30, crops: ['lettuce'] }, { name: 'bare', area: 4, worth: 500, crops: ['leek'] }];
    expect(tripShareOf(house({ trip: 'easy' }, beds))).toBeCloseTo((15 * 0.5 + 0.5) / 60, 12);
    expect(tripShareOf(house({ trip: 'annoying' }, beds))).toBeCloseTo((15 * 1.5 * 0.5 + 0.5) / 60, 12);
    expect(tripShareOf(house({ trip: 'awful', hourWorth: 20 }, beds))).toBeCloseTo((20 * 2.5 * 0.5 + 0.5) / 60, 12);
  });

  it('is not of a bed in which nothing grows', () => {
    expect(tripShareOf(house({}, [{ name: 'empty', area: 6, cover, worth: 90, crops: [] }, { name: 'main', area: 6, cover, worth: 60, coverMinutes: 30, crops: ['lettuce'] }]))).toBeCloseTo((15 * 0.5 + 0.5) / 60, 12);
  });

  it('is not there without a cover, or without worth', () => {
    expect(tripShareOf(house({}, [{ name: 'bare', area: 4, crops: ['leek'] }]))).toBeNull();
    expect(tripShareOf(house({}, [{ name: 'main', area: 4, cover, worth: 0, crops: ['leek'] }]))).toBeNull();
  });
});

describe('worth of beds', () => {
  it("is a crop's own, else its part of the bed's, else 5 for each square metre", () => {
    const beds = bedStakes(checked({ beds: [{ name: 'a', area: 6, crops: [{ crop: 'kale', worth: 70 }, 'leek'] }, { name: 'b', area: 2, worth: 40, crops: ['lettuce', 'spinach'] }] }));
    expect(beds.map(({ crops }) => crops.map(({ worth, isGiven }) => [worth, isGiven]))).toEqual([[[70, true], [15, false]], [[20, true], [20, true]]]);
    expect(beds.map(({ worth }) => worth)).toEqual([85, 40]);
  });

  it("where the bed's is given, other crops share what those of their own worth leave of it", () => {
    const [whole, over] = bedStakes(checked({ beds: [{ name: 'a', area: 6, worth: 90, crops: [{ crop: 'kale', worth: 60 }, 'lettuce', 'leek'] }, { name: 'b', area: 2, worth: 40, crops: [{ crop: 'kale', worth: 60 }, 'spinach'] }] }));
    expect(whole).toMatchObject({ worth: 90, crops: [{ worth: 60 }, { worth: 15 }, { worth: 15 }] });
    expect(over).toMatchObject({ worth: 60, crops: [{ worth: 60 }, { worth: 0 }] });
  });
});

describe('what nights say', () => {
  it('nothing was said: as it was set', () => {
    expect(toleranceOf(SET)).toEqual({ hourWorth: 12, hassle: 1, lossWeight: 1 });
    expect(toleranceOf({ ...SET, trip: 'awful', careful: 9, tripShare: SHARE })).toEqual({ hourWorth: 12, hassle: 2.5, lossWeight: 1 });
  });

  it('a call that was left makes effort weigh a tenth more, a loss without a call makes losses weigh a quarter more', () => {
    expect(toleranceOf(SET, { left: 2, lost: 0 }).hourWorth).toBeCloseTo(12 * 1.1 * 1.1, 12);
    expect(toleranceOf(SET, { left: 0, lost: 2 }).lossWeight).toBeCloseTo(1.25 * 1.25, 12);
    expect(toleranceOf(SET, { left: 2, lost: 0 }).lossWeight).toBe(1);
  });

  it('both are bounded', () => {
    const most = toleranceOf({ ...SET, careful: 'never-lose-it' }, { left: 50, lost: 50 });
    expect([most.hourWorth, most.lossWeight]).toEqual([48, 4]);
  });
});

describe('an evening', () => {
  const beds: GreenhouseFile['beds'] = [{ name: 'north', area: 10, crops: ['lettuce'], worth: 40, coverMinutes: 30, cover: { kind: 'fabric', weight: 30 } }];
  const evening = (grower: GreenhouseFile['grower'] = {}, input: Parameters<typeof inventedEvening>[2] = {}) => inventedEvening({ beds, grower }, undefined, input);
  const covering = ({ plans }: ReturnType<typeof evening>) => plans.find(({ coveredBeds }) => coveredBeds.length > 0)!;
  const usual = evening();

  it('is not answered otherwise where nothing was set and nothing happened', () => {
    expect(evening({ trip: 'easy', careful: 'normal' }, { toleranceNights: { left: 0, lost: 0 } }).plans.map(({ expectedLoss }) => expectedLoss)).toEqual(usual.plans.map(({ expectedLoss }) => expectedLoss));
  });

  it('weighs what doing nothing loses by a quarter more after a loss without a call', () => {
    expect(evening({}, { toleranceNights: { left: 0, lost: 1 } }).nothing.expectedLoss / usual.nothing.expectedLoss).toBeCloseTo(1.25, 9);
  });

  it('adds to the work of covering what an awful trip and a call that was left add to its effort: half an hour at 15', () => {
    expect(covering(evening({ trip: 'awful' })).expectedLoss - covering(usual).expectedLoss).toBeCloseTo(7.5 * (2.5 - 1), 9);
    expect(covering(evening({}, { toleranceNights: { left: 1, lost: 0 } })).expectedLoss - covering(usual).expectedLoss).toBeCloseTo(7.5 * 0.1, 9);
  });
});
