import type { MemberSpread } from '../../../engine/index.js';
import type { WeatherNote } from '../../ports.js';
import { spreadOfMembers } from './members.js';
import { plausible } from './variables.js';
import type { WireAnswer } from './wire.js';

/** What the ensemble says of one hour. */
export type EnsembleHour = { readonly [column in keyof MemberSpread]: number | null };

/** By epoch second, since the ensemble's hours need not be those of the forecast; and what is to be noted of it. */
export interface EnsembleHours {
  readonly byTimeS: ReadonlyMap<number, EnsembleHour>;
  readonly notes: readonly WeatherNote[];
}

/** No ensemble, and why. */
export const withoutEnsemble = (cause: string): EnsembleHours => ({ byTimeS: new Map(), notes: [{ code: 'no-ensemble', cause }] });

/** Spread of the air temperature from an answer that tells it as a column of its own. */
export function hoursOfSpread(answer: WireAnswer): EnsembleHours {
  const column = answer.models
    .map((suffix) => answer.columns.get(suffix === '' ? 'temperature_2m_spread' : `temperature_2m_spread_${suffix}`))
    .find((values) => values !== undefined);
  const known = answer.timeS.flatMap((timeS, i): readonly (readonly [number, EnsembleHour])[] => {
    const airTempSpreadK = plausible('temperature_2m_spread', column?.[i] ?? null);
    return airTempSpreadK === null ? [] : [[timeS, { airTempSpreadK, cloudSpread: null, airTempCloudCorrelation: null }]];
  });
  return known.length === 0 ? withoutEnsemble('the answer holds no usable temperature_2m_spread') : { byTimeS: new Map(known), notes: [] };
}

/** The same and more from the single runs; or why they cannot be used. */
export function hoursOfMembers(answer: WireAnswer): EnsembleHours | { readonly cause: string } {
  const spread = spreadOfMembers(answer);
  if ('cause' in spread) return spread;
  const { airTempSpreadK, cloudSpread, airTempCloudCorrelation } = spread;
  return { byTimeS: new Map(answer.timeS.map((timeS, i) => [timeS, { airTempSpreadK: airTempSpreadK[i] ?? null, cloudSpread: cloudSpread[i] ?? null, airTempCloudCorrelation: airTempCloudCorrelation[i] ?? null }])), notes: [] };
}
