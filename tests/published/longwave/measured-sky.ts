import { vapourPressureFromDewPointOverWaterPa } from '../../../engine/air/saturation-magnus.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { outsideCsv } from '../outside-data.js';
import type { ScreenAir } from './clear-sky-formulas.js';

/** One hour, or ten minutes, under a pyrgeometer. */
export interface MeasuredSky extends ScreenAir {
  readonly timeS: number;
  readonly longwaveWPerM2: number;
  /** Mean global sunlight; NaN where the file has none. */
  readonly sunWPerM2: number;
  /** Known from sunlight; NaN where it is not known. */
  readonly cloudFraction: number;
  /** What the file itself says of the hour. */
  readonly kind: string;
}

export const isNight = ({ kind }: MeasuredSky): boolean => kind.startsWith('night');

/** Rows of a file of the longwave folder; null where it is absent. Dew points are over liquid water. */
export function measuredSky(file: string): readonly MeasuredSky[] | null {
  const columns = outsideCsv(`longwave/${file}`);
  if (!columns) return null;
  const timeColumn = [...columns.keys()][0]!;
  const number = (name: string, row: number): number => Number(columns.get(name)?.[row] ?? Number.NaN);
  return columns.get(timeColumn)!.map((time, row) => ({
    timeS: Date.parse(`${time.trim().replace(' ', 'T')}Z`) / 1000,
    airTempK: celsiusToKelvin(number('ta_c', row)),
    vapourPressurePa: vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(number('td_c', row))),
    pressurePa: 100 * number('p_hpa', row),
    longwaveWPerM2: number('lw_wm2', row),
    sunWPerM2: columns.has('ghi_wm2') ? number('ghi_wm2', row) : number('sw_wm2', row),
    cloudFraction: number('cloud', row),
    kind: [columns.get('kind')?.[row] ?? '', columns.get('clear_both_sides')?.[row] === '1' ? 'clear both sides' : ''].join(' ').trim(),
  }));
}
