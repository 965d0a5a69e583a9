import { StoreError } from './store-error.js';

// The year 5138 in seconds, 1973 in milliseconds: tells the two apart.
const LATEST_TIME_S = 100_000_000_000;

/** The value, or a refusal that names the column: a wrong unit in the store is found months later, if ever. */
export function epochSeconds(column: string, valueS: number): number {
  if (Number.isInteger(valueS) && valueS >= 0 && valueS < LATEST_TIME_S) return valueS;
  const hint = valueS >= LATEST_TIME_S ? ' Milliseconds? Divide by 1000.' : ' Round it down before storing.';
  throw new StoreError('bad-row', `Cannot store ${column}: expected whole epoch seconds, got ${valueS}.${hint}`);
}

export function temperatureC(column: string, valueC: number): number {
  if (Number.isFinite(valueC)) return valueC;
  throw new StoreError('bad-row', `Cannot store ${column}: expected a temperature in °C, got ${valueC}. Refuse the message before it comes to the store.`);
}

export function name(column: string, value: string): string {
  if (value !== '') return value;
  throw new StoreError('bad-row', `Cannot store ${column}: expected a name, got an empty text. Say whose row it is.`);
}

export function rowLimit(limit: number): number {
  // SQLite takes a negative limit for none.
  if (Number.isInteger(limit) && limit >= 0) return limit;
  throw new StoreError('bad-row', `Cannot list rows: expected a whole limit of 0 or more, got ${limit}. Give the most rows that you can use.`);
}

/** For an instant before which, or until which, something holds: rounded up, so that it never comes a moment too early. */
export const notEarlierS = (column: string, valueS: number): number => epochSeconds(column, Math.ceil(valueS));
