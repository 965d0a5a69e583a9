import { stringify } from 'csv-stringify/sync';

export type CsvCell = string | number | null;

/** Temperatures go out in hundredths of a degree: finer digits are none of a thermometer's. */
const DECIMALS = 2;
const cell = (value: CsvCell): CsvCell => (typeof value === 'number' ? Number(value.toFixed(DECIMALS)) + 0 : value);

/**
 * A table for any spreadsheet (RFC 4180): marked as UTF-8, because some of them take it for something else otherwise, and with words
 * that would be taken for a formula made plain.
 */
export const csvText = (header: readonly string[], rows: readonly (readonly CsvCell[])[]): string =>
  stringify([[...header], ...rows.map((row) => row.map(cell))], { bom: true, record_delimiter: 'windows', escape_formulas: true });
