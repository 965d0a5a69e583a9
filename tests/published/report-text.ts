import type { RecordReport, TableReport } from './table-report.js';

const HEAD = ['table', 'origin', 'unit', 'n', 'bias', 'mean abs', 'worst', 'tolerance', 'verdict'] as const;
/** These columns are words; the rest are numbers. */
const WORD_COLUMNS = 3;

const number = (value: number): string => (value === 0 ? '0' : Math.abs(value) < 1e-3 || Math.abs(value) >= 1e4 ? value.toExponential(1) : String(Number(value.toPrecision(3))));

function cellsOf(table: TableReport): readonly string[] {
  const unit = `${table.unit}${table.relative ? ' (share)' : ''}`;
  const tolerance = `${number(table.tolerance)}${table.ownTolerances ? ' or own' : ''}`;
  const origin = table.origin ?? '';
  if (!table.score) return [table.title, origin, unit, '0', '', '', '', tolerance, `absent: ${table.absent ?? ''}`];
  const { n, bias, meanAbsolute, worst } = table.score;
  return [table.title, origin, unit, String(n), number(bias), number(meanAbsolute), number(worst), tolerance, table.verdict === 'ok' ? 'ok' : 'FAILED'];
}

const bySource = ({ tables }: RecordReport): readonly (readonly [string, readonly TableReport[]])[] =>
  [...new Set(tables.map(({ source }) => source))].map((source) => [source, tables.filter((table) => table.source === source)] as const);

export function closingLine({ rows, tables, sources, failed, absent }: RecordReport): string {
  return `${rows} rows in ${tables.length} tables of ${sources} sources; ${absent === 0 ? 'no outside data absent' : `${absent} tables without their outside data`}; ${failed === 0 ? 'none failed' : `${failed} tables FAILED`}`;
}

const listedHead = ({ title, unit }: TableReport): string => `${title}, row by row (${unit}: printed, engine)`;

/** The rows of a listed table one by one, and why the engine departs from them. */
function listedText(table: TableReport): readonly string[] {
  if (table.rows.length === 0) return [];
  const width = Math.max(...table.rows.map(({ name }) => name.length));
  return [`  ${listedHead(table)}`, ...table.rows.flatMap(({ name, expected, value, note }) => [`    ${name.padEnd(width)}  ${number(expected).padStart(8)}  ${number(value).padStart(8)}`, ...(note === null ? [] : [`      ${note}`])])];
}

/** For the terminal: a table for each source, columns in line. */
export function plainText(report: RecordReport): string {
  const blocks = bySource(report).map(([source, tables]) => {
    const lines = [HEAD, ...tables.map(cellsOf)];
    const widths = HEAD.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
    return [source, ...lines.map((line) => `  ${line.map((cell, column) => (column < WORD_COLUMNS ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!))).join('  ')}`), ...tables.flatMap(listedText)].join('\n');
  });
  return [...blocks, closingLine(report)].join('\n\n');
}

const escaped = (cell: string): string => cell.replaceAll('|', '\\|');

function listedMarkdown(table: TableReport): readonly string[] {
  if (table.rows.length === 0) return [];
  const rows = table.rows.map(({ name, expected, value, note }) => `| ${escaped(name)} | ${number(expected)} | ${number(value)} | ${escaped(note ?? '')} |`);
  return ['', `${listedHead(table)}:`, '', '| row | printed | engine | why |', '| --- | ---: | ---: | --- |', ...rows];
}

/** For the README: the same with the reason of each tolerance and the row that is furthest off. */
export function markdown(report: RecordReport): string {
  const head = [...HEAD, 'reason of the tolerance', 'furthest off'];
  const row = (cells: readonly string[]): string => `| ${cells.map(escaped).join(' | ')} |`;
  const rule = `| ${head.map((_, column) => (column < WORD_COLUMNS || column >= HEAD.length - 1 ? '---' : '---:')).join(' | ')} |`;
  const blocks = bySource(report).map(([source, tables]) =>
    [`### ${source}`, '', row(head), rule, ...tables.map((table) => row([...cellsOf(table), table.toleranceReason, table.score && table.score.worst !== 0 ? table.score.worstRow : ''])), ...tables.flatMap(listedMarkdown)].join('\n'),
  );
  return `${[...blocks, closingLine(report)].join('\n\n')}\n`;
}
