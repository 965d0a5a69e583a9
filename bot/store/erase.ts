import { sql, type Kysely } from 'kysely';
import { chatById, chatsOf } from './chats.js';
import { emptyParked } from './inbox.js';
import type { StoreTables } from './schema.js';
import { whole } from './whole.js';

/** The weather key of the place in a greenhouse file; null when the file tells none. */
export type PlaceKeyOf = (greenhouseBody: string) => string | null;

/** Forgets a chat with its messages; its greenhouse stays, for the others that share it. */
export function eraseChat(db: Kysely<StoreTables>, id: string): Promise<void> {
  return whole(db, async (db) => {
    const erased = await chatById(db, id);
    if (!erased) return;
    await whileErasing(db, id, async () => {
      await db.deleteFrom('outbound').where('chatId', '=', id).execute();
    });
    await db.deleteFrom('chat').where('id', '=', id).execute();
    await emptyParked(db, erased);
  });
}

/** Forgets a greenhouse and all that hangs on it, in one go. */
export function eraseGreenhouse(db: Kysely<StoreTables>, greenhouseId: string, placeKeyOf: PlaceKeyOf): Promise<void> {
  return whole(db, async (db) => {
    for (const { id } of await chatsOf(db, greenhouseId)) await eraseChat(db, id);
    await eraseWeather(db, greenhouseId, placeKeyOf);
    await whileErasing(db, greenhouseId, async () => {
      await db.deleteFrom('reading').where('greenhouseId', '=', greenhouseId).execute();
      await db.deleteFrom('advisory').where('greenhouseId', '=', greenhouseId).execute();
    });
    for (const table of ['action', 'outcome', 'mark', 'learning', 'job', 'invite'] as const) await db.deleteFrom(table).where('greenhouseId', '=', greenhouseId).execute();
    await db.deleteFrom('greenhouse').where('id', '=', greenhouseId).execute();
  });
}

/** The database refuses to delete what it keeps, except while the id stands in `erasing`. */
async function whileErasing(db: Kysely<StoreTables>, id: string, remove: () => Promise<void>): Promise<void> {
  await db.insertInto('erasing').values({ id }).execute();
  await remove();
  await db.deleteFrom('erasing').where('id', '=', id).execute();
}

/** The weather of every place where the greenhouse ever was and no other is now. */
async function eraseWeather(db: Kysely<StoreTables>, greenhouseId: string, placeKeyOf: PlaceKeyOf): Promise<void> {
  const versions = await db.selectFrom('greenhouse').select('body').where('id', '=', greenhouseId).execute();
  const places = new Set(versions.map(({ body }) => placeKeyOf(body)).filter((key) => key !== null));
  if (places.size === 0) return;
  const others = await db
    .selectFrom('greenhouse as g')
    .select('g.body')
    .where('g.id', '<>', greenhouseId)
    .where('g.version', '=', (g) => g.selectFrom('greenhouse as v').select((v) => v.fn.max('v.version').as('latest')).whereRef('v.id', '=', 'g.id'))
    .execute();
  for (const { body } of others) places.delete(placeKeyOf(body) ?? '');
  for (const place of places) {
    // Several services keep an answer for one place: their keys end with the place's.
    await db
      .deleteFrom('weather')
      .where((row) => row.or([row('placeKey', '=', place), row(sql<string>`substr(place_key, -length(${place}) - 1)`, '=', ` ${place}`)]))
      .execute();
  }
}
