import { celsiusToFahrenheit, nightBehind, nightSpan, type Greenhouse } from '../../../engine/index.js';
import type { Records, StoredAction, StoredAdvisory, StoredReading } from '../../ports.js';
import type { CsvCell } from '../../text/csv.js';
import { localTime, type LocalTime } from '../../text/local-time.js';
import type { TempUnits } from '../../text/temperature.js';
import type { Advisory } from '../evening/advisory.js';
import type { Deed } from '../evening/deeds-tonight.js';

export type ExportedTable = 'readings' | 'deeds' | 'forecasts' | 'crops' | 'changes';

export interface TableRows {
  readonly table: ExportedTable;
  readonly rows: readonly (readonly CsvCell[])[];
  /** How many things they tell of: a forecast has a row for each place. */
  readonly count: number;
}

export interface ExportSubject {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
}

interface Columns {
  readonly time: LocalTime;
  readonly units: TempUnits;
  readonly place: Greenhouse['place'];
}

/** Advisories are long: so many are held at a time. */
const PAGE = 50;
const ALL = 100_000;

/** All that is kept of a greenhouse, as tables; those without a row are left out. */
export async function exportTables({ greenhouseId, greenhouse, zone }: ExportSubject, store: Records): Promise<readonly TableRows[]> {
  const columns: Columns = { time: localTime(zone), units: greenhouse.grower.units, place: greenhouse.place };
  const { time } = columns;
  const readings = (await store.everyReading(greenhouseId, 0)).map((row) => readingRow(row, columns));
  const deeds = (await store.actions(greenhouseId, 0)).map((row) => deedRow(row, columns));
  const forecasts = await forecastRows(greenhouseId, store, columns);
  const crops = (await store.outcomes(greenhouseId, ALL)).map(({ receivedAtS, night, crop, bed, state, text }): CsvCell[] => [time.iso(receivedAtS), night, crop, bed, state, text]).reverse();
  const changes = (await store.marks(greenhouseId, ALL)).map(({ receivedAtS, changedAtS, counted, text }): CsvCell[] => [time.iso(receivedAtS), time.iso(changedAtS), counted ? 'yes' : 'no', text]).reverse();
  const tables: readonly TableRows[] = [
    { table: 'readings', rows: readings, count: readings.length },
    { table: 'deeds', rows: deeds, count: deeds.length },
    { table: 'forecasts', ...forecasts },
    { table: 'crops', rows: crops, count: crops.length },
    { table: 'changes', rows: changes, count: changes.length },
  ];
  return tables.filter(({ count }) => count > 0);
}

const degreeCells = (tempC: number | null, { units }: Columns): readonly CsvCell[] => (units === 'F' ? [tempC, tempC === null ? null : celsiusToFahrenheit(tempC)] : [tempC]);

function readingRow(row: StoredReading, columns: Columns): readonly CsvCell[] {
  const { time, place } = columns;
  const night = (row.statistic === 'low' ? nightBehind : nightSpan)(row.validAtS, place);
  // A high, or a moment by day, is of no night.
  const isOfNight = row.statistic === 'low' || (row.statistic === 'now' && night.isRunning);
  return [row.id, time.iso(row.receivedAtS), time.iso(row.validAtS), isOfNight ? time.date(night.sunsetS) : null, row.place, row.thermometer, row.statistic, ...degreeCells(row.tempC, columns), row.judged, row.replacedBy, row.withdrawnAtS === null ? null : time.iso(row.withdrawnAtS), row.text];
}

function deedRow(row: StoredAction, columns: Columns): readonly CsvCell[] {
  const { items, beds, setC } = JSON.parse(row.body) as Deed;
  return [columns.time.iso(row.receivedAtS), row.night, items.join(', '), beds?.join(', ') ?? null, ...degreeCells(setC, columns), row.done ? 'yes' : 'no', row.text];
}

/** A row for each place of each advisory, oldest first. */
async function forecastRows(greenhouseId: string, store: Records, columns: Columns): Promise<Pick<TableRows, 'rows' | 'count'>> {
  const rows: (readonly CsvCell[])[] = [];
  let count = 0;
  let page: readonly StoredAdvisory[] = [];
  do {
    page = await store.advisoriesAfter(greenhouseId, page.at(-1) ?? null, PAGE);
    for (const { body } of page) {
      const { issuedAt, night, weather, places } = JSON.parse(body) as Advisory;
      for (const { place, bed, lowAt, lowC } of places) rows.push([issuedAt, night, weather.source, place, bed ?? null, lowAt, ...[lowC.mean, lowC.q10, lowC.q50, lowC.q90].flatMap((tempC) => degreeCells(tempC, columns))]);
    }
    count += page.length;
  } while (page.length === PAGE);
  return { rows, count };
}
