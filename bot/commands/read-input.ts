import { readFile } from 'node:fs/promises';
import { IANAZone } from 'luxon';
import { checkGreenhouse, type Greenhouse } from '../../engine/index.js';
import { InputError } from './input-error.js';

/** A JSON file, or a message that says what is wrong with it. */
export async function readJson(path: string, what: string): Promise<unknown> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw new InputError(`${what} ${path}: expected a file that can be read, got ${(error as NodeJS.ErrnoException).code ?? String(error)}. Check the path.`);
  }
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw new InputError(`${what} ${path}: expected JSON, got ${error instanceof Error ? error.message : String(error)}`);
  }
}

export async function readGreenhouse(path: string): Promise<Greenhouse> {
  const check = checkGreenhouse(await readJson(path, 'the greenhouse file'));
  if (!check.ok) throw new InputError(`the greenhouse file ${path} has ${check.faults.length} fault${check.faults.length > 1 ? 's' : ''}:\n${check.faults.map(({ field, message }) => `  ${field}: ${message}`).join('\n')}`);
  const { timeZone } = check.greenhouse.place;
  if (timeZone !== undefined && !IANAZone.isValidZone(timeZone)) throw new InputError(`the greenhouse file ${path}: place.timeZone: no such time zone ${JSON.stringify(timeZone)}; for example "America/Toronto"`);
  return check.greenhouse;
}

/** An instant with offset, as epoch seconds. */
export function readInstant(text: string, option: string): number {
  const ms = /(?:Z|[+-]\d\d:?\d\d)$/u.test(text) ? Date.parse(text) : NaN;
  if (!Number.isFinite(ms)) throw new InputError(`${option}: expected an instant with offset such as 2026-01-14T16:00:00-05:00 or 2026-01-14T21:00:00Z, got ${JSON.stringify(text)}`);
  return Math.floor(ms / 1000);
}
