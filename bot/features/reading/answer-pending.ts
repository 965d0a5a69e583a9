import type { Outgoing } from '../../chat.js';
import { meanings, type Meaning, type Reading } from '../../language/intent.js';
import { understand } from '../../language/understand.js';
import type { Records, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { asTypedWords, READING_WORDS } from '../../text/reading-text.js';
import { asTyped, SAME_C } from './as-typed.js';
import { withWord } from './ask-word.js';
import { replaceWith, takeBack } from './fix-reading.js';
import { judge, type ReadingMessage } from './judge.js';
import { acknowledge, logReadings, questionOf } from './log-reading.js';
import { nightOf } from './night-of.js';
import { remember, type Choice, type OpenReading, type Pending } from './pending.js';
import { readAnswer, type Answer } from './read-answer.js';
import { thermometerNames, thermometerSaid } from './thermometer.js';

type Ready = (store: Records) => Promise<Outgoing>;
const MOST_ROWS = 500;

/** The answer to what is pending about readings; null for a message that is about something else, which leaves it pending. */
export async function answerPending(pending: Pending, message: ReadingMessage, store: Records): Promise<Ready | null> {
  switch (pending.about) {
    case 'word': {
      const intent = withWord(pending, message.text, message);
      return intent === null ? null : (written) => logReadings(intent, { ...message, text: `${pending.text} (${message.text})` }, written);
    }
    case 'low':
      return answerLow(message);
    case 'kept':
      return answerKept(await standing(pending.ids, message, store), message);
    case 'choice':
      return answerChoice(pending.open, message, store);
    case 'told':
    case 'outcome':
    case 'tolerance':
      return null;
  }
}

const BARE = /^\W*\d+(?:[.,]\d+)?\W*[cf]?\W*$/iu;

/** A bare number after "what is the lowest": in the afternoon too. */
function answerLow(message: ReadingMessage): Ready | null {
  const { text, receivedAtS: atS, zone, units } = message;
  if (!BARE.test(text)) return null;
  const heard = { text, atS, zone, units, crops: [] };
  const [asked] = meanings(understand(heard));
  // Who was asked for it answers in the unit of the house; whether it can be is for the gate to say.
  const [only] = asked?.kind === 'unclear' && asked.asks === 'which-unit' ? meanings(understand({ ...heard, text: `${text}${units}` })) : [asked];
  return only?.kind === 'reading' ? (store) => logReadings({ ...only, readings: only.readings.map((reading) => ({ ...reading, stat: 'low' })) }, message, store) : null;
}

/** The rows of these ids that still stand, in their order. */
async function standing(ids: readonly number[], { greenhouseId }: ReadingMessage, store: Records): Promise<readonly StoredReading[]> {
  const rows = await store.readings(greenhouseId, MOST_ROWS);
  return ids.flatMap((id) => rows.find((row) => row.id === id) ?? []);
}

/** How a correction begins. */
const REGRETS = /^\W*(?:no|nope|sorry|oops|wait|actually|wrong)\b.*\d/iu;

/** Just read back: a word takes it back, or says how it was read. */
function answerKept(rows: readonly StoredReading[], message: ReadingMessage): Ready | null {
  const { kind } = readAnswer(message.text);
  if (rows.length === 0) return null;
  if (kind === 'no' || kind === 'drop')
    return async (store) => {
      await remember(null, store);
      return { text: await takeBack(rows, message, store) };
    };
  if (REGRETS.test(message.text)) {
    const meant = rows.flatMap((row) => {
      const value = valueIn(message, row);
      return value === null ? [] : [{ row, value }];
    });
    const [only] = meant;
    return meant.length === 1 && only !== undefined ? (store) => replaceWith(only.row, { ...only.value, at: localTime(message.zone).iso(only.row.validAtS) }, message, store) : null;
  }
  const judged = kind === 'sunlit' ? 'sunlit' : kind === 'not-reset' ? 'not-reset' : kind === 'reset' && rows.some((row) => row.judged === 'not-reset') ? 'good' : null;
  const [row] = rows.filter(({ judged: was }) => was !== judged && (kind !== 'reset' || was === 'not-reset'));
  return judged === null || row === undefined ? null : (store) => settle(row, { judged, tempC: row.tempC }, { message, left: [] }, store);
}

async function answerChoice(open: readonly OpenReading[], message: ReadingMessage, store: Records): Promise<Ready | null> {
  const rows = (await standing(open.map(({ id }) => id), message, store)).filter(({ judged }) => judged === 'open');
  const [row] = rows;
  const asked = open.find(({ id }) => id === row?.id);
  if (row === undefined || asked === undefined) return null;
  const left = rows.slice(1).flatMap(({ id }) => open.find((one) => one.id === id) ?? []);
  const typed = typedWords(row, message);
  const chosen = chosenBy(readAnswer(message.text), asked.choices, row);
  if (chosen === 'drop')
    return async (written) => {
      await written.withdrawReading(row.id, message.receivedAtS);
      await remember(null, written);
      return goOn(left, { text: READING_WORDS.dropped(typed) }, message, written);
    };
  if (chosen === 'unsure') return (written) => goOn(left, { text: READING_WORDS.staysOpen(typed) }, message, written);
  if (chosen === 'no') return () => Promise.resolve({ text: READING_WORDS.askAgain(typed) });
  if (chosen !== null) return (written) => settle(row, chosen, { message, left }, written);
  const value = valueIn(message, row);
  if (value === null) return null;
  const same = asked.choices.find((choice) => Math.abs(choice.tempC - value.c) < SAME_C || isMeant(choice, value.c, message));
  if (same !== undefined) return (written) => settle(row, same, { message, left }, written);
  if (Math.abs(value.c - row.tempC) < SAME_C) return (written) => settle(row, { judged: 'good', tempC: row.tempC }, { message, left }, written);
  return (written) => replaceWith(row, { ...value, at: localTime(message.zone).iso(row.validAtS) }, message, written);
}

/** The number of a choice said without its unit: "-5" to "-5C" asked of one who uses Fahrenheit. */
function isMeant(choice: Choice, tempC: number, message: ReadingMessage): boolean {
  const said = asTyped(tempC, message);
  return !said.unitWritten && choice.meant?.value === said.value;
}

function chosenBy(answer: Answer, choices: readonly Choice[], row: StoredReading): Choice | 'drop' | 'unsure' | 'no' | null {
  const asTypedChoice: Choice = choices.find(({ meant, judged }) => meant === undefined && judged === 'good') ?? { judged: 'good', tempC: row.tempC };
  switch (answer.kind) {
    case 'yes':
      return choices[0] ?? 'no';
    case 'number':
      return choices[answer.at] ?? null;
    case 'as-typed':
      return asTypedChoice;
    case 'sunlit':
    case 'not-reset':
      return { judged: answer.kind, tempC: row.tempC };
    case 'reset':
      return asTypedChoice;
    case 'drop':
    case 'unsure':
    case 'no':
      return answer.kind;
    case 'other':
      return null;
  }
}

/** One temperature for the reading that is asked about; null where the message tells of another place, or of more. */
function valueIn(message: ReadingMessage, row: StoredReading): Reading | null {
  const { text, receivedAtS, zone, units, greenhouse } = message;
  const heard = (words: string): readonly Meaning[] => meanings(understand({ text: words.replace(/^\W*(?:yes|yep|yeah|no|nope|sorry|oops)\b[\s,;:.-]*(?=.*\d)/iu, (said) => (/-\s*$/u.test(said) ? '-' : '')), atS: receivedAtS, zone, units, crops: [], thermometers: thermometerNames(greenhouse) }));
  const first = heard(text);
  // Whoever is asked about a number answers in the unit of the house; whether it can be is for the gate to say.
  const understood = first[0]?.kind === 'unclear' && first[0].asks === 'which-unit' ? heard(text.replace(/\d[^a-z\d]*$/iu, (end) => `${end[0]}${units}`)) : first;
  const [only] = understood;
  if (understood.length !== 1 || only === undefined) return null;
  const said: Reading | null = only.kind === 'reading' && only.readings.length === 1 ? only.readings[0]! : only.kind === 'fix' && only.c !== undefined ? { c: only.c, stat: only.stat ?? row.statistic, ...(only.place === undefined ? {} : { place: only.place }) } : null;
  if (said === null) return null;
  const place = said.place === undefined ? null : thermometerSaid(said.place, greenhouse);
  if (place !== null && (place.name ?? place.place) !== (row.thermometer ?? row.place)) return null;
  // A number of the next morning is of the next night, and no answer to the last.
  const nightAt = (at: string | undefined): string => nightOf({ stat: row.statistic, ...(at === undefined ? {} : { at }) }, { receivedAtS, zone, place: greenhouse.place }).date;
  if (nightAt(said.at) !== nightAt(localTime(zone).iso(row.validAtS))) return null;
  return { ...said, stat: row.statistic, place: row.thermometer ?? row.place };
}

interface Settling {
  readonly message: ReadingMessage;
  /** Readings of the same message that are still to be asked about. */
  readonly left: readonly OpenReading[];
}

/** The grower has said it: that stands, whatever was expected. */
async function settle(row: StoredReading, choice: Choice, { message, left }: Settling, store: Records): Promise<Outgoing> {
  const judged = await judgedAgain({ ...row, tempC: choice.tempC }, message, store);
  const settled = { ...judged, judged: choice.judged };
  const replaced = await store.replaceReading(row.id, { ...row, receivedAtS: message.receivedAtS, tempC: choice.tempC, judged: choice.judged, text: `${row.text} (${message.text})` });
  return goOn(left, await acknowledge([{ row: replaced, judged: settled }], message, store), message, store);
}

async function judgedAgain(row: StoredReading, message: ReadingMessage, store: Records): Promise<Awaited<ReturnType<typeof judge>>> {
  const judged = await judge({ c: row.tempC, stat: row.statistic, place: row.thermometer ?? row.place, at: localTime(message.zone).iso(row.validAtS) }, { ...message, text: row.text }, store);
  return { ...judged, night: { ...judged.night, validAtS: row.validAtS } };
}

/** The next reading of the same message that is asked about, below what was said of the last. */
async function goOn(left: readonly OpenReading[], said: Outgoing, message: ReadingMessage, store: Records): Promise<Outgoing> {
  const [next] = left;
  const [row] = next === undefined ? [] : await standing([next.id], message, store);
  if (row === undefined) return said;
  await remember({ about: 'choice', open: left, atS: message.receivedAtS }, store);
  const question = questionOf({ row, judged: await judgedAgain(row, message, store) }, message);
  return { ...question, text: `${said.text}\n\n${question.text}` };
}

function typedWords(row: StoredReading, message: ReadingMessage): string {
  const typed = asTyped(row.tempC, { ...message, text: row.text });
  return asTypedWords(typed.value, typed.unit);
}
