import type { Records } from '../ports.js';
import { houseAsBefore, houseChangedSince } from '../text/undo-text.js';

/** A house before something that was said changed it: the version that came of it, the file before, and when that was said. */
export interface HouseBefore {
  readonly version: number;
  readonly before: string;
  readonly sinceS: number;
}

const MOST_MARKS = 20;

/** The house as it was, without the notes that came with the change; in words what became of it. One that has changed again stays. */
export async function takeHouseBack(greenhouseId: string, { version, before, sinceS }: HouseBefore, { store, atS }: { readonly store: Records; readonly atS: number }): Promise<string> {
  const stored = await store.greenhouse(greenhouseId);
  if (stored?.version !== version) return houseChangedSince;
  await store.saveGreenhouse({ id: greenhouseId, body: before, savedAtS: atS });
  for (const mark of (await store.marks(greenhouseId, MOST_MARKS)).filter(({ receivedAtS, counted }) => counted && receivedAtS >= sinceS)) await store.withdrawTold({ of: 'mark', id: mark.id }, atS);
  return houseAsBefore;
}
