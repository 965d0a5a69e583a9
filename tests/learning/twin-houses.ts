import { normalCdf } from '../../engine/chance/normal.js';
import type { Greenhouse } from '../../engine/greenhouse/greenhouse.js';
import { toHouse } from '../../engine/greenhouse/to-house.js';
import type { House } from '../../engine/greenhouse/house.js';
import { calibrate, RESIDUAL_PRIOR, type CalibrationRow } from '../../engine/learn/calibrate.js';
import { firstState, groundShifted, revivedState, seriesValueK, storedState, type PointSeries } from '../../engine/learn/house-points.js';
import { learnHouse, type AcceptedReading } from '../../engine/learn/learned-house.js';
import { cloudWeightAt, FITTED, HOUSE_PARAMETERS, houseAt, weatherAt, type ParameterId, type Whitened } from '../../engine/learn/parameters.js';
import type { ControlPlan } from '../../engine/night/controls.js';
import { AS_FORECAST, forcingFor } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { nightSpan } from '../../engine/night/night-span.js';
import { placesOf, placeTempK } from '../../engine/night/places.js';
import type { WeatherHours } from '../../engine/night/weather.js';
import { usualControls } from '../../engine/plan/controls-of-choices.js';
import { SECONDS_PER_DAY } from '../../engine/units.js';
import { seededRandom, type Random } from '../physics/random-houses.js';
import { dayOfWinterS, GROUND_OUTSIDE, normalFrom, variedWinter } from './varied-winter.js';

/** A house of our own making whose truth is known, and what its readings taught. */
export interface Twin {
  readonly truth: Whitened;
  readonly found: Whitened;
  readonly spread: readonly number[];
  /** Where the true value lies in what is believed of it, 0 to 1: even where the belief is sound. */
  readonly rank: readonly number[];
}

/** What a reading of a twin has of its own: all that the physics and the parameters do not say. */
export interface ReadingNoise {
  /** A thermometer against the air, one for each. */
  readonly thermometerSdK: number;
  /** Of one reading, in part shared by those of a night. */
  readonly readingSdK: (random: Random) => number;
  readonly sharedInNight: number;
}

/** As the calibration believes it to be: its prior of what no parameter says, drawn anew for each house. */
export const AS_BELIEVED: ReadingNoise = {
  thermometerSdK: 0.5,
  readingSdK: (random) => RESIDUAL_PRIOR.scaleK * Math.sqrt(RESIDUAL_PRIOR.readings / Array.from({ length: RESIDUAL_PRIOR.readings }, () => normalFrom(random) ** 2).reduce((sum, square) => sum + square, 0)),
  sharedInNight: 0.6,
};
/** A garden thermometer alone, read to a degree Fahrenheit: our physics is taken to be the world's. */
export const THERMOMETER_ALONE: ReadingNoise = { thermometerSdK: 0.5, readingSdK: () => 0.4, sharedInNight: 0 };

const DAWN_H = 8;
const EVENING_H = 21;
const EVENING_EVERY_DAYS = 3;
const FIRST_MORNING = 3;

/** Twins of one house in one winter; they differ in what is hidden and in how they were read. */
export function twinsOf(greenhouse: Greenhouse, of: { mornings: number; twins: number; seed: number; noise: ReadingNoise }): readonly Twin[] {
  const random = seededRandom(of.seed);
  const days = FIRST_MORNING + of.mornings;
  const weather = variedWinter(greenhouse, days + 1, random);
  const usual = usualControls(greenhouse, toHouse(greenhouse));
  const controls: ControlPlan = () => usual;
  const readings = Array.from({ length: of.mornings }, (_, n) => FIRST_MORNING + n).flatMap((day): readonly AcceptedReading[] => {
    const at = (sunHour: number): number => dayOfWinterS(day, greenhouse.place, sunHour);
    return [
      { timeS: at(DAWN_H), place: 'inside', statistic: 'low', valueK: 0 },
      { timeS: at(DAWN_H), place: 'outside', statistic: 'low', valueK: 0 },
      ...(day % EVENING_EVERY_DAYS === 0 ? [{ timeS: at(EVENING_H), place: 'inside', statistic: 'now', valueK: 0 } as const] : []),
    ];
  });
  const untilS = dayOfWinterS(days, greenhouse.place, DAWN_H);
  // What the house has at every point does not depend on what is read: it is run once for all twins.
  const { rows } = learnHouse({ greenhouse, weather, ground: GROUND_OUTSIDE, controls, readings, forecastMisses: [], changes: [], untilS });
  return Array.from({ length: of.twins }, (): Twin => {
    const hidden = Object.fromEntries(HOUSE_PARAMETERS.map(({ id }) => [id, normalFrom(random)])) as Record<ParameterId, number>;
    const truth = FITTED.map(({ id }) => hidden[id]);
    const series = trueRun(greenhouse, hidden, { weather, controls, toS: untilS });
    const { z: found, covariance } = calibrate(readBy(rows, series, { greenhouse, noise: of.noise, random }), untilS);
    const spread = covariance.map((row, k) => Math.sqrt(row[k]!));
    return { truth, found, spread, rank: truth.map((z, k) => normalCdf((z - found[k]!) / spread[k]!)) };
  });
}

