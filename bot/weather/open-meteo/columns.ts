import type { WireAnswer } from './wire.js';
import { plausible, type WireVariableName } from './variables.js';

/** One variable, hour by hour, and how each hole in it was closed. */
export interface Column {
  readonly values: readonly (number | null)[];
  /** Hours (indices) taken from a second model, and hours interpolated. */
  readonly fromSecond: readonly number[];
  readonly interpolated: readonly number[];
}

const LONGEST_GAP_HOURS = 2;

/** The values of one model that can be true; null when the answer does not have the variable of that model. */
export function ofModel(answer: WireAnswer, variable: WireVariableName, suffix: string): readonly (number | null)[] | null {
  const values = answer.columns.get(suffix === '' ? variable : `${variable}_${suffix}`)?.map((value) => plausible(variable, value));
  return values === undefined || values.every((value) => value === null) ? null : values;
}

/** The preferred model's values, its holes filled from the next; null when no model has the variable. */
export function preferred(answer: WireAnswer, variable: WireVariableName): Column | null {
  const [first, ...others] = answer.models.map((suffix) => ofModel(answer, variable, suffix));
  if ((first ?? null) === null && others.every((other) => other === null)) return null;
  const fromSecond: number[] = [];
  const values = answer.timeS.map((_, i) => {
    const own = first?.[i] ?? null;
    if (own !== null) return own;
    const substitute = others.find((other) => (other?.[i] ?? null) !== null)?.[i] ?? null;
    if (substitute !== null) fromSecond.push(i);
    return substitute;
  });
  return { values, fromSecond, interpolated: [] };
}

/** Holes of at most two hours between two values are closed on a straight line; longer ones stay. */
export function withShortGapsClosed(column: Column): Column {
  const values = [...column.values];
  const interpolated: number[] = [];
  let before = -1;
  for (const [i, value] of column.values.entries()) {
    if (value === null) continue;
    const from = column.values[before] ?? null;
    const gapHours = i - before - 1;
    if (from !== null && gapHours >= 1 && gapHours <= LONGEST_GAP_HOURS) {
      for (let k = before + 1; k < i; k += 1) {
        values[k] = from + ((value - from) * (k - before)) / (i - before);
        interpolated.push(k);
      }
    }
    before = i;
  }
  return { values, fromSecond: column.fromSecond, interpolated };
}
