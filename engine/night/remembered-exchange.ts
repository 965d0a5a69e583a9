import type { LongwaveEnclosure } from '../cover/longwave-enclosure.js';
import { longwaveExchange, type LongwaveExchange } from '../cover/longwave-exchange.js';

export type RememberedExchange = (enclosure: LongwaveEnclosure) => LongwaveExchange;

/** A night passes through some hundreds of states of its films; more than this are not kept. */
const MOST_KEPT = 4000;

/**
 * The longwave exchange of one house, worked out once for each state of its films and covers: only their optics and the snow change through a night.
 * Units: as longwaveExchange.
 * Valid: enclosures of one and the same house.
 * Outside: as longwaveExchange.
 * Source: as longwaveExchange.
 */
export function rememberedExchange(): RememberedExchange {
  const known = new Map<string, LongwaveExchange>();
  return (enclosure) => {
    const state = stateOf(enclosure);
    const kept = known.get(state);
    if (kept) return kept;
    const exchange = longwaveExchange(enclosure);
    if (known.size >= MOST_KEPT) known.clear();
    known.set(state, exchange);
    return exchange;
  };
}

function stateOf({ films, patches, curtain, snow }: LongwaveEnclosure): string {
  let state = `${snow?.share ?? ''}`;
  for (const { transmittance, emissivity } of films) state += ` ${transmittance} ${emissivity}`;
  for (const { covers } of patches) for (const { transmittance, emissivity } of covers) state += ` ${transmittance} ${emissivity}`;
  return curtain ? `${state} ${curtain.transmittance} ${curtain.emissivity}` : state;
}
