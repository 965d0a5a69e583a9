import { describe, expect, it } from 'vitest';
import { deviationOf, type PublishedTable } from './published-table.js';

/** A table longer than this (a grid of a library) is one test, which names its worst rows. */
const LONGEST_LISTED = 30;

/** Declares one test for each row of each table; a table whose outside file is absent is skipped and says where that file comes from. */
export function testEachRow(tables: readonly PublishedTable[]): void {
  for (const table of tables) {
    const where = table.absent === undefined ? '' : ` (absent here; origin: ${table.absent})`;
    describe.skipIf(table.absent !== undefined)(`${table.source} ${table.title}${where}`, () => {
      if (table.absent !== undefined) {
        it('needs its outside file', () => undefined);
        return;
      }
      it('has rows, each with its own name', () => {
        expect(table.rows.length).toBeGreaterThan(0);
        expect(new Set(table.rows.map((row) => row.name)).size).toBe(table.rows.length);
      });
      if (table.rows.length > LONGEST_LISTED) {
        it(`all ${table.rows.length} rows lie within tolerance`, () => {
          const off = table.rows.filter((row) => !(Math.abs(deviationOf(table, row)) <= (row.tolerance ?? table.tolerance)));
          expect(off.map((row) => `${row.name}: ${row.model()} against ${row.expected}`)).toEqual([]);
        });
        return;
      }
      it.each(table.rows.map((row) => [row.name, row] as const))('%s', (_name, row) => {
        const deviation = deviationOf(table, row);
        expect(Math.abs(deviation), `${row.model()} against ${row.expected} ${table.unit}`).toBeLessThanOrEqual(row.tolerance ?? table.tolerance);
      });
    });
  }
}
