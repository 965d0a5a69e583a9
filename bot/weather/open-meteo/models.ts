import { FORECAST_MODELS } from './request.js';

const COLUMN = 'temperature_2m';
// What may follow a variable's name without being a model: statistics, older runs.
const NOT_A_MODEL = /^(spread|min|max|mean|anomaly|previous_day\d+)(_|$)/;
const MEMBER = /_member\d+(?=_|$)/;

/** A column's name without the number of its ensemble member, which stands between the variable and the model. */
export const withoutMember = (columnName: string): string => columnName.replace(MEMBER, '');

/**
 * The models of an answer, told by the suffixes of its temperature columns, the preferred first.
 * One model has no suffix: also when several were asked for and all but one do not cover the place.
 */
export function modelsOf(columnNames: readonly string[]): readonly string[] {
  const found = columnNames.map(withoutMember).filter((name) => name === COLUMN || name.startsWith(`${COLUMN}_`)).map((name) => name.slice(COLUMN.length + 1));
  const suffixes = [...new Set(found.filter((suffix) => !NOT_A_MODEL.test(suffix)))];
  if (suffixes.includes('') || suffixes.length === 0) return [''];
  const rank = (suffix: string): number => {
    const place = FORECAST_MODELS.findIndex((model) => model === suffix);
    return place < 0 ? FORECAST_MODELS.length : place;
  };
  return suffixes.sort((a, b) => rank(a) - rank(b));
}
