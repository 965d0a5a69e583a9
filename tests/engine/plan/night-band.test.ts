import { beforeAll, describe, expect, it } from 'vitest';
import { studentTQuantile } from '../../../engine/chance/student-t.js';
import { weatherScenarios, type ForecastDoubt } from '../../../engine/night/scenarios.js';
import type { NightRun } from '../../../engine/night/night-run.js';
import { nightBand, type NightBand } from '../../../engine/plan/night-band.js';
import { residualFor } from '../../../engine/plan/outlook.js';
import type { EveningPlan } from '../../../engine/plan/plan-evening.js';
import { inventedEvening } from '../../fixtures/invented-evening.js';

const START_S = 1_800_000_000;
const STEP_S = 600;
const STEPS = 60;
const WARM_UP_HOURS = 360;
const DOUBT: ForecastDoubt = { shiftK: 0, airTempSdK: 2, cloudSd: 0.25, correlation: 0, clearCalm: 0.5, spreadK: null, leadHours: 12 };
const WHOLE_NIGHT = { fromS: START_S, toS: START_S + STEPS * STEP_S };

/** An invented plan whose inside temperature is a falling line, moved by a share of each scenario's departure. */
function planOf(shareOfDeparture: number, airTempSdK = DOUBT.airTempSdK): Pick<EveningPlan, 'chosen' | 'doubt' | 'evening' | 'residual'> {
  const doubt = { ...DOUBT, airTempSdK };
  const runs = weatherScenarios(doubt, START_S).map(({ departure }): NightRun => {
    const inside = Float64Array.from({ length: STEPS }, (_, i) => 280 - i / 10 + shareOfDeparture * departure.airTempK);
    return { places: [{ place: 'outside' }, { place: 'inside' }], startS: START_S, stepS: STEP_S, tempK: [inside, inside], heaterJ: 0 };
  });
  return { chosen: { outlook: { runs } }, doubt, residual: residualFor(WARM_UP_HOURS), evening: { atS: START_S, warmUpHours: WARM_UP_HOURS } } as unknown as ReturnType<typeof planOf>;
}

const widthsK = ({ q10K, q90K }: NightBand): number[] => q90K.map((high, i) => high - q10K[i]!);

describe('the band of an invented night', () => {
  it('is the residual alone where the weather changes nothing', () => {
    const band = nightBand(planOf(0), { place: 'inside' }, WHOLE_NIGHT);
    const { scaleK, degreesOfFreedom } = residualFor(WARM_UP_HOURS);
    const halfK = scaleK * studentTQuantile(0.9, degreesOfFreedom);
    band.timesS.forEach((timeS, i) => {
      const centreK = 280 - ((timeS - START_S) / STEP_S - 1) / 10;
      expect(band.q10K[i]).toBeCloseTo(centreK - halfK, 6);
      expect(band.q50K[i]).toBeCloseTo(centreK, 6);
      expect(band.q90K[i]).toBeCloseTo(centreK + halfK, 6);
    });
  });

  it('has its quantiles in order, and lies evenly about the middle of even scenarios', () => {
    const band = nightBand(planOf(0.7), { place: 'inside' }, WHOLE_NIGHT);
    band.q50K.forEach((middleK, i) => {
      expect(band.q10K[i]).toBeLessThan(middleK);
      expect(band.q90K[i]).toBeGreaterThan(middleK);
      expect(band.q90K[i]! - middleK).toBeCloseTo(middleK - band.q10K[i]!, 6);
    });
  });

  it('is narrower the surer the forecast, and the less of it comes through', () => {
    const byDoubt = [4, 2, 1, 0.2].map((sdK) => widthsK(nightBand(planOf(0.7, sdK), { place: 'inside' }, WHOLE_NIGHT))[0]!);
    const byShare = [1, 0.5, 0.2, 0].map((share) => widthsK(nightBand(planOf(share), { place: 'inside' }, WHOLE_NIGHT))[0]!);
    for (const widths of [byDoubt, byShare]) expect(widths).toEqual([...widths].sort((a, b) => b - a));
    for (const widths of [byDoubt, byShare]) expect(widths[0]! - widths.at(-1)!).toBeGreaterThan(0.5);
  });

  it('has a value for each step of the span and none outside it', () => {
    const { timesS } = nightBand(planOf(0.7), { place: 'inside' }, { fromS: START_S + 3 * STEP_S, toS: START_S + 7 * STEP_S });
    expect(timesS).toEqual([3, 4, 5, 6, 7].map((step) => START_S + step * STEP_S));
  });

  it.each([{ place: 'outside' }, { place: 'water', bed: '1' }] as const)('refuses %o', (key) => {
    expect(() => nightBand(planOf(0.7), key, WHOLE_NIGHT)).toThrow(RangeError);
  });
});

describe('the band of a whole evening', () => {
  let plan: EveningPlan;
  const leaf = { place: 'leaf', bed: 'north' } as const;
  beforeAll(() => {
    plan = inventedEvening({});
  });

  it('holds the middle weather throughout', () => {
    const { startS, stepS, tempK, places } = plan.chosen.outlook.centralRun;
    const band = nightBand(plan, leaf, { fromS: startS, toS: plan.night.sunriseS });
    const series = tempK[places.findIndex(({ place, bed }) => place === 'leaf' && bed === 'north')]!;
    band.timesS.forEach((timeS, i) => {
      // The middle run carries half of the weight, so at least a quarter lies on either side of it.
      const centralK = series[Math.round((timeS - startS) / stepS) - 1]!;
      expect(band.q10K[i]).toBeLessThan(centralK);
      expect(band.q90K[i]).toBeGreaterThan(centralK);
    });
  });

  it('lies nowhere below the low that the night is expected to have', () => {
    const band = nightBand(plan, leaf, { fromS: plan.night.sunsetS, toS: plan.night.sunriseS });
    const low = plan.chosen.outlook.places.find(({ key }) => key.place === 'leaf' && key.bed === 'north')!;
    // The lowest of many instants is never above any one of them.
    expect(Math.min(...band.q10K)).toBeGreaterThanOrEqual(low.q10K - 1e-6);
    expect(Math.min(...band.q90K)).toBeGreaterThanOrEqual(low.q90K - 1e-6);
  });

  it('keeps a run for every scenario of every plan, the middle one first', () => {
    for (const { outlook } of plan.plans) {
      expect(outlook.runs).toHaveLength(7);
      expect(outlook.runs[0]).toBe(outlook.centralRun);
    }
  });
});
