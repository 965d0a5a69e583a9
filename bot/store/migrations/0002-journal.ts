import { sql, type Kysely, type Migration } from 'kysely';

/** What came in, what has to go out, what has to be done, and for whom. Never edited once released: a change is a new migration. */
export const journal: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await chats(db);
    await inbox(db);
    await outbox(db);
    await jobs(db);
    await erasing(db);
  },
};

async function chats(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('chat')
    .addColumn('id', 'text', (column) => column.primaryKey().notNull())
    .addColumn('channel', 'text', (column) => column.notNull())
    .addColumn('chat', 'text', (column) => column.notNull())
    .addColumn('greenhouse_id', 'text')
    .addColumn('is_group', 'integer', (column) => column.notNull().check(sql`is_group in (0, 1)`))
    .addColumn('since', 'integer', (column) => column.notNull())
    .addColumn('paused', 'integer', (column) => column.notNull().check(sql`paused in (0, 1)`))
    .addColumn('reachable', 'integer', (column) => column.notNull().check(sql`reachable in (0, 1)`))
    .addColumn('dialogue', 'text')
    .addUniqueConstraint('chat_address', ['channel', 'chat'])
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('chat_greenhouse').on('chat').columns(['greenhouse_id', 'since', 'id']).execute();

  await db.schema
    .createTable('invite')
    .addColumn('code', 'text', (column) => column.primaryKey().notNull())
    .addColumn('greenhouse_id', 'text', (column) => column.notNull())
    .addColumn('valid_until_s', 'integer', (column) => column.notNull())
    .modifyEnd(sql`strict`)
    .execute();
}

async function inbox(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('inbound')
    .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
    .addColumn('channel', 'text', (column) => column.notNull())
    .addColumn('update_id', 'text', (column) => column.notNull())
    .addColumn('chat', 'text', (column) => column.notNull())
    .addColumn('is_group', 'integer', (column) => column.notNull().check(sql`is_group in (0, 1)`))
    .addColumn('sender', 'text', (column) => column.notNull())
    .addColumn('received_at_s', 'integer', (column) => column.notNull())
    .addColumn('content', 'text')
    .addColumn('state', 'text', (column) => column.notNull().check(sql`state in ('open', 'done', 'parked')`))
    .addColumn('attempts', 'integer', (column) => column.notNull().defaultTo(0))
    .addColumn('cause', 'text')
    .addColumn('finished_at_s', 'integer')
    .addUniqueConstraint('inbound_update', ['channel', 'update_id'])
    .addCheckConstraint('inbound_finishes', sql`(state = 'open') = (finished_at_s is null)`)
    .addCheckConstraint('inbound_whole', sql`state <> 'open' or content is not null`)
    .modifyEnd(sql`strict`)
    .execute();
  // Over the open rows alone: however many lie finished, what is open is found at once.
  await partialIndex(db, 'inbound_open', sql`inbound (state, id) where state = 'open'`);
  await partialIndex(db, 'inbound_of_chat', sql`inbound (channel, chat, id) where state = 'open'`);
  await partialIndex(db, 'inbound_finished', sql`inbound (finished_at_s) where finished_at_s is not null`);
  await refuse(db, 'inbound_ended', "update of state on inbound when old.state <> 'open'", 'an update is finished once');
}

