import type { Outgoing } from '../../chat.js';
import type { Intent } from '../../language/intent.js';
import type { NewReading, Records, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { asTypedWords, nightWords, readBack, readingQuestion, undoHint, type ReadBack } from '../../text/reading-text.js';
import { judge, type JudgedReading, type ReadingMessage } from './judge.js';
import { choicesOf, remember, type OpenReading } from './pending.js';

/** A reading as it is in the store, with what was found about it. */
export interface Written {
  readonly row: StoredReading;
  readonly judged: JudgedReading;
}

/** Writes each temperature of a message down, judged, before it is acknowledged; what is doubtful is asked about and counts for nothing until it is answered. */
export async function logReadings(intent: Extract<Intent, { kind: 'reading' }>, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const written: Written[] = [];
  for (const reading of intent.readings) {
    const judged = await judge(reading, message, store);
    written.push({ judged, row: await store.addReading(rowOf(judged, message)) });
  }
  return acknowledge(written, message, store);
}

/** What is written of a judged reading. */
export const rowOf = ({ night, thermometer, statistic, tempC, judged }: JudgedReading, message: ReadingMessage): NewReading => ({
  greenhouseId: message.greenhouseId,
  receivedAtS: message.receivedAtS,
  validAtS: night.validAtS,
  place: thermometer.place,
  statistic,
  tempC,
  text: message.text,
  judged,
  thermometer: thermometer.name,
});

/** Reads back what was kept, asks about the first that is open, and remembers what a short answer will mean. */
export async function acknowledge(written: readonly Written[], message: ReadingMessage, store: Records, lead: 'Noted' | 'Corrected' = 'Noted'): Promise<Outgoing> {
  const open = written.filter(({ row }) => row.judged === 'open');
  const kept = written.filter(({ row }) => row.judged !== 'open');
  const echo = kept.map(({ judged }) => readBack(readBackOf(judged, message), message.units, lead));
  const [asked] = open;
  if (asked === undefined) {
    await remember({ about: 'kept', ids: kept.map(({ row }) => row.id), atS: message.receivedAtS }, store);
    return { text: [...echo, undoHint(message.units)].join('\n') };
  }
  await remember({ about: 'choice', open: open.map(openOf), atS: message.receivedAtS }, store);
  const question = questionOf(asked, message);
  return { ...question, text: [...echo, question.text].join('\n') };
}

const openOf = ({ row, judged }: Written): OpenReading => ({ id: row.id, choices: choicesOf(judged) });

/** The question about an open reading, with a button for each answer. */
export function questionOf({ row, judged }: Written, message: ReadingMessage): Outgoing {
  const { verdict, typed } = judged;
  const { text, answers } = readingQuestion(
    { reading: readBackOf(judged, message), typed: asTypedWords(typed.value, typed.unit), reason: verdict.reason ?? 'unlikely', isSuggestionLikely: verdict.isSuggestionLikely, choices: choicesOf(judged) },
    message.units,
  );
  return { text, buttons: answers.map((label, at) => [{ id: choiceButton(row.id, at), label }]) };
}

const BUTTON = 'reading';
const choiceButton = (id: number, at: number): string => `${BUTTON}:${id}:${at + 1}`;

/** The reading and the answer that a button stands for; null for any other button. */
export function readChoiceButton(button: string): { readonly id: number; readonly at: number } | null {
  const found = /^reading:(\d+):(\d+)$/u.exec(button);
  return found === null ? null : { id: Number(found[1]), at: Number(found[2]) - 1 };
}

export function readBackOf({ tempC, statistic, judged, thermometer, night, forecast }: JudgedReading, { zone, receivedAtS }: ReadingMessage): ReadBack {
  const time = localTime(zone);
  return { tempC, statistic, judged, thermometer, night: nightWords(night.date, time.date(receivedAtS)), clock: time.clock(night.validAtS), forecastC: statistic === 'low' ? (forecast?.lowC ?? null) : null };
}
