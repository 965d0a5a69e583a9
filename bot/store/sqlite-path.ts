import { mkdirSync, realpathSync, statSync } from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { StoreError } from './store-error.js';

export const IN_MEMORY = ':memory:';

/**
 * The one true path of a store's file; its folder is made where missing.
 * Links are followed, so that two names of one file share one lock.
 */
export function sqlitePath(path: string): string {
  // The driver trims too, and takes an empty name for a store that vanishes at the end.
  const given = path.trim();
  if (given === '') {
    throw new StoreError('bad-path', `Cannot open the store: expected the path of a file, such as data/duskward.sqlite, got ${JSON.stringify(path)}. Set a path.`);
  }
  if (given === IN_MEMORY) return IN_MEMORY;
  const wanted = resolve(given);
  const folder = dirname(wanted);
  try {
    mkdirSync(folder, { recursive: true });
  } catch (error) {
    throw new StoreError(
      'not-writable',
      `Cannot make the folder ${folder} for the store: expected to be able to create it, got "${(error as Error).message}". ` +
        'Make it by hand, give this user permission, or set another path.',
      { cause: error },
    );
  }
  const file = statSync(wanted, { throwIfNoEntry: false });
  if (file === undefined) return join(realpathSync(folder), basename(wanted));
  if (!file.isFile()) {
    throw new StoreError('bad-path', `Cannot open the store ${wanted}: expected a file, got ${file.isDirectory() ? 'a folder' : 'something else'}. Set the path of a file in it.`);
  }
  return realpathSync(wanted);
}
