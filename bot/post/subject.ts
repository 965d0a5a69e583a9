import { checkGreenhouse } from '../../engine/index.js';
import type { EveningSubject } from '../features/evening/issue-advisory.js';
import type { Store } from '../ports.js';
import { zoneOf } from '../time-zone.js';

/** The greenhouse of an id as the features want it; null when it is not there or its file is of no use any more. */
export async function subjectOf(greenhouseId: string, store: Pick<Store, 'greenhouse'>): Promise<EveningSubject | null> {
  const stored = await store.greenhouse(greenhouseId);
  if (!stored) return null;
  const check = checkGreenhouse(JSON.parse(stored.body));
  return check.ok ? { greenhouseId, greenhouse: check.greenhouse, zone: zoneOf(check.greenhouse) } : null;
}
