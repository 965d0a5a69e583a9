import { SECONDS_PER_HOUR, celsiusToKelvin, saturationVapourPressureOverWaterPa, standardPressurePa, vapourPressureFromDewPointOverWaterPa, type WeatherHours } from '../../../engine/index.js';
import type { Place, WeatherNote } from '../../ports.js';
import { completeRun } from '../open-meteo/complete-run.js';
import { AnswerRefusedError } from '../open-meteo/errors.js';
import { clearSkyWPerM2, diffuseWPerM2, throughClouds } from '../sunlight.js';
import { hourly, hourlyTemperatureC, stepHours, type HourlyColumn } from './hourly.js';
import { precipitationMm } from './precipitation.js';
import { pressureAtHeightPa } from './pressure.js';
import { COARSE_HOURS } from './six-hours.js';
import { snowfallM } from './snowfall.js';
import type { MetNorwayAnswer, MetStep } from './wire.js';

/** The second service's hours from about now on, and what was not as wished. It knows neither the past nor the ground. */
export interface MetNorwayHours {
  readonly hours: WeatherHours;
  readonly notes: readonly WeatherNote[];
}

const PERCENT = 100;
const PA_PER_HPA = 100;
/** Normal quantile of 90 %: the outer tenths lie 1.28 standard deviations from the middle. */
const DEVIATIONS_TO_TENTH = 1.2815516;
/** Four runs a day: an answer whose forecast is older is one that the service forgot to renew. */
const OLDEST_RUN_S = 24 * SECONDS_PER_HOUR;

/** Throws AnswerRefusedError when a core value (temperature, humidity, wind, cloud) is missing, or the answer does not reach the coming night. */
export function metNorwayHours(answer: MetNorwayAnswer, context: { readonly place: Place; readonly nowS: number }): MetNorwayHours {
  const { place, nowS } = context;
  checkAge(answer, nowS);
  const notes: WeatherNote[] = [];
  const series = stepHours(fromPresentHour(answer.steps, nowS, notes));
  const tempC = hourlyTemperatureC(series, place);
  const vapourPa = hourly(series, vapourPressurePa);
  const windMPerS = hourly(series, ({ instant }) => instant.wind_speed);
  const cloudPercent = hourly(series, ({ instant }) => instant.cloud_area_fraction);
  const { from, to } = completeRun(series.timeS, [tempC, vapourPa, windMPerS, cloudPercent].map(({ values }) => values), nowS);
  const indices = Array.from({ length: to - from }, (_, k) => from + k);
  const bridged = (variable: string, column: HourlyColumn): void => {
    const hours = column.bridged.filter((i) => i >= from && i < to).length;
    if (hours > 0) notes.push({ code: 'filled-gap', variable, hours });
  };
  bridged('temperature_2m', tempC);
  bridged('dew_point_2m', vapourPa);
  bridged('wind_speed_10m', windMPerS);
  bridged('cloud_cover', cloudPercent);
  if (series.hourlyUntilS < (series.timeS[to - 1] ?? 0)) notes.push({ code: 'coarse-steps', startsAtS: series.hourlyUntilS, stepHours: COARSE_HOURS });

  const certain = (column: HourlyColumn, i: number): number => column.values[i] ?? Number.NaN; // inside the complete run there are no holes
  const timeS = indices.map((i) => series.timeS[i] ?? Number.NaN);
  const airTempK = indices.map((i) => celsiusToKelvin(certain(tempC, i)));
  const vapourPressures = indices.map((i, k) => Math.min(certain(vapourPa, i), saturationVapourPressureOverWaterPa(airTempK[k] ?? Number.NaN)));
  const cloudFraction = indices.map((i) => certain(cloudPercent, i) / PERCENT);
  const globalShortwaveWPerM2 = timeS.map((t, k) => clearSkyWPerM2(place, t) * throughClouds(cloudFraction[k] ?? Number.NaN));
  const surfacePressurePa = surfacePressures(answer, place, { seaLevelHpa: hourly(series, ({ instant }) => instant.air_pressure_at_sea_level).values.slice(from, to), airTempK, notes });
  const wet = precipitationMm(series);
  const spread = hourly(series, spreadK).values;
  if (indices.every((i) => (spread[i] ?? null) === null)) notes.push({ code: 'no-ensemble', cause: 'the second service gives no range here' });
  return {
    hours: {
      timeS,
      airTempK,
      vapourPressurePa: vapourPressures,
      windSpeed10mMPerS: indices.map((i) => certain(windMPerS, i)),
      cloudFraction,
      globalShortwaveWPerM2,
      diffuseShortwaveWPerM2: timeS.map((t, k) => Math.min(globalShortwaveWPerM2[k] ?? 0, diffuseWPerM2(place, t, globalShortwaveWPerM2[k] ?? 0))),
      surfacePressurePa,
      snowfallM: indices.map((i, k) => snowfallM(wet[i] ?? 0, { airTempK: airTempK[k] ?? Number.NaN, vapourPressurePa: vapourPressures[k] ?? Number.NaN, pressurePa: surfacePressurePa[k] ?? Number.NaN })),
      airTempSpreadK: indices.map((i) => spread[i] ?? null),
      cloudSpread: indices.map(() => null),
      airTempCloudCorrelation: indices.map(() => null),
      modelDifferenceK: indices.map(() => null),
    },
    notes,
  };
}

