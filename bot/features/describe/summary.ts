import { checkGreenhouse } from '../../../engine/index.js';
import { lineWords } from '../../text/describe-lines-text.js';
import { plainName } from '../../text/describe-text.js';
import { LINE_TITLES, notTold, summaryText, waitingWords } from '../../text/describe-summary-text.js';
import { filledIn } from './filled-in.js';
import { plainUnit } from './size.js';
import { TOPICS, type DescribeState, type Line } from './state.js';
import { lineOf } from './line-of.js';
import type { SummaryView } from './view.js';

/** In the order of the questions, with what is only noted at the end: a line keeps its number. */
export const LINES: readonly Line[] = [...TOPICS, 'other'];

export function viewOf(state: DescribeState): SummaryView {
  const { file, size, habits } = state;
  const checked = checkGreenhouse(filledIn(file));
  if (!checked.ok) throw new Error(`a description must always pass the check; got ${checked.faults.map(({ field, message }) => `${field}: ${message}`).join('; ')}`);
  const unit = plainUnit(size, habits?.lengths ?? null);
  const primary = unit !== null && 'unit' in unit ? unit.unit : habits?.lengths === 'ft' ? 'ft' : 'm';
  return { file, size, isPlainSure: unit !== null && 'unit' in unit, greenhouse: checked.greenhouse, primary, temperatureUnits: checked.greenhouse.grower.units, placeName: state.placeName, thermometers: state.thermometers, pending: state.pending, told: state.told };
}

/** What is said of one line, with what waits for an answer. */
export function lineText(line: Line, view: SummaryView): string {
  const known = lineWords(line, view);
  const waiting = view.pending.filter(({ fact }) => lineOf(fact) === line).map(({ fact, parked }) => waitingWords(fact, parked));
  const none = line !== 'other' && view.told[line] === 'none';
  const parts = [...(known === null ? [] : [known]), ...waiting];
  return parts.length > 0 ? plainName(parts.join('; ')) : notTold(line, none);
}

/** The summary: one line a thing, with its number. */
export const summaryOf = (view: SummaryView): string => summaryText(LINES.flatMap((line, at) => (line === 'other' && lineWords('other', view) === null ? [] : [`${at + 1} ${LINE_TITLES[line]}: ${lineText(line, view)}`])));
