import type { Kysely, Migration } from 'kysely';

/** What was learned of each house, the newest alone: it can be worked out again, so it is written over. Never edited once released: a change is a new migration. */
export const learning: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('learning')
      .addColumn('greenhouse_id', 'text', (column) => column.primaryKey().notNull())
      .addColumn('learned_at_s', 'integer', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .execute();
  },
};
