import type Database from 'better-sqlite3';
import { CompiledQuery, SqliteAdapter, SqliteDialect, SqliteDriver, type DatabaseConnection, type DialectAdapter, type Driver } from 'kysely';

/**
 * kysely's SQLite dialect with three differences.
 * Transactions take the write lock at once: a deferred one that reads and then writes fails with SQLITE_BUSY when another writer came between.
 * A transaction that SQLite has rolled back by itself (a full disk) is not rolled back again, which would hide what went wrong.
 * Migrations run inside a transaction: SQLite can roll back DDL, so a process killed half way leaves no half-made tables.
 */
export class ImmediateSqliteDialect extends SqliteDialect {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
  }

  override createDriver(): Driver {
    return new ImmediateDriver(this.#database);
  }

  override createAdapter(): DialectAdapter {
    return new TransactionalDdlAdapter();
  }
}

class ImmediateDriver extends SqliteDriver {
  readonly #database: Database.Database;

  constructor(database: Database.Database) {
    super({ database });
    this.#database = database;
  }

  override async beginTransaction(connection: DatabaseConnection): Promise<void> {
    await connection.executeQuery(CompiledQuery.raw('begin immediate'));
  }

  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

class TransactionalDdlAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}
