/** Where the expected numbers of a table come from. */
export type Origin = 'published' | 'measured' | 'library run' | 'closed form' | 'worked example of this project' | 'from memory';

/** One number that somebody printed, and how the engine comes to its own. */
export interface PublishedRow {
  readonly name: string;
  readonly expected: number;
  readonly model: () => number;
  /** Where this row needs another tolerance than its table. */
  readonly tolerance?: number;
  /** Why the engine departs from it; told under the table where each row is listed. */
  readonly note?: () => string;
}

/** A table of one source: what was printed, how close the engine must come, and why that close. */
export interface PublishedTable {
  /** Key of the bibliography. */
  readonly source: string;
  readonly title: string;
  readonly unit: string;
  readonly tolerance: number;
  /** Deviations count as a share of the printed value. */
  readonly relative?: true;
  readonly toleranceReason: string;
  /** 'from memory' wherever the numbers, or the formula that gave them, were recalled and not read again. */
  readonly origin?: Origin;
  readonly rows: readonly PublishedRow[];
  /** Each row is told, not only how they do together. */
  readonly listed?: true;
  /** Public origin of the outside file that the rows are read from, when that file is not there. */
  readonly absent?: string;
}

export const deviationOf = (table: PublishedTable, row: PublishedRow): number => {
  const difference = row.model() - row.expected;
  return table.relative ? difference / Math.abs(row.expected) : difference;
};

export interface TableScore {
  readonly n: number;
  readonly bias: number;
  readonly meanAbsolute: number;
  readonly worst: number;
  /** Name of the row that is furthest off. */
  readonly worstRow: string;
  readonly passed: boolean;
}

/** A value that is not a number fails like one that is too far off. */
export function scoreTable(table: PublishedTable): TableScore {
  const deviations = table.rows.map((row) => deviationOf(table, row));
  const n = deviations.length;
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / n;
  const worst = deviations.reduce((worst, deviation) => (Math.abs(deviation) > Math.abs(worst) || Number.isNaN(deviation) ? deviation : worst), 0);
  return {
    n,
    bias: mean(deviations),
    meanAbsolute: mean(deviations.map(Math.abs)),
    worst,
    worstRow: table.rows[deviations.findIndex((deviation) => Object.is(deviation, worst))]?.name ?? '',
    passed: deviations.every((deviation, i) => Math.abs(deviation) <= (table.rows[i]!.tolerance ?? table.tolerance)),
  };
}

export const isPublishedTable = (value: unknown): value is PublishedTable => typeof value === 'object' && value !== null && 'toleranceReason' in value && 'rows' in value;
