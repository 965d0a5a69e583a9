import { celsiusToKelvin, nightSpan, type EveningInput, type Greenhouse } from '../../../engine/index.js';
import type { Store } from '../../ports.js';
import type { Item } from '../../language/intent.js';

/** What the grower said was done tonight, as kept in the store. */
export interface Deed {
  readonly items: readonly Item[];
  /** Beds that the message named; null when it named none, which means all beds that have a cover. */
  readonly beds: readonly string[] | null;
  readonly setC: number | null;
}

const BEFORE_SUNSET_S = 8 * 3600;

/** Covers and heat that are in place tonight by the grower's own word: the newest word on a thing counts. */
export async function deedsTonight(store: Store, greenhouseId: string, context: { greenhouse: Greenhouse; nowS: number }): Promise<NonNullable<EveningInput['doneTonight']>> {
  const { sunsetS } = nightSpan(context.nowS, context.greenhouse.place);
  const rows = await store.actions(greenhouseId, Math.min(sunsetS, context.nowS) - BEFORE_SUNSET_S);
  const coverable = context.greenhouse.beds.filter((bed) => bed.cover).map((bed) => bed.name);
  const covered = new Set<string>();
  let heaterSetC: number | null = null;
  for (const row of [...rows].sort((a, b) => a.receivedAtS - b.receivedAtS || a.id - b.id)) {
    const deed = JSON.parse(row.body) as Deed;
    for (const bed of deed.items.includes('cover') ? (deed.beds ?? coverable) : []) {
      if (row.done) covered.add(bed);
      else covered.delete(bed);
    }
    if (deed.items.includes('heater')) heaterSetC = row.done ? (deed.setC ?? DEFAULT_SETTING_C) : null;
  }
  return { coveredBeds: coverable.filter((bed) => covered.has(bed)), heaterSetK: heaterSetC === null ? null : celsiusToKelvin(heaterSetC) };
}

/** A heater that is "on" without a setting is taken at a low one: heat that is not there must not be counted on. */
const DEFAULT_SETTING_C = 2;
