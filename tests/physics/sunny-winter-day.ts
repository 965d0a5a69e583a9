import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import type { Controls } from '../../engine/night/controls.js';
import { forcingFor } from '../../engine/night/forcing.js';
import { houseRunner, runHouse, type HouseRunner, type StepRecord } from '../../engine/night/house-run.js';
import { startState } from '../../engine/night/start-state.js';
import type { GroundOutside } from '../../engine/night/weather.js';
import { sunPosition } from '../../engine/sun/position.js';
import { celsiusToKelvin, kelvinToCelsius, radiansToDegrees, SECONDS_PER_HOUR } from '../../engine/units.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, inventedWeather, plainControls, referenceHouse, type InventedWeather } from '../fixtures/houses.js';

/**
 * Three clear days of late November alike, sun 25 to 30 degrees high at noon at 40 to 45 N, -5 °C outside at noon, -8 in the morning,
 * light wind (1.5 m/s at the cover), grass around; all vents shut.
 */
export const CLEAR_WINTER_DAYS: InventedWeather = {
  ...CLEAR_COLD_NIGHT,
  dayHighK: celsiusToKelvin(-4),
  nightLowK: celsiusToKelvin(-8),
  lastLowK: celsiusToKelvin(-8),
  peakSunWPerM2: 480,
};

export const FORTY_NORTH: GreenhouseFile['place'] = { latitude: 40.1, longitude: -72.2, elevation: 180 };
export const FORTY_FIVE_NORTH: GreenhouseFile['place'] = { latitude: 45.1, longitude: -72.2, elevation: 180 };

/** One step of the last day: solar hour counted from its midnight, and what was there. */
export interface Moment {
  readonly hour: number;
  readonly sunHighDegrees: number;
  readonly insideC: number;
  readonly outsideC: number;
  /** Sunlight on the flat outside, W/m2, and what is kept in the house, W. */
  readonly globalWPerM2: number;
  readonly keptW: number;
  readonly tempC: (node: number) => number;
}

export interface SunnyDay {
  readonly runner: HouseRunner;
  /** The last day between 6 and 18 h. */
  readonly moments: readonly Moment[];
  readonly noon: Moment;
  /** Lowest inside temperature of the night after. */
  readonly nextDawnLowC: number;
}

export interface SunnyDayOptions {
  readonly weather?: Partial<InventedWeather>;
  readonly ground?: GroundOutside;
  readonly controls?: (timeS: number) => Partial<Controls>;
  readonly observe?: (runner: HouseRunner, record: StepRecord, keptW: number) => void;
}

export function sunnyWinterDay(changes: Partial<GreenhouseFile>, options: SunnyDayOptions = {}): SunnyDay {
  const house = referenceHouse({ place: FORTY_NORTH, ...changes });
  const invented = { ...CLEAR_WINTER_DAYS, ...options.weather };
  const runner = houseRunner(house);
  const weather = inventedWeather(house, invented);
  const forcing = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! });
  const controls = plainControls(house, invented, (timeS) => ({ ventsMayOpen: false, ...options.controls?.(timeS) }));
  const moments: Moment[] = [];
  let nextDawnLowC = Infinity;
  runHouse(runner, startState(runner, weather, options.ground ?? GROUND).state, forcing, controls, (record) => {
    options.observe?.(runner, record, forcing.sunW[record.stepIndex]!);
    const hour = 24 + (record.timeS - hourOfLastNightS(invented, 0)) / SECONDS_PER_HOUR;
    const insideC = kelvinToCelsius(record.tempsK[runner.model.air]!);
    if (hour > 18) nextDawnLowC = Math.min(nextDawnLowC, insideC);
    if (hour < 6 || hour > 18) return;
    const tempsK = Float64Array.from(record.tempsK);
    moments.push({
      hour,
      sunHighDegrees: radiansToDegrees(sunPosition(record.timeS - forcing.stepS / 2, house.place).altitudeRad),
      insideC,
      outsideC: kelvinToCelsius(record.tempsK[runner.model.outside]!),
      globalWPerM2: forcing.globalShortwaveWPerM2[record.stepIndex]!,
      keptW: forcing.sunW[record.stepIndex]!,
      tempC: (node) => kelvinToCelsius(tempsK[node]!),
    });
  });
  const noon = moments.reduce((best, moment) => (moment.sunHighDegrees > best.sunHighDegrees ? moment : best));
  return { runner, moments, noon, nextDawnLowC };
}

export const hottestC = ({ moments }: SunnyDay, node: number): number => Math.max(...moments.map(({ tempC }) => tempC(node)));
