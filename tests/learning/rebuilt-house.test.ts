import { beforeAll, describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { learnHouse, type LearnedHouse } from '../../engine/learn/learned-house.js';
import { rebuiltHouse } from '../../engine/learn/rebuilt-house.js';
import { runNight } from '../../engine/night/night-run.js';
import { NO_CHOICES } from '../../engine/plan/action.js';
import { controlsOfChoices, usualControls } from '../../engine/plan/controls-of-choices.js';
import { eveningScene, type EveningInput } from '../../engine/plan/evening-scene.js';
import { planOutlook } from '../../engine/plan/outlook.js';
import { supposeNight, type PlaceChange } from '../../engine/plan/suppose-night.js';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../../engine/units.js';
import { checkedGreenhouse, CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, houseOf, inventedWeather, REFERENCE_FILE } from '../fixtures/houses.js';

const invented = { ...CLEAR_COLD_NIGHT, sunnyDays: 5 };
const FILE: GreenhouseFile = { ...REFERENCE_FILE, beds: [{ name: 'north', area: 20, crops: ['kale'] }] };
const standing = checkedGreenhouse(FILE);
const withDrums = checkedGreenhouse({ ...FILE, drums: [{ litres: 208, count: 6 }] });
const house = houseOf(FILE);
const weather = inventedWeather(house, invented);
const usual = () => usualControls(standing, house);
const controls = { standing: usual, supposed: usual };
const nowS = hourOfLastNightS(invented, -9);

let learned: LearnedHouse;
beforeAll(() => {
  learned = learnHouse({ greenhouse: standing, weather, ground: GROUND, controls: usual, readings: [], forecastMisses: [], changes: [], untilS: nowS });
});

describe('what was learned of a house, for the same house otherwise built', () => {
  it('stays as it is where nothing was built', () => {
    expect(rebuiltHouse(learned, { standing, supposed: standing, weather, ground: GROUND, controls }).states).toEqual(learned.states);
  });

  it('has its water as several nights and days made it, not as warm as the air of noon', () => {
    const { states } = rebuiltHouse(learned, { standing, supposed: withDrums, weather, ground: GROUND, controls });
    const drumsK = states[0]!.tempsK['drums 1']!;
    const airK = learned.plantAirTempK[0]!.slice(-48);
    expect(drumsK).toBeGreaterThan(Math.min(...airK));
    expect(drumsK).toBeLessThan(states[0]!.tempsK['inside air']! - 3);
  });

  it('comes back to what it was when what was put up is taken away again', () => {
    const there = rebuiltHouse(learned, { standing, supposed: withDrums, weather, ground: GROUND, controls });
    const back = rebuiltHouse(there, { standing: withDrums, supposed: standing, weather, ground: GROUND, controls });
    for (const [name, tempK] of Object.entries(learned.states[1]!.tempsK)) expect(back.states[1]!.tempsK[name]).toBeCloseTo(tempK, 9);
  });
});

describe('a night otherwise, beside the night of a learned house', () => {
  let input: EveningInput;
  let told: (greenhouse: typeof standing, of?: LearnedHouse) => readonly PlaceChange[];
  beforeAll(() => {
    input = { greenhouse: standing, weather, ground: GROUND, nowS, bedtimeS: nowS + 6 * SECONDS_PER_HOUR, weatherAgeS: 0, learned };
    const scene = eveningScene(input);
    const runs = scene.forcings.map((forcing) => runNight(scene.evening, forcing, controlsOfChoices(scene.house, scene.standing, NO_CHOICES)));
    const outlook = planOutlook(runs, scene.scenarios, scene.crops, { ...scene, coveredBeds: [] });
    told = (greenhouse, of = learned) => supposeNight({ ...input, greenhouse, learned: of }, NO_CHOICES, { greenhouse: standing, outlook, coveredBeds: [] }).changes;
  });

  it('is exactly the same, with no range, where nothing is otherwise', () => {
    for (const change of told(standing)) expect(change).toMatchObject({ meanK: 0, q10K: 0, q90K: 0 });
  });

  it('never claims to know a change better than the properties of what was put up are known', () => {
    const [inside] = told(withDrums);
    expect(inside!.meanK).toBeGreaterThan(0);
    // Film, exchange and leakage by their priors: 0.18, 0.23 and 0.12 K.
    expect(inside!.q90K - inside!.q10K).toBeGreaterThan(2 * 1.28 * Math.hypot(0.18, 0.23));
  });

  it('knows the same change better after readings of thirty nights, by what a study of such houses found', () => {
    const row = { key: '', thermometer: 'inside', readingK: 270, atPriorK: 270, slopes: [], censored: false, isOutside: false };
    const read = { ...learned, rows: Array.from({ length: 30 }, (_, n) => ({ ...row, timeS: nowS - n * SECONDS_PER_DAY })) };
    const [before, after] = [told(withDrums)[0]!, told(withDrums, read)[0]!];
    expect(after.meanK).toBeCloseTo(before.meanK, 9);
    const half = ({ q10K, q90K }: PlaceChange): number => (q90K - q10K) / 2 / 1.2816;
    // Squares of errors: 0.48 K of a change of 1.12 K before readings, 0.32 K after thirty, all else alike.
    expect(half(before) ** 2 - half(after) ** 2).toBeCloseTo((0.48 ** 2 - 0.32 ** 2) * (before.meanK / 1.12) ** 2, 1);
    expect(half(after)).toBeLessThan(half(before));
  });
});
