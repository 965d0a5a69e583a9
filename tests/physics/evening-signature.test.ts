import { describe, expect, it } from 'vitest';
import { CLEAR_COLD_NIGHT, hourOfLastNightS, INSIDE, OUTSIDE, referenceHouse, runInventedNight } from '../fixtures/houses.js';

/**
 * Savage 1980, Agrochemophysica 12: in a plastic tunnel the inside air falls faster than the air outside after sunset (5.5 against 3.5 K/h)
 * and runs below it for about an hour and a half, until moisture on the film closes it for longwave; later the inside stands higher again.
 */
export const source = 'Savage1980';

const house = referenceHouse({ layers: [{ film: 'standard' }], soil: { kind: 'sand', moisture: 'dry', pathMoisture: 'dry' } });
const night = runInventedNight(house, CLEAR_COLD_NIGHT);
const hourOf = (timeS: number): number => (timeS - hourOfLastNightS(CLEAR_COLD_NIGHT, 0)) / 3600;
const between = (fromHour: number, toHour: number, values: readonly number[]): number[] => values.filter((_, i) => hourOf(night.timesS[i]!) > fromHour && hourOf(night.timesS[i]!) <= toHour);
const aboveOutsideK = night.seriesK(INSIDE).map((value, i) => value - night.seriesK(OUTSIDE)[i]!);
const fallKPerH = (series: readonly number[], fromHour: number): number => {
  const [first, last] = [between(fromHour - 0.2, fromHour, series)[0]!, between(fromHour + 0.8, fromHour + 1, series)[0]!];
  return first - last;
};

describe('single film on dry soil after a sunny day, clear evening', () => {
  it('cools faster than the air outside around sunset', () => {
    expect(fallKPerH(night.seriesK(INSIDE), -8)).toBeGreaterThan(1.5 * fallKPerH(night.seriesK(OUTSIDE), -8));
    expect(fallKPerH(night.seriesK(INSIDE), -8)).toBeGreaterThan(3.5);
  });

  it('runs more than 0.5 K below the air outside in the first hours of the night', () => {
    expect(Math.min(...between(-7.5, -3, aboveOutsideK))).toBeLessThan(-0.5);
  });

  it('comes back towards the outside air by at least 0.3 K before midnight is past', () => {
    const deepest = Math.min(...between(-7.5, -3, aboveOutsideK));
    expect(Math.max(...between(-2, 2, aboveOutsideK)) - deepest).toBeGreaterThan(0.3);
  });

  it('does not run below the outside air for long over moist soil with two films', () => {
    const moist = runInventedNight(referenceHouse(), CLEAR_COLD_NIGHT);
    const differences = moist.seriesK(INSIDE).map((value, i) => value - moist.seriesK(OUTSIDE)[i]!);
    expect(Math.min(...between(0, 6, differences))).toBeGreaterThan(0.5);
  });
});
