import { Migrator, type Kysely } from 'kysely';
import { first } from './migrations/0001-first.js';
import { journal } from './migrations/0002-journal.js';
import { topics } from './migrations/0003-topics.js';
import { judgedReadings } from './migrations/0004-judged-readings.js';
import { outcomes } from './migrations/0005-outcomes.js';
import { learning } from './migrations/0006-learning.js';
import type { StoreTables } from './schema.js';
import { StoreError } from './store-error.js';

// In code, not found in a folder: a build cannot lose one. Run in the order of their names.
const MIGRATIONS = { '0001-first': first, '0002-journal': journal, '0003-topics': topics, '0004-judged-readings': judgedReadings, '0005-outcomes': outcomes, '0006-learning': learning };

/** Brings the tables up to date, all or nothing; refuses a database that a newer program has already moved on. */
export async function migrateToLatest(db: Kysely<StoreTables>, where: string): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: () => Promise.resolve(MIGRATIONS) } });
  const { error } = await migrator.migrateToLatest();
  if (error === undefined) return;
  if (error instanceof Error && error.message.startsWith('corrupted migrations')) {
    throw new StoreError(
      'newer-version',
      `Cannot use the store ${where}: it was written by another version of Duskward. Expected the migrations ${Object.keys(MIGRATIONS).join(', ')}; ` +
        `got: ${error.message}. Run the version that wrote it, or set another path.`,
      { cause: error },
    );
  }
  throw error instanceof Error ? error : new Error(`Bringing the tables of ${where} up to date failed.`, { cause: error });
}
