import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface StoreFolder {
  readonly folder: string;
  readonly path: string;
  remove(): void;
}

/** A new empty folder, and the path of a store that is not there yet. */
export function storeFolder(): StoreFolder {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-store-'));
  return { folder, path: join(folder, 'duskward.sqlite'), remove: () => rmSync(folder, { recursive: true, force: true }) };
}
