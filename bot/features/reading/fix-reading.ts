import type { DegreeUnit } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { Intent, Reading } from '../../language/intent.js';
import type { Records, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { noReadingYet } from '../../text/reply-text.js';
import { READING_WORDS, shortReading } from '../../text/reading-text.js';
import { celsius } from '../../language/temperature.js';
import { judge, type ReadingMessage } from './judge.js';
import { asTyped } from './as-typed.js';
import { acknowledge, rowOf, type Written } from './log-reading.js';
import { keyOf, thermometerSaid } from './thermometer.js';

/** Enough for all that one message can hold. */
const MOST_OF_ONE_MESSAGE = 20;

/** Corrects the reading that is meant, or takes back all of the newest message; the old rows stay, marked. */
export async function fixReading(intent: Extract<Intent, { kind: 'fix' }>, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const rows = await store.readings(message.greenhouseId, MOST_OF_ONE_MESSAGE);
  const newest = rows.filter((row) => row.receivedAtS === rows[0]?.receivedAtS && row.text === rows[0].text);
  const [last] = newest;
  if (!last) return { text: noReadingYet(message.units) };
  if (intent.unit !== undefined) return inUnit(intent.unit, newest, message, store);
  if (intent.c === undefined && intent.stat === undefined && intent.place === undefined) return { text: await takeBack(newest, message, store) };
  const said = intent.place === undefined ? null : thermometerSaid(intent.place, message.greenhouse);
  const meant = newest.find((row) => said !== null && keyOf(row) === (said.name ?? said.place) && (intent.stat ?? row.statistic) === row.statistic) ?? last;
  const corrected: Reading = { c: intent.c ?? meant.tempC, stat: intent.stat ?? meant.statistic, place: intent.place ?? meant.thermometer ?? meant.place, at: localTime(message.zone).iso(meant.validAtS) };
  return replaceWith(meant, corrected, message, store);
}

/** The numbers of the newest message as they were typed, in the unit that was meant. */
async function inUnit(unit: DegreeUnit, rows: readonly StoredReading[], message: ReadingMessage, store: Records): Promise<Outgoing> {
  const written: Written[] = [];
  for (const row of rows.toReversed()) {
    const { value } = asTyped(row.tempC, { ...message, text: row.text });
    const reading: Reading = { c: celsius(value, unit), stat: row.statistic, place: row.thermometer ?? row.place, at: localTime(message.zone).iso(row.validAtS) };
    written.push(await replaced(row, reading, { ...message, text: `${row.text} (${message.text})` }, store));
  }
  return acknowledge(written, message, store, 'Corrected');
}

/** Puts another reading in place of one, judged like any other. */
export async function replaceWith(row: StoredReading, reading: Reading, message: ReadingMessage, store: Records): Promise<Outgoing> {
  return acknowledge([await replaced(row, reading, message, store)], message, store, row.judged === 'open' ? 'Noted' : 'Corrected');
}

async function replaced(row: StoredReading, reading: Reading, message: ReadingMessage, store: Records): Promise<Written> {
  // Its own night stays: a correction comes later than what it corrects, and the old number is no witness against the new one.
  const others: Records = { ...store, readings: async (greenhouseId, limit) => (await store.readings(greenhouseId, limit)).filter(({ id }) => id !== row.id) };
  const judged = await judge(reading, message, others);
  const next = await store.replaceReading(row.id, { ...rowOf(judged, message), validAtS: row.validAtS });
  return { judged: { ...judged, night: { ...judged.night, validAtS: row.validAtS } }, row: next };
}

/** Takes readings back; what is said of it. */
export async function takeBack(rows: readonly StoredReading[], message: ReadingMessage, store: Records): Promise<string> {
  for (const row of rows) await store.withdrawReading(row.id, message.receivedAtS);
  return READING_WORDS.takenBack(rows.map((row) => shortReading({ ...row, thermometer: { place: row.place, name: row.thermometer } }, message.units)));
}
