import { SECONDS_PER_HOUR } from '../../../engine/index.js';
import { AnswerRefusedError } from './errors.js';

/** The coming night must be covered to its end, also when asked in the early afternoon. */
export const LEAST_AHEAD_HOURS = 18;

/**
 * The unbroken run of hours around now in which every core column has a value: indices from (inclusive) to (exclusive).
 * A hole that is too long to close ends the run on its side. Throws when now is not covered or the run ends too soon.
 */
export function completeRun(timeS: readonly number[], core: readonly (readonly (number | null)[])[], nowS: number): { readonly from: number; readonly to: number } {
  const complete = (i: number): boolean => core.every((values) => (values[i] ?? null) !== null);
  const nowIndex = timeS.findLastIndex((t) => t <= nowS);
  const lastS = timeS.at(-1) ?? Number.NaN;
  const span = `${instant(timeS[0] ?? Number.NaN)} to ${instant(lastS)}`;
  if (nowIndex < 0 || nowS - lastS >= SECONDS_PER_HOUR) {
    throw new AnswerRefusedError('Weather answer, time span', { expected: `hours around ${instant(nowS)}`, got: span, todo: 'Ask the service again; for a saved answer give the time it was made for.' });
  }
  if (!complete(nowIndex)) {
    throw new AnswerRefusedError('Weather answer, temperature, humidity, wind and cloud', { expected: `values at ${instant(nowS)}`, got: 'a hole there', todo: 'Ask the service again.' });
  }
  let from = nowIndex;
  while (from > 0 && complete(from - 1)) from -= 1;
  let to = nowIndex + 1;
  while (to < timeS.length && complete(to)) to += 1;
  const aheadHours = to - 1 - nowIndex;
  if (aheadHours < LEAST_AHEAD_HOURS) {
    throw new AnswerRefusedError('Weather answer, reach ahead', {
      expected: `at least ${LEAST_AHEAD_HOURS} h of temperature, humidity, wind and cloud after ${instant(nowS)}`,
      got: `${aheadHours} h`,
      todo: 'Ask the service again, or for a longer time.',
    });
  }
  return { from, to };
}

const instant = (timeS: number): string => (Number.isFinite(timeS) ? `${new Date(timeS * 1000).toISOString().slice(0, 'YYYY-MM-DDTHH:MM'.length)}Z` : 'nothing');