/** The house as it truly is, what no reading can tell among it, from its own soil on. */
function trueRun(greenhouse: Greenhouse, hidden: Readonly<Record<ParameterId, number>>, { weather, controls, toS }: { weather: WeatherHours; controls: ControlPlan; toS: number }): PointSeries {
  const z = FITTED.map(({ id }) => hidden[id]);
  const house = withUntold(houseAt(toHouse(greenhouse), z), hidden);
  const runner = houseRunner(house);
  const fromS = weather.timeS[0]!;
  const start = revivedState(runner, groundShifted(greenhouse, z, firstState(greenhouse, { weather, ground: GROUND_OUTSIDE })));
  const forcing = forcingFor(house, weatherAt(weather, z, house.windShare), { fromS, toS }, { ...AS_FORECAST, cloudWeight: cloudWeightAt(z) });
  const places = placesOf(runner).filter(({ place }) => place !== 'leaf');
  const tempK = places.map(() => new Float64Array(forcing.outsideAirTempK.length));
  const state = runHouse(runner, start, forcing, controls, (record) => places.forEach((place, p) => (tempK[p]![record.stepIndex] = placeTempK(runner, record, place))));
  return { places, startS: fromS, tempK, state: storedState(runner, state), plantAirTempK: [] };
}

function withUntold(house: House, hidden: Readonly<Record<ParameterId, number>>): House {
  const factor = (id: ParameterId): number => Math.exp(HOUSE_PARAMETERS.find((parameter) => parameter.id === id)!.spread * hidden[id]);
  const { stillAirChangesPerHour, perWindAirChangesPerHour } = house.leakage;
  return {
    ...house,
    leakage: { stillAirChangesPerHour: stillAirChangesPerHour * factor('leakage'), perWindAirChangesPerHour: perWindAirChangesPerHour * factor('leakage') },
    columns: house.columns.map((column) => ({ ...column, soil: { ...column.soil, volumetricHeatCapacityJPerM3K: column.soil.volumetricHeatCapacityJPerM3K * factor('heat-capacity') } })),
  };
}

/** The rows of the house with what its thermometers showed. */
function readBy(rows: readonly CalibrationRow[], series: PointSeries, { greenhouse, noise, random }: { greenhouse: Greenhouse; noise: ReadingNoise; random: Random }): readonly CalibrationRow[] {
  const sdK = noise.readingSdK(random);
  const offsets = { inside: noise.thermometerSdK * normalFrom(random), outside: noise.thermometerSdK * normalFrom(random) };
  const shared = new Map<number, number>();
  return rows.map((row) => {
    const place = row.thermometer as keyof typeof offsets;
    const isLow = row.key.includes(' low ');
    const night = nightSpan(row.timeS - (isLow ? SECONDS_PER_DAY / 2 : 0), greenhouse.place);
    const nightKey = Math.round(night.sunsetS / SECONDS_PER_DAY);
    if (!shared.has(nightKey)) shared.set(nightKey, normalFrom(random));
    const at = series.places.findIndex((key) => key.place === place);
    const trueK = seriesValueK(series, at, { fromS: Math.min(night.sunsetS, row.timeS), toS: row.timeS, statistic: isLow ? 'low' : 'now' });
    const strayK = sdK * (Math.sqrt(noise.sharedInNight) * shared.get(nightKey)! + Math.sqrt(1 - noise.sharedInNight) * normalFrom(random));
    return { ...row, readingK: trueK + offsets[place] + strayK };
  });
}
