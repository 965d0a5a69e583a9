import { inverse } from '../../engine/learn/calibrate.js';
import { crpsNormalK } from '../../engine/score/crps-normal.js';
import type { SeasonFolder } from '../../bot/commands/season-folder.js';

/** A forecast of the low inside as a bell: what a notebook and a ruler would do. */
export interface Bell {
  readonly meanC: number;
  readonly sdC: number;
}
export type Baseline = (train: readonly Example[], tonight: readonly number[]) => Bell;
export interface Example {
  readonly inputs: readonly number[];
  readonly readingC: number;
}

/** Before a rule has readings, and as strong as three of them afterwards. */
const FIRST_SD_C = 2;
const FIRST_COUNT = 3;
const INSIDE_IS_WARMER_C = 2;
const RIDGE = 1;
/** Last of the eight inputs. */
const DAY_OF_SEASON = 7;

const sdOf = (misses: readonly number[], taken: number): number => Math.sqrt((FIRST_COUNT * FIRST_SD_C ** 2 + misses.reduce((sum, miss) => sum + miss ** 2, 0)) / (FIRST_COUNT + Math.max(0, misses.length - taken)));

/** Outside low and two degrees; a line through outside lows; ridge on all eight inputs. */
export const BASELINES: Readonly<Record<string, Baseline>> = {
  'outside + 2': (train, tonight) => ({ meanC: tonight[0]! + INSIDE_IS_WARMER_C, sdC: sdOf(train.map(({ inputs, readingC }) => readingC - inputs[0]! - INSIDE_IS_WARMER_C), 0) }),
  'running line': (train, tonight) => fitted(train.map((example) => ({ ...example, inputs: example.inputs.slice(0, 1) })), tonight.slice(0, 1), 1e-6),
  ridge: (train, tonight) => fitted(train, tonight, RIDGE),
  // The day of the season, learned from a few autumn days, runs far out of range in winter: without it the same rule is the stronger rival.
  'ridge without the day': (train, tonight) => fitted(train.map((example) => ({ ...example, inputs: example.inputs.slice(0, DAY_OF_SEASON) })), tonight.slice(0, DAY_OF_SEASON), RIDGE),
};

function fitted(train: readonly Example[], tonight: readonly number[], penalty: number): Bell {
  if (train.length < FIRST_COUNT) return BASELINES['outside + 2']!(train, tonight);
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const centre = tonight.map((_, k) => mean(train.map(({ inputs }) => inputs[k]!)));
  const scale = tonight.map((_, k) => Math.sqrt(mean(train.map(({ inputs }) => (inputs[k]! - centre[k]!) ** 2))) || 1);
  const standard = (inputs: readonly number[]): readonly number[] => inputs.map((value, k) => (value - centre[k]!) / scale[k]!);
  const level = mean(train.map(({ readingC }) => readingC));
  const rows = train.map(({ inputs }) => standard(inputs));
  const gram = centre.map((_, k) => centre.map((__, j) => rows.reduce((sum, row) => sum + row[k]! * row[j]!, k === j ? penalty : 0)));
  const pull = centre.map((_, k) => rows.reduce((sum, row, r) => sum + row[k]! * (train[r]!.readingC - level), 0));
  const weights = inverse(gram).map((row) => row.reduce((sum, value, k) => sum + value * pull[k]!, 0));
  const at = (row: readonly number[]): number => level + row.reduce((sum, value, k) => sum + value * weights[k]!, 0);
  return { meanC: at(standard(tonight)), sdC: sdOf(rows.map((row, r) => train[r]!.readingC - at(row)), Math.min(weights.length + 1, train.length - 1)) };
}

interface Response {
  readonly hourly: Readonly<Record<string, readonly number[]>>;
}

/** The eight inputs of each night, from the forecast as issued and the log of that evening. */
export function inputsByNight(season: SeasonFolder): ReadonlyMap<number, readonly number[]> {
  return new Map(
    season.evenings.map(({ night, issuedS, response }) => {
      const { hourly } = response as Response;
      const over = (name: string, fromH: number, toH: number): readonly number[] => hourly['time']!.flatMap((timeS, i) => (timeS > issuedS + fromH * 3600 && timeS <= issuedS + toH * 3600 ? [hourly[name]![i]!] : []));
      const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
      const action = season.actions.find((row) => Number(row['night']) === night);
      return [night, [Math.min(...over('temperature_2m', 1, 17)), mean(over('cloud_cover', 1, 17)), mean(over('wind_speed_10m', 1, 17)), mean(over('dew_point_2m', 1, 17)), mean(over('shortwave_radiation', -24, 0)), Number(action?.['cover'] ?? 0), Number(action?.['heater'] ?? 0), night]] as const;
    }),
  );
}

/** Readings of the low inside as typed, in order, with the inputs of their nights. */
export function examplesOf(season: SeasonFolder, inputs: ReadonlyMap<number, readonly number[]>): readonly Example[] {
  return season.readings.flatMap((row) => (row['place'] === 'inside' && row['statistic'] === 'low' ? [{ inputs: inputs.get(Number(row['night']))!, readingC: row['unit'] === 'F' ? ((Number(row['value']) - 32) * 5) / 9 : Number(row['value']) }] : []));
}

export const crpsOf = (bell: Bell, cameC: number): number => crpsNormalK({ meanK: bell.meanC, sdK: bell.sdC }, cameC);