async function outbox(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('outbound')
    .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
    .addColumn('chat_id', 'text', (column) => column.notNull().references('chat.id'))
    .addColumn('key', 'text', (column) => column.notNull().unique())
    .addColumn('message', 'text')
    .addColumn('state', 'text', (column) => column.notNull().check(sql`state in ('waiting', 'sending', 'sent', 'dropped')`))
    .addColumn('attempts', 'integer', (column) => column.notNull().defaultTo(0))
    .addColumn('not_before_s', 'integer', (column) => column.notNull())
    .addColumn('useless_after_s', 'integer')
    .addColumn('tried_at_s', 'integer')
    .addColumn('sent_as', 'text')
    .addColumn('cause', 'text')
    .addColumn('finished_at_s', 'integer')
    .addCheckConstraint('outbound_finishes', sql`(state in ('waiting', 'sending')) = (finished_at_s is null)`)
    .addCheckConstraint('outbound_whole', sql`message is not null or finished_at_s is not null`)
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('outbound_sent_as').on('outbound').columns(['chat_id', 'sent_as']).execute();
  await partialIndex(db, 'outbound_due', sql`outbound (state, not_before_s, id) where state = 'waiting'`);
  await partialIndex(db, 'outbound_useless', sql`outbound (state, useless_after_s) where state = 'waiting'`);
  await partialIndex(db, 'outbound_sending', sql`outbound (state, chat_id) where state = 'sending'`);
  await partialIndex(db, 'outbound_of_chat', sql`outbound (chat_id, id) where finished_at_s is null`);
  await partialIndex(db, 'outbound_finished', sql`outbound (finished_at_s) where finished_at_s is not null and message is not null`);
  await refuse(db, 'outbound_ended', "update of state on outbound when old.state in ('sent', 'dropped')", 'a message is sent or dropped once');
  await refuse(db, 'outbound_key_unchanged', 'update of key on outbound', 'the key of a message stays as it was');
}

async function jobs(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('job')
    .addColumn('id', 'integer', (column) => column.primaryKey().autoIncrement())
    .addColumn('key', 'text', (column) => column.notNull().unique())
    .addColumn('kind', 'text', (column) => column.notNull())
    .addColumn('greenhouse_id', 'text', (column) => column.notNull())
    .addColumn('due_at_s', 'integer', (column) => column.notNull())
    .addColumn('body', 'text', (column) => column.notNull())
    .addColumn('state', 'text', (column) => column.notNull().check(sql`state in ('open', 'done', 'dropped')`))
    .addColumn('attempts', 'integer', (column) => column.notNull().defaultTo(0))
    .addColumn('finished_at_s', 'integer')
    .addCheckConstraint('job_finishes', sql`(state = 'open') = (finished_at_s is null)`)
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('job_greenhouse').on('job').columns(['greenhouse_id', 'kind']).execute();
  await partialIndex(db, 'job_due', sql`job (state, due_at_s, id) where state = 'open'`);
  await partialIndex(db, 'job_finished', sql`job (finished_at_s) where finished_at_s is not null and body <> ''`);
  await refuse(db, 'job_ended', "update of state on job when old.state <> 'open'", 'a job is done or dropped once');
}

/** Readings, advisories and messages are kept by the database itself, except for a greenhouse or a chat whose id stands in `erasing`. */
async function erasing(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('erasing')
    .addColumn('id', 'text', (column) => column.primaryKey().notNull())
    .modifyEnd(sql`strict`)
    .execute();
  await db.schema.createIndex('reading_replaced_by').on('reading').column('replaced_by').execute();
  await sql`drop trigger reading_kept`.execute(db);
  await sql`drop trigger advisory_kept`.execute(db);
  const isNotErased = (column: string): string => `when not exists (select 1 from erasing where erasing.id = old.${column})`;
  await refuse(db, 'reading_kept', `delete on reading ${isNotErased('greenhouse_id')}`, 'a reading is kept: withdraw it instead');
  await refuse(db, 'advisory_kept', `delete on advisory ${isNotErased('greenhouse_id')}`, 'an advisory is kept as issued');
  await refuse(db, 'outbound_kept', `delete on outbound ${isNotErased('chat_id')}`, 'the key of a message is kept for ever: what was sent stays known');
}

async function partialIndex(db: Kysely<unknown>, name: string, on: ReturnType<typeof sql>): Promise<void> {
  await sql`create index ${sql.ref(name)} on ${on}`.execute(db);
}

async function refuse(db: Kysely<unknown>, name: string, event: string, why: string): Promise<void> {
  await sql`create trigger ${sql.ref(name)} before ${sql.raw(event)} begin select raise(abort, ${sql.lit(why)}); end`.execute(db);
}
