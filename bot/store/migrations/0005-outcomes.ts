import { sql, type Kysely, type Migration } from 'kysely';

/** How crops came through, lasting changes of the house, deeds that are taken back, and by which message each thing was told. Never edited once released: a change is a new migration. */
export const outcomes: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('outcome')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('greenhouse_id', 'text', (column) => column.notNull())
      .addColumn('received_at_s', 'integer', (column) => column.notNull())
      .addColumn('night', 'text', (column) => column.notNull())
      .addColumn('crop', 'text', (column) => column.notNull())
      .addColumn('bed', 'text')
      .addColumn('state', 'text', (column) => column.notNull().check(sql`state in ('fine', 'marked', 'dead')`))
      .addColumn('text', 'text', (column) => column.notNull())
      .addColumn('withdrawn_at_s', 'integer')
      .modifyEnd(sql`strict`)
      .execute();
    await db.schema.createIndex('outcome_received').on('outcome').columns(['greenhouse_id', 'received_at_s', 'id']).execute();

    await db.schema
      .createTable('mark')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('greenhouse_id', 'text', (column) => column.notNull())
      .addColumn('received_at_s', 'integer', (column) => column.notNull())
      .addColumn('changed_at_s', 'integer', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addColumn('counted', 'integer', (column) => column.notNull().check(sql`counted in (0, 1)`))
      .addColumn('text', 'text', (column) => column.notNull())
      .addColumn('withdrawn_at_s', 'integer')
      .modifyEnd(sql`strict`)
      .execute();
    await db.schema.createIndex('mark_received').on('mark').columns(['greenhouse_id', 'received_at_s', 'id']).execute();

    await db.schema.alterTable('action').addColumn('withdrawn_at_s', 'integer').execute();
    for (const table of ['reading', 'action', 'outcome', 'mark'] as const) {
      await db.schema.alterTable(table).addColumn('message', 'text').execute();
      await db.schema.createIndex(`${table}_message`).on(table).columns(['greenhouse_id', 'message']).execute();
    }
  },
};
