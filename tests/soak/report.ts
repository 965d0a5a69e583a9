/** What a trial found. */
export interface Report {
  readonly title: string;
  readonly figures: readonly (readonly [what: string, figure: string])[];
  /** Promises that were broken, one a line; empty when all were kept. */
  readonly broken: readonly string[];
}

const MOST_LINES = 20;

/** As a plain table. */
export function tableOf({ title, figures, broken }: Report): string {
  const width = Math.max(...figures.map(([what]) => what.length));
  return [title, ...figures.map(([what, figure]) => `  ${what.padEnd(width)}  ${figure}`), ...(broken.length === 0 ? ['  kept: every promise'] : broken.slice(0, MOST_LINES).map((line) => `  BROKEN: ${line}`))].join('\n');
}
