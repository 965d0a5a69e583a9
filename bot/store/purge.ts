import type { Kysely } from 'kysely';
import { purgeInbound } from './inbox.js';
import { purgeJobs } from './jobs.js';
import { purgeOutbound } from './outbox.js';
import { epochSeconds } from './row-values.js';
import type { StoreTables } from './schema.js';
import { whole } from './whole.js';

const SECONDS_PER_DAY = 86_400;
/** Telegram repeats an unconfirmed update for a day, and chooses its next id at random after a week of silence: ids are kept as long as the one, not much longer than the other (platform reference, 1.1). */
const IDS_KNOWN_S = 7 * SECONDS_PER_DAY;
/** Fifteen past days are asked for at most: an older answer is asked for again in whole. */
const WEATHER_USEFUL_S = 15 * SECONDS_PER_DAY;

/** Empties what ended before, and removes what nobody will ask for again. */
export function purge(db: Kysely<StoreTables>, olderThanS: number): Promise<void> {
  const emptyBeforeS = epochSeconds('olderThanS', olderThanS);
  return whole(db, async (db) => {
    await purgeInbound(db, { emptyBeforeS, forgetBeforeS: emptyBeforeS - IDS_KNOWN_S });
    await purgeOutbound(db, emptyBeforeS);
    await purgeJobs(db, emptyBeforeS);
    await db.deleteFrom('invite').where('validUntilS', '<', emptyBeforeS).execute();
    await db.deleteFrom('weather').where('issuedAtS', '<', emptyBeforeS - WEATHER_USEFUL_S).execute();
  });
}
