import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import { fanAdvice, type FanAdvice } from '../../../engine/plan/fan-advice.js';
import { plantsLowK, type TrialNight } from '../../../engine/plan/plants-low.js';
import { eveningState } from '../../../engine/night/evening-state.js';
import { forcingFor, STEP_S } from '../../../engine/night/forcing.js';
import { nightSpan } from '../../../engine/night/night-span.js';
import { standingControls, usualControls } from '../../../engine/plan/controls-of-choices.js';
import { toHouse } from '../../../engine/greenhouse/to-house.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { CLEAR_COLD_NIGHT, checkedGreenhouse, GROUND, hourOfLastNightS, inventedWeather, REFERENCE_FILE, type InventedWeather } from '../../fixtures/houses.js';

const NIGHT: InventedWeather = CLEAR_COLD_NIGHT;

/** The afternoon before the reference night, with the fans of a greenhouse. */
function trialOf(changes: Partial<GreenhouseFile>, weather = NIGHT): TrialNight {
  const greenhouse = checkedGreenhouse({ ...REFERENCE_FILE, ...changes });
  const house = toHouse(greenhouse);
  const hours = inventedWeather(house, weather);
  const nowS = hourOfLastNightS(weather, -9.5);
  const evening = eveningState({ house, weather: hours, ground: GROUND, nowS, pastControls: () => usualControls(greenhouse, house) });
  const endS = evening.atS + Math.floor((hours.timeS.at(-1)! - evening.atS) / STEP_S) * STEP_S;
  return { house, night: nightSpan(nowS, greenhouse.place), evening, standing: standingControls(greenhouse, house), central: forcingFor(house, hours, { fromS: evening.atS, toS: endS }), nowS, plantedBeds: ['north', 'south'] };
}

type Fan = NonNullable<GreenhouseFile['fan']>;
const tubes = (fan: Fan): Partial<GreenhouseFile> => ({ tubes: { length: 12, count: 2, depth: 0.8, fan } });
const BLOWER = { airflow: 150, power: 25 } as const;
const adviceOn = (changes: Partial<GreenhouseFile>, weather?: InventedWeather): FanAdvice => fanAdvice(trialOf(changes, weather), {})[0]!;

describe('the fan of the ground tubes', () => {
  it('on the mains is run through the cold of the night, and is worth what the runs say', () => {
    const trial = trialOf(tubes(BLOWER));
    const advice = fanAdvice(trial, {})[0]!;
    if (advice.advice !== 'run') throw new Error(`expected to run it, got ${advice.advice}`);
    expect(advice.span.fromS).toBeGreaterThanOrEqual(trial.night.sunsetS - STEP_S);
    expect(advice.span.untilS).toBeGreaterThan(trial.night.sunriseS - 600);
    const worthK = plantsLowK(trial, { fans: new Map([['tubes', advice.span]]) }) - plantsLowK(trial, {});
    expect(advice.worthK).toBeCloseTo(worthK, 9);
    // Measured: closed tubes brought small houses 1 to 8 K on cold nights, with far more air for each m2 at the upper end (physics notes, section 8).
    expect(worthK).toBeGreaterThan(0.3);
    expect(worthK).toBeLessThan(4);
  });

  it('on a battery runs in the hours that help most: they beat the same hours at dusk', () => {
    const trial = trialOf(tubes({ ...BLOWER, supply: 'battery', battery: 125 }));
    const advice = fanAdvice(trial, {})[0]!;
    if (advice.advice !== 'run') throw new Error(`expected to run it, got ${advice.advice}`);
    const lengthS = advice.span.untilS - advice.span.fromS;
    expect(lengthS).toBeCloseTo((0.8 * 125 * 3600) / 25, 6);
    expect(advice.batteryShort).toBe(true);
    const { sunsetS } = trial.night;
    const low = (fromS: number): number => plantsLowK(trial, { fans: new Map([['tubes', { fromS, untilS: fromS + lengthS }]]) });
    const atDuskK = low(sunsetS);
    expect(low(advice.span.fromS)).toBeGreaterThan(atDuskK + 0.2);
    for (let hour = 1; hour <= 12; hour += 1) expect(low(advice.span.fromS)).toBeGreaterThanOrEqual(low(sunsetS + hour * 3600) - 0.05);
  });

  it('on sun alone stands still at night and brings nothing', () => {
    const changes = tubes({ ...BLOWER, supply: 'sun' });
    expect(adviceOn(changes)).toEqual({ place: 'tubes', advice: 'stands-still' });
    const trial = trialOf(changes);
    expect(plantsLowK(trial, { fans: new Map([['tubes', { fromS: trial.night.sunsetS, untilS: trial.night.sunriseS }]]) })).toBe(plantsLowK(trial, {}));
  });

  it('is left alone on a mild night, when the house is as warm as the ground', () => {
    const mild: InventedWeather = { ...NIGHT, dayHighK: celsiusToKelvin(16), nightLowK: celsiusToKelvin(10), lastLowK: celsiusToKelvin(11), lastNightCloud: 1, dayCloud: 1 };
    expect(adviceOn(tubes(BLOWER), mild).advice).toBe('leave-as-it-is');
  });

  it('without current is not counted on', () => {
    expect(adviceOn({ ...tubes(BLOWER), now: { powerOut: true } })).toEqual({ place: 'tubes', advice: 'no-current' });
    expect(adviceOn({ ...tubes({ ...BLOWER, supply: 'battery', battery: 500 }), now: { powerOut: true } }).advice).toBe('run');
    expect(adviceOn({ ...tubes({ ...BLOWER, supply: 'battery', battery: 500 }), now: { fansDead: true } }).advice).toBe('no-current');
  });

  it('that runs already is stopped only when it takes more than it brings', () => {
    expect(adviceOn(tubes({ ...BLOWER, on: true }))).toMatchObject({ advice: 'leave-as-it-is' });
    // Tubes just under the floor of a cold house bring nothing; a strong motor pays for itself in warmth, so it is made small here.
    const shallow = adviceOn({ tubes: { length: 1, count: 1, depth: 0.1, diameter: 0.3, fan: { airflow: 20, power: 0.5, on: true } } });
    expect(['leave-as-it-is', 'stop']).toContain(shallow.advice);
  });
});

describe('other fans', () => {
  it('each get a word of their own, one on top of the other', () => {
    const places = fanAdvice(trialOf({ ...tubes(BLOWER), stoneBox: { volume: 0.6, glazed: 1.5, fan: BLOWER }, compost: { volume: 1, started: '2026-11-10', fan: BLOWER }, fan: { airflow: 800, power: 40 } }), {}).map(({ place }) => place);
    expect(places).toEqual(['tubes', 'stone-box', 'heap', 'air']);
  });

  it('a house without fans gets no word', () => {
    expect(fanAdvice(trialOf({}), {})).toEqual([]);
  });
});
