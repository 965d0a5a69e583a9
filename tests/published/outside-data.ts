import { existsSync, readFileSync } from 'node:fs';

/** Outside data lie beside the project and are read in place, never copied into it. */
const OUTSIDE_DATA = new URL('../../../shared/validation/', import.meta.url);

/** The parsed file, or null where it is absent; the caller then skips and names the public origin. */
export function outsideJson(path: string): unknown {
  const url = new URL(path, OUTSIDE_DATA);
  return existsSync(url) ? JSON.parse(readFileSync(url, 'utf8')) : null;
}

/** The cells of a CSV file by the names of its columns, or null where it is absent. */
export function outsideCsv(path: string): ReadonlyMap<string, readonly string[]> | null {
  const url = new URL(path, OUTSIDE_DATA);
  if (!existsSync(url)) return null;
  const [head, ...lines] = readFileSync(url, 'utf8').trim().split('\n').map((line) => line.split(','));
  return new Map(head!.map((name, column) => [name.trim(), lines.map((cells) => cells[column]!)]));
}
