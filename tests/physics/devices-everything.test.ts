import { beforeAll, describe, expect, it } from 'vitest';
import { FAN_PLACES, NO_TROUBLES, type Controls } from '../../engine/night/controls.js';
import { createEnergyAudit, type EnergyAuditResult } from '../../engine/night/energy-audit.js';
import { forcingFor } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { placesOf, placeTempK } from '../../engine/night/places.js';
import { startState } from '../../engine/night/start-state.js';
import { celsiusToKelvin, SECONDS_PER_HOUR } from '../../engine/units.js';
import { EVERYTHING } from '../fixtures/everything-house.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, inventedWeather, plainControls, referenceHouse, type InventedWeather } from '../fixtures/houses.js';

/** Fifteen days of a greenhouse that has one of everything, worked morning and evening. */
const FORTNIGHT: InventedWeather = { ...CLEAR_COLD_NIGHT, sunnyDays: 15 };
const SHUT_HOUR = 16.5;
const OPEN_HOUR = 8;
const house = referenceHouse(EVERYTHING);
const at = (timeS: number): number => ((((timeS - hourOfLastNightS(FORTNIGHT, 0)) / SECONDS_PER_HOUR) % 24) + 24) % 24;
const isNight = (timeS: number): boolean => at(timeS) > SHUT_HOUR || at(timeS) < OPEN_HOUR;
const snowFallsS = hourOfLastNightS(FORTNIGHT, -48);

const worked = (timeS: number): Partial<Controls> => ({
  coverOn: house.columns.map(({ rowCover }) => rowCover !== null && isNight(timeS)),
  curtainDrawn: isNight(timeS),
  heaterOn: isNight(timeS),
  heaterSetK: celsiusToKelvin(10),
  fansOn: { tubes: isNight(timeS), 'stone-box': true, heap: false, air: isNight(timeS) },
  troubles: { ...NO_TROUBLES, roofSnowM: timeS > snowFallsS ? 0.05 : 0 },
});

/** Steps after something was switched, in which a temperature may turn round. */
const SETTLING_STEPS = 3;
/** A change to and fro that is smaller is rounding. */
const SEEN_K = 0.01;

interface Series {
  readonly name: string;
  readonly tempsK: number[];
}

/** Largest |T(i-1) - 2 T(i) + T(i+1)| where the temperature turns round twice running, which nothing but a solver does. */
function largestAlternationK({ tempsK }: Series, switched: readonly boolean[]): number {
  let largest = 0;
  for (let i = 2; i < tempsK.length - 1; i += 1) {
    if (switched.slice(Math.max(0, i - SETTLING_STEPS), i + 2).some(Boolean)) continue;
    const before = tempsK[i - 1]! - tempsK[i - 2]!;
    const here = tempsK[i]! - tempsK[i - 1]!;
    const after = tempsK[i + 1]! - tempsK[i]!;
    if (before * here < 0 && here * after < 0) largest = Math.max(largest, Math.abs(after - here));
  }
  return largest;
}

describe('a greenhouse with everything through fifteen days', () => {
  const runner = houseRunner(house);
  const places = placesOf(runner);
  const series: Series[] = [...places.map(({ place, bed }) => `${place} ${bed ?? ''}`.trimEnd()), ...runner.model.network.nodes.map(({ name }) => `node ${name}`)].map((name) => ({ name, tempsK: [] }));
  const switched: boolean[] = [];
  let energy: EnergyAuditResult = { residualJ: NaN, turnoverJ: NaN, residualShare: NaN };
  let heaterRan = false;

  beforeAll(() => {
    const weather = inventedWeather(house, FORTNIGHT);
    const forcing = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! });
    const audit = createEnergyAudit(runner);
    let last = '';
    runHouse(runner, startState(runner, weather, GROUND).state, forcing, plainControls(house, FORTNIGHT, worked), (record) => {
      audit.observe(record);
      heaterRan ||= record.heaterW > 0;
      places.forEach((key, p) => series[p]!.tempsK.push(placeTempK(runner, record, key)));
      runner.model.network.nodes.forEach((_, n) => series[places.length + n]!.tempsK.push(record.tempsK[n]!));
      // A fan that the sun drives switches itself when it stalls.
      const state = JSON.stringify([record.controls, FAN_PLACES.map((place) => runner.model.conditions.fanWPerK[place] > 0)]);
      switched.push(state !== last);
      last = state;
    });
    energy = audit.result();
  });

  it('has every place that a house can have, heats, and lasts the fortnight', () => {
    expect(new Set(places.map(({ place }) => place))).toEqual(new Set(['outside', 'inside', 'cover', 'leaf', 'soil', 'water', 'stones', 'stone-box', 'tube', 'compost']));
    expect(heaterRan).toBe(true);
    expect(switched.length).toBeGreaterThan(15 * 144);
    expect(switched.filter(Boolean).length).toBeGreaterThan(30);
  });

  it('loses no heat: the account closes to a hundred-thousandth', () => {
    expect(energy.turnoverJ).toBeGreaterThan(1e9);
    expect(energy.residualShare).toBeLessThan(1e-5);
  });

  it('lets no temperature swing to and fro between steps', () => {
    const swinging = series.map((one) => ({ name: one.name, alternationK: largestAlternationK(one, switched) })).filter(({ alternationK }) => alternationK > SEEN_K);
    expect(swinging).toEqual([]);
  });
});
