import { nightBehind, type NightSpan } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { Records } from '../../ports.js';
import { historyText, lastNightText } from '../../text/history-text.js';
import { mainThermometer, nightsPicture, type DrawNights } from './nights-picture.js';
import { pastNights, type RecordSubject } from './past-nights.js';

export interface HistoryPorts {
  readonly store: Records;
  readonly nowS: number;
  readonly drawNights: DrawNights;
}

const NIGHTS = 7;
const HOUR_S = 3600;
const DAY_S = 86_400;

/** "Last week", "what did I do": the last nights, each with what was said, read and done. Nothing is written. */
export async function answerHistory(subject: RecordSubject, { store, nowS, drawNights }: HistoryPorts): Promise<Outgoing> {
  const spans = lastNights(nowS, subject);
  const rows = await store.everyReading(subject.greenhouseId, Math.floor(spans[0]!.sunsetS));
  const nights = await pastNights(spans, rows, subject, store);
  const main = mainThermometer(nights);
  const { units } = subject.greenhouse.grower;
  const picture = nightsPicture(nights, main, { greenhouse: subject.greenhouse.name, units });
  const text = historyText(nights, picture.nights.map(({ said }) => said), { thermometer: main, units });
  if (!picture.nights.some(({ said, read }) => said ?? read)) return { text };
  const picturePng = await drawNights(picture);
  return { text, short: lastNightText(nights.at(-1)!, picture.nights.at(-1)!.said, units), ...(picturePng === null ? {} : { picturePng }) };
}

/** The nights that are over, or past their middle, oldest first. */
function lastNights(nowS: number, { greenhouse }: RecordSubject): readonly NightSpan[] {
  const before = ({ sunsetS }: NightSpan): NightSpan => nightBehind(sunsetS - DAY_S + HOUR_S, greenhouse.place);
  const newest = nightBehind(nowS, greenhouse.place);
  const spans = [newest.isRunning && nowS < (newest.sunsetS + newest.sunriseS) / 2 ? before(newest) : newest];
  while (spans.length < NIGHTS) spans.unshift(before(spans[0]!));
  return spans;
}
