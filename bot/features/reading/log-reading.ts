import type { Intent, Reading } from '../../language/intent.js';
import type { Records, StoredReading } from '../../ports.js';
import { noReadingYet, readingFixed, readingKept, readingWithdrawn } from '../../text/reply-text.js';
import type { TempUnits } from '../../text/temperature.js';

interface Message {
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly text: string;
  readonly units: TempUnits;
}

const instantOf = (reading: { at?: string }, receivedAtS: number): number => (reading.at === undefined ? receivedAtS : Math.floor(Date.parse(reading.at) / 1000));

/** Writes each reading down before it is acknowledged. */
export async function logReadings(intent: Extract<Intent, { kind: 'reading' }>, message: Message, store: Records): Promise<string> {
  for (const reading of intent.readings) {
    await store.addReading({
      greenhouseId: message.greenhouseId,
      receivedAtS: message.receivedAtS,
      validAtS: instantOf(reading, message.receivedAtS),
      place: reading.place ?? 'inside',
      statistic: reading.stat,
      tempC: reading.c,
      text: message.text,
    });
  }
  return readingKept(intent.readings, message.units);
}

/** Corrects or takes back the newest reading; the old row stays, marked. */
export async function fixReading(intent: Extract<Intent, { kind: 'fix' }>, message: Message, store: Records): Promise<string> {
  const [last] = await store.readings(message.greenhouseId, 1);
  if (!last) return noReadingYet;
  if (intent.c === undefined && intent.stat === undefined && intent.place === undefined) {
    await store.withdrawReading(last.id, message.receivedAtS);
    return readingWithdrawn;
  }
  const replaced = await store.replaceReading(last.id, correction(last, intent, message));
  return readingFixed(asReading(replaced), message.units);
}

function correction(last: StoredReading, intent: Extract<Intent, { kind: 'fix' }>, message: Message): Omit<StoredReading, 'id' | 'replacedBy' | 'withdrawnAtS'> {
  return {
    greenhouseId: last.greenhouseId,
    receivedAtS: message.receivedAtS,
    validAtS: last.validAtS,
    place: intent.place ?? last.place,
    statistic: intent.stat ?? last.statistic,
    tempC: intent.c ?? last.tempC,
    text: message.text,
  };
}

const asReading = (row: StoredReading): Reading => ({ c: row.tempC, stat: row.statistic, place: row.place });
