import type { BoxRun } from './box-run.js';
import { firstHourOf, hourOfYear } from './weather-year.js';

/** When an hour ended: "02-09" and 1 to 24, standard time. */
export interface HourStamp {
  readonly date: string;
  readonly hour: number;
}

/** What is told of a run. Temperatures are means over an hour. */
export interface BoxSummary {
  readonly case: string;
  readonly annual: { readonly minC: number; readonly minAt: HourStamp; readonly meanC: number; readonly maxC: number; readonly maxAt: HourStamp };
  readonly day: { readonly date: string; readonly hourlyMeanC: readonly number[] };
  readonly sunPassedKWh: number;
  readonly stepS: number;
}

const two = (number: number): string => String(number).padStart(2, '0');
const dateOf = (index: number): string => `${two(hourOfYear(index).month)}-${two(hourOfYear(index).day)}`;
const stampOf = (index: number): HourStamp => ({ date: dateOf(index), hour: hourOfYear(index).hourEnd });
const rounded = (value: number): number => Math.round(100 * value) / 100;

/** Hour with the extreme mean: sign 1 for the highest, -1 for the lowest. */
export const extremeHour = (hourlyMeanC: Float64Array, sign: 1 | -1): number => hourlyMeanC.reduce((best, value, i) => (sign * value > sign * hourlyMeanC[best]! ? i : best), 0);

export const annualMeanC = (hourlyMeanC: Float64Array): number => hourlyMeanC.reduce((sum, value) => sum + value, 0) / hourlyMeanC.length;

/** A day is written "02-09"; without one it is the day of the minimum. */
export function summaryOf(name: string, run: BoxRun, day?: string): BoxSummary {
  const { hourlyMeanC } = run;
  const [coldest, warmest] = [extremeHour(hourlyMeanC, -1), extremeHour(hourlyMeanC, 1)];
  const date = day ?? dateOf(coldest);
  const first = firstHourOf(date);
  if (first === null) throw new Error(`no such day: ${JSON.stringify(date)}; expected month and day, for example 01-04`);
  return {
    case: name,
    annual: { minC: rounded(hourlyMeanC[coldest]!), minAt: stampOf(coldest), meanC: rounded(annualMeanC(hourlyMeanC)), maxC: rounded(hourlyMeanC[warmest]!), maxAt: stampOf(warmest) },
    day: { date, hourlyMeanC: Array.from(hourlyMeanC.subarray(first, first + 24), rounded) },
    sunPassedKWh: rounded(run.passedSunKWh),
    stepS: run.stepS,
  };
}

const at = ({ date, hour }: HourStamp): string => `${date} hour ${hour}`;

export function summaryText({ case: name, annual, day, sunPassedKWh, stepS }: BoxSummary): string {
  return [
    name,
    `  minimum ${annual.minC.toFixed(2)} °C, ${at(annual.minAt)}`,
    `  mean    ${annual.meanC.toFixed(2)} °C`,
    `  maximum ${annual.maxC.toFixed(2)} °C, ${at(annual.maxAt)}`,
    `  sun through the windows ${sunPassedKWh.toFixed(0)} kWh in the year; step ${stepS} s`,
    `  ${day.date}, means of the hours 1 to 24, °C: ${day.hourlyMeanC.map((value) => value.toFixed(1)).join(' ')}`,
  ].join('\n');
}
