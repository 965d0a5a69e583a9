import type { Greenhouse, GreenhouseFile, ToleranceNights } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { CropWord } from '../../language/crop-word.js';
import { readSignal } from '../../language/house/signals.js';
import { readMessage } from '../../language/message.js';
import { tolerancesIn, toleranceAnswer, worthsIn, type TolerancePart, type ToleranceSaid } from '../../language/tolerance.js';
import type { Records } from '../../ports.js';
import { TOLERANCE_ASKS, toleranceNoted } from '../../text/tolerance-text.js';
import { UNDO } from '../../text/undo-text.js';
import { ask, askedMessage, nextAsked, remembered, type HouseAsked, type ToleranceAsks, type ToleranceQuestion } from './ask-tolerance.js';
import { checked, withTolerance, type ToleranceMeant } from './set-tolerance.js';

export interface ToleranceMessage {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  readonly receivedAtS: number;
  readonly text: string;
  readonly units: 'C' | 'F';
  /** What the nights of this house have taught. */
  readonly nights: (greenhouse: Greenhouse, store: Records) => Promise<ToleranceNights>;
}

type Ready = (store: Records) => Promise<Outgoing>;

/** What was said of it in a message of its own; null where nothing was. */
export function prepareTolerance(message: ToleranceMessage, crops: readonly CropWord[]): Ready | null {
  const parts = tolerancesIn(heardOf(message, crops));
  if (parts.length === 0) return null;
  if (parts.some(({ said }) => said.about === 'ask')) return (store) => ask(message, store);
  return async (store) => {
    const { notes, house } = await kept(parts, message, store, {});
    // In the middle of a description "no" answers its question, and takes nothing back.
    const canUndo = house !== null && store.isBusy !== true;
    if (canUndo) await store.keepPending?.(JSON.stringify({ about: 'told', text: '', house, atS: message.receivedAtS }));
    return { text: [house === null ? notes.join(' ') : toleranceNoted(notes), ...(canUndo ? [UNDO] : [])].join(' ') };
  };
}

const heardOf = ({ text, receivedAtS, zone, units }: ToleranceMessage, crops: readonly CropWord[]): Parameters<typeof readMessage>[0] => ({ text, atS: receivedAtS, zone, units, crops });

type HouseBefore = NonNullable<ToleranceQuestion['house']>;

/** Written with the greenhouse; what it was before, where it changed. */
async function kept(parts: readonly TolerancePart[], message: ToleranceMessage, store: Records, meant: Pick<ToleranceMeant, 'bed'>): Promise<{ readonly notes: readonly string[]; readonly house: HouseBefore | null }> {
  const { greenhouseId, receivedAtS } = message;
  const { body: before, nights } = await houseNow(message, store);
  const { file, notes } = withTolerance(JSON.parse(before) as GreenhouseFile, parts, { nowS: receivedAtS, nights, ...meant });
  const body = JSON.stringify(file);
  if (body === before) return { notes, house: null };
  const { version } = await store.saveGreenhouse({ id: greenhouseId, body, savedAtS: receivedAtS });
  return { notes, house: { version, before, sinceS: receivedAtS } };
}

type HouseNow = Required<HouseAsked> & { readonly body: string };

async function houseNow({ greenhouseId, greenhouse, nights }: Pick<ToleranceMessage, 'greenhouseId' | 'greenhouse' | 'nights'>, store: Records): Promise<HouseNow> {
  const body = (await store.greenhouse(greenhouseId))?.body ?? JSON.stringify(greenhouse);
  const now = checked(JSON.parse(body) as GreenhouseFile);
  return { body, greenhouse: now, nights: await nights(now, store) };
}

/** The carrier's own word is left to who acts on it. */
const STOP = /^\W*(?:stop|pause|quiet|mute)\b/iu;
const PASSES: ReadonlySet<string> = new Set(['skip', 'unknown']);
const ENDS: ReadonlySet<string> = new Set(['later', 'no', 'done']);
const ABOUT: Readonly<Record<ToleranceAsks, readonly ToleranceSaid['about'][]>> = { worth: ['worth'], weekly: ['worth'], trip: ['trip', 'minutes', 'hour'], trips: ['trips', 'careful'] };

