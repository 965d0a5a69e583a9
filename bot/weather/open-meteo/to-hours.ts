import { celsiusToKelvin, saturationVapourPressureOverWaterPa, standardPressurePa } from '../../../engine/index.js';
import type { GroundOutside, WeatherHours } from '../../../engine/index.js';
import type { Place, WeatherNote } from '../../ports.js';
import { clearSkyWPerM2, diffuseWPerM2, throughClouds } from '../sunlight.js';
import { ofModel, preferred, withShortGapsClosed, type Column } from './columns.js';
import { completeRun } from './complete-run.js';
import { hoursOfSpread, type EnsembleHour, type EnsembleHours } from './ensemble.js';
import { AnswerRefusedError, WHOLE_ANSWER } from './errors.js';
import { groundOutside } from './ground.js';
import type { WireVariableName } from './variables.js';
import { vapourPressure } from './vapour.js';
import type { WireAnswer } from './wire.js';

/** What becomes of an answer: the engine's hours, and an honest list of what was not as asked. */
export interface HoursAndNotes {
  readonly hours: WeatherHours;
  readonly ground: GroundOutside;
  readonly notes: readonly WeatherNote[];
}

export interface ToHoursContext {
  readonly place: Place;
  readonly nowS: number;
  /** Models asked for; when fewer answer, that is noted. */
  readonly modelsAsked: number;
  /** What the ensemble says; "inside" where its spread may stand among the forecast's own hours. */
  readonly ensemble: EnsembleHours | 'inside';
  readonly yearlyMeanAirTempK: number | null;
}

const PERCENT = 100;
const PA_PER_HPA = 100;
const CM_PER_M = 100;

