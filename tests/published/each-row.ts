import { describe, expect, it } from 'vitest';
import { deviationOf, type PublishedTable } from './published-table.js';

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
      it.each(table.rows.map((row) => [row.name, row] as const))('%s', (_name, row) => {
        const deviation = deviationOf(table, row);
        expect(Math.abs(deviation), `${row.model()} against ${row.expected} ${table.unit}`).toBeLessThanOrEqual(row.tolerance ?? table.tolerance);
      });
    });
  }
}
