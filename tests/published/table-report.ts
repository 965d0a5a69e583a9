import { scoreTable, type PublishedTable, type TableScore } from './published-table.js';

/** What is told of a table: what it is, how the engine does, and the verdict. */
export interface TableReport extends Pick<PublishedTable, 'source' | 'title' | 'unit' | 'tolerance' | 'toleranceReason' | 'origin'> {
  readonly relative: boolean;
  /** Some rows have a tolerance of their own. */
  readonly ownTolerances: boolean;
  readonly score: TableScore | null;
  /** Each row, where the table is listed. */
  readonly rows: readonly RowReport[];
  readonly verdict: 'ok' | 'failed' | 'absent';
  readonly absent?: string;
}

export interface RowReport {
  readonly name: string;
  readonly expected: number;
  readonly value: number;
  readonly note: string | null;
}

export interface RecordReport {
  readonly tables: readonly TableReport[];
  readonly rows: number;
  readonly sources: number;
  readonly failed: number;
  readonly absent: number;
}

function reportTable(table: PublishedTable): TableReport {
  const { source, title, unit, tolerance, toleranceReason, origin, rows, absent } = table;
  const told = { source, title, unit, tolerance, toleranceReason, ...(origin === undefined ? {} : { origin }), relative: table.relative ?? false, ownTolerances: rows.some((row) => row.tolerance !== undefined) };
  if (absent !== undefined) return { ...told, score: null, rows: [], verdict: 'absent', absent };
  const score = scoreTable(table);
  const listed = table.listed ? rows.map((row): RowReport => ({ name: row.name, expected: row.expected, value: row.model(), note: row.note?.() ?? null })) : [];
  // A table without rows proves nothing.
  return { ...told, score, rows: listed, verdict: score.passed && score.n > 0 ? 'ok' : 'failed' };
}

export function reportRecord(all: readonly PublishedTable[]): RecordReport {
  const tables = all.map(reportTable);
  const count = (verdict: TableReport['verdict']): number => tables.filter((table) => table.verdict === verdict).length;
  return { tables, rows: tables.reduce((sum, { score }) => sum + (score?.n ?? 0), 0), sources: new Set(tables.map(({ source }) => source)).size, failed: count('failed'), absent: count('absent') };
}
