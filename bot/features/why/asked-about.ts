import type { Records } from '../../ports.js';
import type { Advisory } from '../evening/advisory.js';

const HOUR_S = 3600;
/** An older one stands on an old forecast (project estimate). */
const STILL_MEANT_S = 6 * HOUR_S;

interface Asked {
  readonly greenhouseId: string;
  /** Local date on which the night begins. */
  readonly night: string;
  readonly nowS: number;
}

/** The advisory that is asked about: the one that went out for tonight. Null where there is none, or something has been told since. */
export async function advisoryAskedAbout({ greenhouseId, night, nowS }: Asked, store: Pick<Records, 'advisoryFor' | 'actions' | 'greenhouse'>): Promise<Advisory | null> {
  const last = await store.advisoryFor(greenhouseId, night);
  if (last === null || last.issuedAtS < nowS - STILL_MEANT_S) return null;
  const [told, house] = [await store.actions(greenhouseId, last.issuedAtS), await store.greenhouse(greenhouseId)];
  if (told.length > 0 || (house !== null && house.savedAtS > last.issuedAtS)) return null;
  const advisory = JSON.parse(last.body) as Advisory;
  return advisory.reasons.some(({ code }) => code === 'heat') ? advisory : null;
}