function checkAge({ updatedAtS }: MetNorwayAnswer, nowS: number): void {
  if (nowS - updatedAtS <= OLDEST_RUN_S) return;
  throw new AnswerRefusedError('Second weather answer, updated_at', { expected: `a forecast made within ${OLDEST_RUN_S / SECONDS_PER_HOUR} h`, got: new Date(updatedAtS * 1000).toISOString(), todo: 'It is asked again when the answer expires.' });
}

/** The series may begin with the coming full hour: then its first step stands for the present hour too. */
function fromPresentHour(steps: readonly MetStep[], nowS: number, notes: WeatherNote[]): readonly MetStep[] {
  const [first] = steps;
  if (first === undefined || first.timeS <= nowS || first.timeS - nowS > SECONDS_PER_HOUR) return steps;
  notes.push({ code: 'filled-gap', variable: 'the present hour', hours: 1 });
  const untold = { precipitation_amount: null, air_temperature_min: null, air_temperature_max: null };
  return [{ ...first, timeS: first.timeS - SECONDS_PER_HOUR, nextHour: untold, nextSixHours: untold }, ...steps];
}

/** From the dew point, or where that is missing from the humidity; both over liquid water, as the service means them. */
function vapourPressurePa({ instant }: MetStep): number | null {
  const { dew_point_temperature: dewPointC, relative_humidity: humidityPercent, air_temperature: airTempC } = instant;
  if (dewPointC !== null) return vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(dewPointC));
  if (humidityPercent === null || airTempC === null) return null;
  return (humidityPercent / PERCENT) * saturationVapourPressureOverWaterPa(celsiusToKelvin(airTempC));
}

function spreadK({ instant }: MetStep): number | null {
  const { air_temperature_percentile_10: low, air_temperature_percentile_90: high } = instant;
  return low === null || high === null || high < low ? null : (high - low) / (2 * DEVIATIONS_TO_TENTH);
}

function surfacePressures(
  answer: MetNorwayAnswer,
  place: Place,
  known: { readonly seaLevelHpa: readonly (number | null)[]; readonly airTempK: readonly number[]; readonly notes: WeatherNote[] },
): readonly number[] {
  const heightM = place.elevationM ?? answer.altitudeM ?? 0;
  if (known.seaLevelHpa.some((value) => value === null)) known.notes.push({ code: 'missing-variable', variable: 'surface_pressure', instead: `standard atmosphere at ${heightM} m` });
  return known.seaLevelHpa.map((hpa, k) => (hpa === null ? standardPressurePa(heightM) : pressureAtHeightPa(hpa * PA_PER_HPA, heightM, known.airTempK[k] ?? Number.NaN)));
}
