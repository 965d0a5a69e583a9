import { sql, type Kysely, type Migration } from 'kysely';

// Every statement may run twice: SQLite migrations are not one transaction, and a kill between two of them must not lock the owner out.
export const firstTables: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`
      create table if not exists greenhouseVersion (
        greenhouseId text not null,
        version integer not null,
        body text not null,
        savedAtS integer not null,
        primary key (greenhouseId, version)
      ) strict`.execute(db);

    // autoincrement: an id that was told to a grower is never given to another reading.
    await sql`
      create table if not exists reading (
        id integer primary key autoincrement,
        greenhouseId text not null,
        receivedAtS integer not null,
        validAtS integer not null,
        place text not null,
        statistic text not null check (statistic in ('now', 'low', 'high')),
        tempC real not null,
        text text not null,
        replacedBy integer references reading (id),
        withdrawnAtS integer
      ) strict`.execute(db);
    await sql`create index if not exists readingByArrival on reading (greenhouseId, receivedAtS, id)`.execute(db);
    await sql`create trigger if not exists readingStays before delete on reading
      begin select raise(abort, 'a reading is withdrawn or replaced, never deleted'); end`.execute(db);

    await sql`
      create table if not exists action (
        id integer primary key autoincrement,
        greenhouseId text not null,
        receivedAtS integer not null,
        night text not null,
        body text not null,
        done integer not null check (done in (0, 1)),
        text text not null
      ) strict`.execute(db);
    await sql`create index if not exists actionByArrival on action (greenhouseId, receivedAtS, id)`.execute(db);

    await sql`
      create table if not exists weather (
        placeKey text not null,
        issuedAtS integer not null,
        body text not null,
        primary key (placeKey, issuedAtS)
      ) strict`.execute(db);

    await sql`
      create table if not exists advisory (
        id integer primary key autoincrement,
        greenhouseId text not null,
        night text not null,
        issuedAtS integer not null,
        body text not null
      ) strict`.execute(db);
    await sql`create index if not exists advisoryByIssue on advisory (greenhouseId, issuedAtS, id)`.execute(db);
    // What was said before the night is what we are judged by in the morning.
    await sql`create trigger if not exists advisoryStays before update on advisory
      begin select raise(abort, 'an advisory is kept as issued'); end`.execute(db);
    await sql`create trigger if not exists advisoryIsNotDeleted before delete on advisory
      begin select raise(abort, 'an advisory is kept as issued'); end`.execute(db);
  },
};
