import type { ExportedTable } from '../features/export/export-tables.js';
import type { TempUnits } from './temperature.js';

const degreesIn = (name: string, units: TempUnits): readonly string[] => (units === 'F' ? [`${name} (C)`, `${name} (F)`] : [`${name} (C)`]);

interface TableWords {
  readonly file: string;
  /** What a row is, one and many. */
  readonly row: readonly [string, string];
  /** The top line; a temperature takes one column in Celsius, and a second one for growers who use Fahrenheit. */
  readonly header: (units: TempUnits) => readonly string[];
}

/** Times are ISO 8601 with the offset of the place. */
export const TABLE_WORDS: Readonly<Record<ExportedTable, TableWords>> = {
  readings: {
    file: 'duskward-readings.csv',
    row: ['reading', 'readings'],
    header: (units) => ['id', 'received (ISO 8601)', 'valid (ISO 8601)', 'night of (date)', 'place', 'thermometer', 'statistic', ...degreesIn('temperature', units), 'judged', 'replaced by (id)', 'withdrawn (ISO 8601)', 'words'],
  },
  deeds: {
    file: 'duskward-deeds.csv',
    row: ['thing you did or left', 'things you did or left'],
    header: (units) => ['told (ISO 8601)', 'night of (date)', 'what', 'beds', ...degreesIn('setting', units), 'done', 'words'],
  },
  forecasts: {
    file: 'duskward-forecasts.csv',
    row: ['forecast', 'forecasts'],
    header: (units) => ['issued (ISO 8601)', 'night of (date)', 'weather', 'place', 'bed', 'lowest at (ISO 8601)', ...['mean', '1 in 10 colder', 'middle', '1 in 10 warmer'].flatMap((name) => degreesIn(name, units))],
  },
  crops: {
    file: 'duskward-crops.csv',
    row: ['word on how a crop came through', 'words on how crops came through'],
    header: () => ['told (ISO 8601)', 'night of (date)', 'crop', 'bed', 'state', 'words'],
  },
  changes: {
    file: 'duskward-changes.csv',
    row: ['change of the house', 'changes of the house'],
    header: () => ['told (ISO 8601)', 'changed (ISO 8601)', 'counted', 'words'],
  },
};

/** What went out: how many of each. */
export function exportText(counts: readonly { readonly table: ExportedTable; readonly count: number }[]): string {
  if (counts.length === 0) return 'There is nothing to keep yet: no forecast, no reading, nothing that you did.';
  const parts = counts.map(({ table, count }) => `${count} ${TABLE_WORDS[table].row[count === 1 ? 0 : 1]}`);
  const files = counts.length === 1 ? 'One file to keep' : `${counts.length} files to keep`;
  return `${files}: ${parts.join(', ')}.\nAny spreadsheet opens them. Say "erase" if I should forget it all.`;
}
