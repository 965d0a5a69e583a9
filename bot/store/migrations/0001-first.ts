import { sql, type Kysely, type Migration } from 'kysely';

/** Never edited once released: a change is a new migration. STRICT, so that a wrong type is an error and not a surprise later. */
export const first: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('greenhouse')
      .addColumn('id', 'text', (column) => column.notNull())
      .addColumn('version', 'integer', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addColumn('saved_at_s', 'integer', (column) => column.notNull())
      .addPrimaryKeyConstraint('greenhouse_version', ['id', 'version'])
      .modifyEnd(sql`strict`)
      .execute();

    await db.schema
      .createTable('reading')
      // Autoincrement: an id that was ever told to somebody never means another row.
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('greenhouse_id', 'text', (column) => column.notNull())
      .addColumn('received_at_s', 'integer', (column) => column.notNull())
      .addColumn('valid_at_s', 'integer', (column) => column.notNull())
      .addColumn('place', 'text', (column) => column.notNull())
      .addColumn('statistic', 'text', (column) => column.notNull().check(sql`statistic in ('now', 'low', 'high')`))
      .addColumn('temp_c', 'real', (column) => column.notNull())
      .addColumn('text', 'text', (column) => column.notNull())
      .addColumn('replaced_by', 'integer', (column) => column.references('reading.id'))
      .addColumn('withdrawn_at_s', 'integer')
      .addCheckConstraint('reading_ends_once', sql`replaced_by is null or withdrawn_at_s is null`)
      .modifyEnd(sql`strict`)
      .execute();
    await db.schema.createIndex('reading_received').on('reading').columns(['greenhouse_id', 'received_at_s', 'id']).execute();

    await db.schema
      .createTable('action')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('greenhouse_id', 'text', (column) => column.notNull())
      .addColumn('received_at_s', 'integer', (column) => column.notNull())
      .addColumn('night', 'text', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .addColumn('done', 'integer', (column) => column.notNull().check(sql`done in (0, 1)`))
      .addColumn('text', 'text', (column) => column.notNull())
      .modifyEnd(sql`strict`)
      .execute();
    await db.schema.createIndex('action_received').on('action').columns(['greenhouse_id', 'received_at_s', 'id']).execute();

    await db.schema
      .createTable('weather')
      .addColumn('place_key', 'text', (column) => column.primaryKey().notNull())
      .addColumn('issued_at_s', 'integer', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .modifyEnd(sql`strict`)
      .execute();

    await db.schema
      .createTable('advisory')
      .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
      .addColumn('greenhouse_id', 'text', (column) => column.notNull())
      .addColumn('night', 'text', (column) => column.notNull())
      .addColumn('issued_at_s', 'integer', (column) => column.notNull())
      .addColumn('body', 'text', (column) => column.notNull())
      .modifyEnd(sql`strict`)
      .execute();
    await db.schema.createIndex('advisory_issued').on('advisory').columns(['greenhouse_id', 'issued_at_s', 'id']).execute();

    await refuse(db, 'advisory_unchanged', 'update on advisory', 'an advisory stays as issued: add a new one instead');
    await refuse(db, 'advisory_kept', 'delete on advisory', 'an advisory is kept as issued');
    await refuse(
      db,
      'reading_unchanged',
      'update of id, greenhouse_id, received_at_s, valid_at_s, place, statistic, temp_c, text on reading',
      'a reading stays as received: replace or withdraw it instead',
    );
    await refuse(
      db,
      'reading_ended',
      'update on reading when old.replaced_by is not null or old.withdrawn_at_s is not null',
      'a reading is replaced or withdrawn once',
    );
    await refuse(db, 'reading_kept', 'delete on reading', 'a reading is kept: withdraw it instead');
  },
};

/** What no code path may do to a row, held by the database itself, so that a bug in a query cannot rewrite the record. */
async function refuse(db: Kysely<unknown>, name: string, event: string, why: string): Promise<void> {
  await sql`create trigger ${sql.ref(name)} before ${sql.raw(event)} begin select raise(abort, ${sql.lit(why)}); end`.execute(db);
}