/** Throws AnswerRefusedError when a core value (temperature, humidity, wind, cloud) is missing, or the answer does not reach the coming night. */
export function toHours(answer: WireAnswer, context: ToHoursContext): HoursAndNotes {
  const { place, nowS } = context;
  const notes: WeatherNote[] = [];
  const closed = (variable: WireVariableName): Column | null => {
    const column = preferred(answer, variable);
    return column === null ? null : withShortGapsClosed(column);
  };
  const core = (variable: WireVariableName): Column => {
    const column = closed(variable);
    if (column !== null) return column;
    throw new AnswerRefusedError(`Weather answer, hourly.${variable}`, { expected: 'values', got: 'none that can be true', todo: WHOLE_ANSWER });
  };
  const temperatureC = core('temperature_2m');
  const windMPerS = core('wind_speed_10m');
  const cloudPercent = core('cloud_cover');
  const { column: vapourPa, fromHumidityHours } = vapourPressure(answer, temperatureC);
  const coreColumns = [temperatureC, vapourPa, windMPerS, cloudPercent];
  const { from, to } = completeRun(answer.timeS, coreColumns.map((column) => column.values), nowS);
  const hourIndices = Array.from({ length: to - from }, (_, k) => from + k);
  const inRun = (indices: readonly number[]): number => indices.filter((i) => i >= from && i < to).length;
  const note = (variable: string, column: Column | null): void => {
    if (column === null) return;
    if (inRun(column.fromSecond) > 0) notes.push({ code: 'second-model-used', variable });
    if (inRun(column.interpolated) > 0) notes.push({ code: 'filled-gap', variable, hours: inRun(column.interpolated) });
  };
  const missing = (variable: string, instead: string): void => void notes.push({ code: 'missing-variable', variable, instead });

  note('temperature_2m', temperatureC);
  note('dew_point_2m', vapourPa);
  if (fromHumidityHours > 0) missing('dew_point_2m', `computed from relative_humidity_2m, over liquid water (hours: ${fromHumidityHours})`);
  note('wind_speed_10m', windMPerS);
  note('cloud_cover', cloudPercent);
  const cell = (column: Column | null, i: number): number | null => column?.values[i] ?? null;
  const certain = (column: Column, i: number): number => column.values[i] ?? Number.NaN; // inside the complete run there are no holes

  const optional = (variable: WireVariableName, instead: string, substitute: (i: number) => number): number[] => {
    const column = closed(variable);
    note(variable, column);
    const values = hourIndices.map((i) => cell(column, i));
    const lost = values.filter((value) => value === null).length;
    if (lost > 0) missing(variable, lost === values.length ? instead : `${instead} (${lost} of ${values.length} hours)`);
    return values.map((value, k) => value ?? substitute(from + k));
  };
  const timeAt = (i: number): number => answer.timeS[i] ?? Number.NaN;
  const cloudAt = (i: number): number => certain(cloudPercent, i) / PERCENT;
  const globalShortwaveWPerM2 = optional(
    'shortwave_radiation',
    'estimated from the height of the sun and the cloud cover',
    (i) => clearSkyWPerM2(place, timeAt(i)) * throughClouds(cloudAt(i)),
  );
  const globalAt = (i: number): number => globalShortwaveWPerM2[i - from] ?? Number.NaN;
  const direct = closed('direct_radiation');
  const diffuse = optional(
    'diffuse_radiation',
    direct === null ? 'split from the global sunlight by the height of the sun' : 'global sunlight less direct_radiation',
    (i) => {
      const directWPerM2 = cell(direct, i);
      return directWPerM2 === null ? diffuseWPerM2(place, timeAt(i), globalAt(i)) : globalAt(i) - directWPerM2;
    },
  );
  const elevationM = place.elevationM ?? answer.elevationM;
  const standardPa = standardPressurePa(elevationM ?? 0);
  const pressureHpa = optional('surface_pressure', `standard atmosphere at ${elevationM === null ? 'sea level, the elevation is not known either' : `${elevationM} m`}`, () => standardPa / PA_PER_HPA);
  const snowfallCm = optional('snowfall', 'no new snow assumed', () => 0);

  const models = answer.models.map((suffix) => ofModel(answer, 'temperature_2m', suffix));
  if (models.filter((values) => values !== null).length < context.modelsAsked) missing('second forecast model', 'no difference between models known');
  const ensemble = context.ensemble === 'inside' ? hoursOfSpread(answer) : context.ensemble;
  notes.push(...ensemble.notes);
  const ensembleColumn = (name: keyof EnsembleHour): (number | null)[] => hourIndices.map((i) => ensemble.byTimeS.get(timeAt(i))?.[name] ?? null);

  return {
    hours: {
      timeS: hourIndices.map(timeAt),
      airTempK: hourIndices.map((i) => celsiusToKelvin(certain(temperatureC, i))),
      vapourPressurePa: hourIndices.map((i) => Math.min(certain(vapourPa, i), saturationVapourPressureOverWaterPa(celsiusToKelvin(certain(temperatureC, i))))),
      windSpeed10mMPerS: hourIndices.map((i) => certain(windMPerS, i)),
      cloudFraction: hourIndices.map(cloudAt),
      globalShortwaveWPerM2,
      diffuseShortwaveWPerM2: diffuse.map((value, k) => Math.min(Math.max(0, value), globalShortwaveWPerM2[k] ?? 0)),
      surfacePressurePa: pressureHpa.map((value) => value * PA_PER_HPA),
      snowfallM: snowfallCm.map((value) => value / CM_PER_M),
      airTempSpreadK: ensembleColumn('airTempSpreadK'),
      cloudSpread: ensembleColumn('cloudSpread'),
      airTempCloudCorrelation: ensembleColumn('airTempCloudCorrelation'),
      modelDifferenceK: hourIndices.map((i) => differenceOf(models[0]?.[i] ?? null, models[1]?.[i] ?? null)),
    },
    ground: groundOutside(answer, context, missing),
    notes,
  };
}

const differenceOf = (a: number | null, b: number | null): number | null => (a === null || b === null ? null : Math.abs(a - b));