/** The answer to a question, and the next one; null for a message that is about something else. */
export function answerTolerance(question: ToleranceQuestion, message: ToleranceMessage, crops: readonly CropWord[]): Ready | null {
  const { asks } = question;
  const { text } = message;
  if (STOP.test(text)) return null;
  const signal = readSignal(text)?.kind;
  if (signal !== undefined && PASSES.has(signal)) return goOn([], question, message);
  if (signal !== undefined && ENDS.has(signal)) return async (store) => {
    await store.keepPending?.(null);
    return { text: TOLERANCE_ASKS.later };
  };
  const heard = heardOf(message, crops);
  const answer = toleranceAnswer(readMessage(heard), asks);
  if (answer === null) {
    const plainly = tolerancesIn(heard);
    const parts = plainly.length === 0 && asks === 'worth' ? worthsIn(heard) : plainly;
    return parts.length > 0 && parts.every(({ said }) => ABOUT[asks].includes(said.about)) ? goOn(parts, question, message) : null;
  }
  if ('weeks' in answer && answer.weekly === undefined) return asksWeekly({ ...question, asks: 'weekly', weeks: answer.weeks }, message);
  return goOn(saidBy(answer, question).map((said) => ({ said, text })), question, message);
}

const asksWeekly =
  (question: ToleranceQuestion, { greenhouse, receivedAtS }: ToleranceMessage): Ready =>
  async (store) => {
    await store.keepPending?.(remembered(question, receivedAtS));
    return askedMessage(question, { greenhouse }, []);
  };

/** Asks again what was answered, after that was taken back. */
export async function askedAgain({ again }: ToleranceQuestion, message: ToleranceMessage, takenBack: string, store: Records): Promise<Outgoing> {
  if (again === undefined) return { text: takenBack };
  await store.keepPending?.(remembered(again, message.receivedAtS));
  return askedMessage(again, await houseNow(message, store), [takenBack]);
}

/** An answer in the terms of what can be said at any time. */
function saidBy(answer: NonNullable<ReturnType<typeof toleranceAnswer>>, { asks, weeks }: ToleranceQuestion): readonly ToleranceSaid[] {
  if ('trips' in answer) return [{ about: 'trips', trips: answer.trips }];
  if ('careful' in answer) return [{ about: 'careful', careful: answer.careful }];
  if ('worth' in answer) return [{ about: 'worth', worth: asks === 'weekly' ? answer.worth * (weeks ?? 1) : answer.worth, crops: [] }];
  if ('weeks' in answer) return [{ about: 'worth', worth: answer.weeks * (answer.weekly ?? 0), crops: [] }];
  return [...(answer.trip === undefined ? [] : [{ about: 'trip', trip: answer.trip } as const]), ...(answer.minutes === undefined ? [] : [{ about: 'minutes', minutes: answer.minutes, crops: [] } as const])];
}

/** Keeps what was said, and asks the next or is done. */
const goOn =
  (parts: readonly TolerancePart[], { house: _house, again: _again, ...question }: ToleranceQuestion, message: ToleranceMessage): Ready =>
  async (store) => {
    const { bed } = question;
    const next = nextAsked(question);
    const { notes, house } = await kept(parts, message, store, bed === undefined ? {} : { bed });
    const noted = notes.length === 0 ? [] : [house === null ? notes.join(' ') : `${toleranceNoted(notes)} ${UNDO}`];
    if (next === null) {
      await store.keepPending?.(house === null ? null : JSON.stringify({ about: 'told', text: '', house, atS: message.receivedAtS }));
      return { text: [...noted, TOLERANCE_ASKS.done].join('\n') };
    }
    await store.keepPending?.(remembered({ ...next, ...(house === null ? {} : { house, again: question }) }, message.receivedAtS));
    return askedMessage(next, await houseNow(message, store), noted);
  };
