import { existsSync, readFileSync } from 'node:fs';

/** Outside data lie beside the project and are read in place, never copied into it. */
const OUTSIDE_DATA = new URL('../../../shared/validation/', import.meta.url);

/** The parsed file, or null where it is absent; the caller then skips and names the public origin. */
export function outsideJson(path: string): unknown {
  const url = new URL(path, OUTSIDE_DATA);
  return existsSync(url) ? JSON.parse(readFileSync(url, 'utf8')) : null;
}
