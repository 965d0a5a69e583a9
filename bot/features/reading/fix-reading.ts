import type { Outgoing } from '../../chat.js';
import type { Intent, Reading } from '../../language/intent.js';
import type { Records, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { noReadingYet } from '../../text/reply-text.js';
import { READING_WORDS, shortReading } from '../../text/reading-text.js';
import { judge, type ReadingMessage } from './judge.js';
import { acknowledge, rowOf } from './log-reading.js';
import { keyOf, thermometerSaid } from './thermometer.js';

/** Enough for all that one message can hold. */
const MOST_OF_ONE_MESSAGE = 20;

/** Corrects the reading that is meant, or takes back all of the newest message; the old rows stay, marked. */
export async function fixReading(intent: Extract<Intent, { kind: 'fix' }>, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const rows = await store.readings(message.greenhouseId, MOST_OF_ONE_MESSAGE);
  const newest = rows.filter((row) => row.receivedAtS === rows[0]?.receivedAtS && row.text === rows[0].text);
  const [last] = newest;
  if (!last) return { text: noReadingYet };
  if (intent.c === undefined && intent.stat === undefined && intent.place === undefined) return { text: await takeBack(newest, message, store) };
  const said = intent.place === undefined ? null : thermometerSaid(intent.place, message.greenhouse);
  const meant = newest.find((row) => said !== null && keyOf(row) === (said.name ?? said.place) && (intent.stat ?? row.statistic) === row.statistic) ?? last;
  const corrected: Reading = { c: intent.c ?? meant.tempC, stat: intent.stat ?? meant.statistic, place: intent.place ?? meant.thermometer ?? meant.place, at: localTime(message.zone).iso(meant.validAtS) };
  return replaceWith(meant, corrected, message, store);
}

/** Puts another reading in place of one, judged like any other. */
export async function replaceWith(row: StoredReading, reading: Reading, message: ReadingMessage, store: Records): Promise<Outgoing> {
  // Its own night stays: a correction comes later than what it corrects, and the old number is no witness against the new one.
  const others: Records = { ...store, readings: async (greenhouseId, limit) => (await store.readings(greenhouseId, limit)).filter(({ id }) => id !== row.id) };
  const judged = await judge(reading, message, others);
  const replaced = await store.replaceReading(row.id, { ...rowOf(judged, message), validAtS: row.validAtS });
  return acknowledge([{ judged: { ...judged, night: { ...judged.night, validAtS: row.validAtS } }, row: replaced }], message, store, row.judged === 'open' ? 'Noted' : 'Corrected');
}

/** Takes readings back; what is said of it. */
export async function takeBack(rows: readonly StoredReading[], message: ReadingMessage, store: Records): Promise<string> {
  for (const row of rows) await store.withdrawReading(row.id, message.receivedAtS);
  return READING_WORDS.takenBack(rows.map((row) => shortReading({ ...row, thermometer: { place: row.place, name: row.thermometer } }, message.units)));
}
