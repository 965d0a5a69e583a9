import { plausible } from './variables.js';
import type { WireAnswer } from './wire.js';

/** The ensemble's answer, or why there is none; "inside" when the spread may stand among the forecast's own hours. */
export type EnsembleAnswer = { readonly answer: WireAnswer } | { readonly cause: string } | 'inside';

/** Spread of the ensemble (K) by epoch second, since its hours need not be those of the forecast; and why it is empty when it is. */
export function spreadByTime(forecast: WireAnswer, ensemble: EnsembleAnswer): { readonly byTimeS: ReadonlyMap<number, number>; readonly cause: string | null } {
  if (ensemble !== 'inside' && 'cause' in ensemble) return { byTimeS: new Map(), cause: ensemble.cause };
  const source = ensemble === 'inside' ? forecast : ensemble.answer;
  const column = source.models
    .map((suffix) => source.columns.get(suffix === '' ? 'temperature_2m_spread' : `temperature_2m_spread_${suffix}`))
    .find((values) => values !== undefined);
  const known = source.timeS.flatMap((timeS, i): readonly (readonly [number, number])[] => {
    const value = plausible('temperature_2m_spread', column?.[i] ?? null);
    return value === null ? [] : [[timeS, value]];
  });
  return { byTimeS: new Map(known), cause: known.length === 0 ? 'the answer holds no usable temperature_2m_spread' : null };
}
