import { nightSpan, type NightSpan } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { Records } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { recordText } from '../../text/record-text.js';
import { callRecord } from './call-record.js';
import { mainThermometer, nightsPicture, type DrawNights } from './nights-picture.js';
import { keyOf, MOST_OUTCOMES, nightsRead, pastNights, type RecordSubject } from './past-nights.js';
import { recordOf } from './thermometer-record.js';
import { verdictRecord } from './verdict-record.js';

export interface RecordPorts {
  readonly store: Records;
  readonly drawNights: DrawNights;
}

/** A winter: what was longer ago is of a house that was another, and takes its time to read. */
const MOST_NIGHTS = 200;
/** A picture of one night shows less than its sentence. */
const LEAST_PICTURED = 2;

/** "How right have you been": every forecast that went out before its night, beside the low that was read after it. Nothing is written. */
export async function answerRecord(subject: RecordSubject, { store, drawNights }: RecordPorts): Promise<Outgoing> {
  const rows = await store.everyReading(subject.greenhouseId, 0);
  const read = new Map([...nightsRead(rows, subject)].map(([date, { span }]) => [date, span]));
  const told = await nightsTold(subject, store);
  const spans = [...new Map([...told, ...read]).values()].sort((a, b) => a.sunsetS - b.sunsetS).slice(-MOST_NIGHTS);
  const nights = await pastNights(spans, rows, subject, store);
  const main = mainThermometer(nights, ({ judged, compares }) => judged === 'good' && compares);
  const units = subject.greenhouse.grower.units;
  const others = new Map(nights.flatMap(({ reads }) => reads).filter((read) => keyOf(read) !== keyOf(main)).map((read) => [keyOf(read), read]));
  const text = recordText({ main: recordOf(nights, main), others: [...others.values()].map((other) => recordOf(nights, other)), calls: callRecord(nights), verdicts: verdictRecord(nights) }, units);
  const picture = nightsPicture(nights.filter(({ source }) => source !== null), main, { greenhouse: subject.greenhouse.name, units });
  const picturePng = picture.nights.filter(({ said, read }) => said && read).length < LEAST_PICTURED ? null : await drawNights(picture);
  return { text, ...(picturePng === null ? {} : { picturePng }) };
}

/** Nights of which it was told how a crop came through, by their date. */
async function nightsTold({ greenhouseId, greenhouse, zone }: RecordSubject, store: Records): Promise<ReadonlyMap<string, NightSpan>> {
  const time = localTime(zone);
  return new Map((await store.outcomes(greenhouseId, MOST_OUTCOMES)).map(({ night }) => [night, nightSpan(time.noonOf(night), greenhouse.place)]));
}
