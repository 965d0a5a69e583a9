import { describe, expect, it } from 'vitest';
import { learnHouse, type AcceptedReading, type LearnedHouse } from '../../engine/learn/learned-house.js';
import { predictNight } from '../../engine/learn/predict-night.js';
import { mixtureMeanK } from '../../engine/chance/mixture.js';
import { usualControls } from '../../engine/plan/controls-of-choices.js';
import { planEvening } from '../../engine/plan/plan-evening.js';
import { SECONDS_PER_DAY, SECONDS_PER_HOUR } from '../../engine/units.js';
import { checkedGreenhouse, CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, houseOf, inventedWeather, REFERENCE_FILE } from '../fixtures/houses.js';

const invented = { ...CLEAR_COLD_NIGHT, sunnyDays: 5 };
const greenhouse = checkedGreenhouse({ ...REFERENCE_FILE, beds: [{ name: 'north', area: 20, crops: [] }] });
const house = houseOf({ ...REFERENCE_FILE, beds: [{ name: 'north', area: 20, crops: [] }] });
const weather = inventedWeather(house, invented);
const controls = () => usualControls(greenhouse, house);
const nowS = hourOfLastNightS(invented, -9);
const dawnS = (night: number): number => hourOfLastNightS(invented, 7.5) - night * SECONDS_PER_DAY;
const learn = (readings: readonly AcceptedReading[], untilS = nowS, previous: LearnedHouse | null = null): LearnedHouse =>
  learnHouse({ greenhouse, weather, ground: GROUND, controls, readings, forecastMisses: [], changes: [], untilS }, previous);
const insideLowK = (learned: LearnedHouse): number => mixtureMeanK(predictNight({ greenhouse, weather, nowS, weatherAgeS: 0, controls }, learned).find(({ key }) => key.place === 'inside')!.low);
const dawns = (missK: number, from: LearnedHouse): AcceptedReading[] => [4, 3, 2, 1].map((night) => ({ timeS: dawnS(night), place: 'inside', statistic: 'low', valueK: from.rows.find(({ timeS }) => timeS === dawnS(night))!.atPriorK + missK }));

describe('an evening of a learned house', () => {
  const plain = learn([4, 3, 2, 1].map((night) => ({ timeS: dawnS(night), place: 'inside', statistic: 'low', valueK: 270 })));
  const colder = learn(dawns(-2, plain));

  it('is colder where the readings were colder than the house of the priors, by no more than they were', () => {
    const before = insideLowK(learn([]));
    expect(insideLowK(colder)).toBeLessThan(before - 0.5);
    expect(insideLowK(colder)).toBeGreaterThan(before - 3);
  });

  it('is the same after it was stored as text and read again', () => {
    expect(insideLowK(JSON.parse(JSON.stringify(colder)) as LearnedHouse)).toBe(insideLowK(colder));
  });

  it('is the same whether learned in one go or day by day', () => {
    const readings = dawns(-2, plain);
    const daily = [4, 3, 2, 1, 0].reduce<LearnedHouse | null>((learned, night) => {
      const untilS = nowS - night * SECONDS_PER_DAY;
      return learn(readings.filter(({ timeS }) => timeS <= untilS), untilS, learned);
    }, null)!;
    expect(daily.rows.length).toBe(4);
    expect(insideLowK(daily)).toBeCloseTo(insideLowK(colder), 6);
  });

  it('goes into the evening plan: inside is told colder, and a plan without it is as it was', () => {
    const input = { greenhouse, weather, ground: GROUND, nowS, bedtimeS: nowS + 6 * SECONDS_PER_HOUR, weatherAgeS: 0 };
    const low = (learned?: LearnedHouse): number => planEvening(learned ? { ...input, learned } : input).nothing.outlook.places.find(({ key }) => key.place === 'inside')!.meanK;
    expect(low(colder)).toBeLessThan(low(learn([])) - 0.5);
  });
});
