import { sql, type Kysely, type Migration } from 'kysely';

/** How a reading was judged, and of which thermometer it is. Never edited once released: a change is a new migration. */
export const judgedReadings: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table reading add column judged text not null default 'good' check (judged in ('good', 'not-reset', 'sunlit', 'open'))`.execute(db);
    await db.schema.alterTable('reading').addColumn('thermometer', 'text').execute();
    await sql`create trigger reading_judged_once before update of judged, thermometer on reading begin select raise(abort, 'a reading stays as judged: replace it instead'); end`.execute(db);
  },
};
