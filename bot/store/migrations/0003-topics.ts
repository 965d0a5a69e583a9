import type { Kysely, Migration } from 'kysely';

/** In which part of a group a message was said. Never edited once released: a change is a new migration. */
export const topics: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema.alterTable('inbound').addColumn('topic', 'text').execute();
  },
};
