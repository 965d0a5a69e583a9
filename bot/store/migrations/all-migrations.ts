import type { MigrationProvider } from 'kysely';
import { firstTables } from './0001-first-tables.js';

/** In code and not read from a folder, so that the built program carries them. Names sort in the order in which they run. */
export const allMigrations: MigrationProvider = {
  getMigrations: () => Promise.resolve({ '0001-first-tables': firstTables }),
};
