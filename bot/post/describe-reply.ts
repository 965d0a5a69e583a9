import { randomUUID } from 'node:crypto';
import tzLookup from 'tz-lookup';
import { checkGreenhouse, type GreenhouseFile } from '../../engine/index.js';
import type { Outgoing } from '../chat.js';
import { CROP_WORDS, eveningToday } from '../conversation.js';
import { asksForReview, changeGreenhouse, reviewGreenhouse } from '../features/describe/change.js';
import { describeStep, readState, start, writeState, type DescribeContext, type DescribeState, type DescribeStep, type Said } from '../features/describe/describe.js';
import { OF_A_TEMPERATURE } from '../features/describe/telling.js';
import { advisoryMessage } from '../features/evening/advisory-message.js';
import { composeAdvisory, keepAdvisory, type EveningSubject } from '../features/evening/issue-advisory.js';
import type { WorkedOutEvening, WorkOut } from '../features/evening/work-out-evening.js';
import { logMark } from '../features/mark/log-mark.js';
import { dialogueWith, type Pending } from '../features/reading/pending.js';
import { readAnswer } from '../features/reading/read-answer.js';
import { keepingTolerance } from '../features/tolerance/set-tolerance.js';
import type { InboundRow, Memory, StoredChat, WithinMemory } from '../journal.js';
import { meanings, type IntentKind, type Meaning } from '../language/intent.js';
import { tolerancesIn } from '../language/tolerance.js';
import { understand } from '../language/understand.js';
import { NoWeatherError, PlaceSearchError, type Clock, type Log, type PlaceFinder, type WeatherSource } from '../ports.js';
import { jobsOfDay } from '../schedule/day-jobs.js';
import { dateOf } from '../schedule/day-times.js';
import { COMMAND_WORDS } from '../text/command-words.js';
import { NO_ADVICE, NO_WEATHER } from '../text/reply-text.js';
import { eveningNote } from '../text/settings-text.js';
import { UNDO } from '../text/undo-text.js';
import { zoneOf } from '../time-zone.js';
import type { Describe, Handled } from './handled.js';
import { takeHouseBack, type HouseBefore } from './house-taken-back.js';

export interface DescribePorts {
  readonly memory: Memory;
  readonly weather: WeatherSource;
  readonly workOut: WorkOut;
  readonly places: PlaceFinder;
  readonly clock: Clock;
  readonly log: Log;
}

/** A town is looked up, and what was found may need no second look: more is a fault of ours. */
const MOST_LOOKS = 3;
const GREETING = /^(?:start|hi|hiya|hello|hey|howdy|help|good (?:morning|evening|day|afternoon)|g'day|hallo|moin|servus|bonjour|salut|hola|ciao|hej|hei)(?![\p{L}'])/iu;
const ONLY_GREETING = new RegExp(`^(?!start|help)${GREETING.source.slice(1)}[^\\p{L}\\d]*$`, 'iu');

/** How greenhouses come to be described on a chat service. */
export const describer = (ports: DescribePorts): Describe => ({
  next: async (row, chat) => {
    const context = contextOf(ports);
    const begun = readState(chat.dialogue) ?? (await knownState(chat, ports, context));
    const said = saidIn(row);
    if (chat.greenhouseId !== null && said?.text !== undefined && speaksOfCalls(said.text, context)) return null;
    const changed = begun?.changed ?? null;
    if (changed !== null && said?.text !== undefined && readAnswer(said.text).kind === 'drop') return takingBack(changed, chat, context.nowS);
    if (said === null || (said.text !== undefined && (begun === null ? GREETING : ONLY_GREETING).test(said.text.trim()))) return ending(start(begun, context), chat, ports);
    const heard = describeStep(begun, said, context);
    // Before a greenhouse is known nothing else can be answered: it is said what the question is good for.
    if (heard.look !== undefined && isNoTown(said, context)) return chat.greenhouseId === null ? ending(describeStep(begun, { text: 'help' }, context), chat, ports) : null;
    const step = await lookedUp(heard, ports, context);
    // Who is in the middle of it may still ask for tonight: that is answered elsewhere.
    if (!step.understood && chat.greenhouseId !== null && isOfAnotherThing(said, { atS: context.nowS, units: step.state.file.grower?.units ?? 'C' })) return null;
    return ending(step, chat, ports, changed === null ? null : { body: changed.before, sinceS: changed.sinceS, mark: null });
  },
  change: async (text, chat) => {
    if (chat.greenhouseId === null) return null;
    const stored = await ports.memory.greenhouse(chat.greenhouseId);
    if (!stored) return null;
    const context = contextOf(ports);
    const file = JSON.parse(stored.body) as GreenhouseFile;
    const step = asksForReview(text) ? reviewGreenhouse(file, context) : changeGreenhouse(file, text, context);
    if (step === null) return null;
    const mark = meanings(understand({ text, atS: context.nowS, zone: zoneIn(file), units: file.grower?.units ?? 'C', crops: CROP_WORDS })).find((one) => one.kind === 'mark');
    return ending(await lookedUp(step, ports, context), chat, ports, { body: stored.body, sinceS: context.nowS, mark: mark ?? null });
  },
});

/** A place or an old button that comes for a greenhouse that is known changes it, and begins no other. */
async function knownState({ greenhouseId }: StoredChat, { memory }: DescribePorts, context: DescribeContext): Promise<DescribeState | null> {
  const stored = greenhouseId === null ? null : await memory.greenhouse(greenhouseId);
  return stored === null ? null : reviewGreenhouse(JSON.parse(stored.body) as GreenhouseFile, context).state;
}

/** A number in words among others is no reading while something else is asked: "covers over the two beds". */
const DIGIT = /\d/u;

function isOfAnotherThing({ text }: Said, { atS, units }: { readonly atS: number; readonly units: 'C' | 'F' }): boolean {
  if (text === undefined) return true;
  const intent = understand({ text, atS, zone: 'UTC', units, crops: CROP_WORDS });
  if (intent.kind === 'unclear') return OF_A_TEMPERATURE.has(intent.asks) && DIGIT.test(text);
  return intent.kind !== 'chat' && (intent.kind !== 'reading' || DIGIT.test(text));
}

/** What names a command or asks for something is no name of a town to be searched for; "Frost, Ohio" is. */
const NO_TOWN: ReadonlySet<IntentKind> = new Set<IntentKind>(['advice', 'outlook', 'did', 'settings', 'start', 'stop', 'erase', 'export', 'why', 'next', 'record', 'history']);
const isNoTown = ({ text = '' }: Said, { nowS }: DescribeContext): boolean => COMMAND_WORDS.some(({ name }) => name === text.trim()) || (!text.includes(',') && NO_TOWN.has(understand({ text, atS: nowS, zone: 'UTC', units: 'C', crops: CROP_WORDS }).kind));

const contextOf = ({ clock }: DescribePorts): DescribeContext => ({ nowS: clock.nowS(), cropWords: CROP_WORDS, zoneAt: (latitude, longitude) => tzLookup(latitude, longitude) });

/** How readily to call is no part of the description: it is answered elsewhere, whatever is asked. */
function speaksOfCalls(text: string, { nowS }: DescribeContext): boolean {
  const heard = { text, atS: nowS, zone: 'UTC', units: 'C' as const, crops: CROP_WORDS };
  return understand(heard).kind === 'settings' && tolerancesIn(heard).length > 0;
}

/** Null for what says nothing about a greenhouse. */
function saidIn({ content }: InboundRow): Said | null {
  switch (content.kind) {
    case 'text':
    case 'edited':
      return { text: content.text };
    case 'press':
      return { button: content.button };
    case 'location':
      return { location: { latitude: content.latitude, longitude: content.longitude } };
    case 'photo':
      return content.caption === null ? null : { text: content.caption };
    default:
      return null;
  }
}

async function lookedUp(step: DescribeStep, { places, log }: DescribePorts, context: DescribeContext): Promise<DescribeStep> {
  let last = step;
  for (let looks = 0; last.look !== undefined && looks < MOST_LOOKS; looks += 1) {
    const { town } = last.look;
    try {
      last = describeStep(last.state, { places: { town, found: await places.placesCalled(town) } }, context);
    } catch (error) {
      if (!(error instanceof PlaceSearchError)) throw error;
      log.warn('place search failed', { cause: error.message });
      last = describeStep(last.state, { places: { town, failure: error.failure } }, context);
    }
  }
  return last;
}

/** Keeps the step: the file as a version, the rest of the dialogue, and with the first file its first evening and the days to come. */
async function ending(step: DescribeStep, chat: StoredChat, ports: DescribePorts, change: HouseChange | null = null): Promise<Handled> {
  const { clock } = ports;
  const nowS = clock.nowS();
  const writing = (changed: DescribeState['changed']): string | null => (step.isFinished ? null : writeState({ ...step.state, changed }));
  if (step.file === undefined) {
    return async (memory) => {
      await memory.updateChat(chat.id, { dialogue: writing(step.state.changed) });
      return [step.reply];
    };
  }
  const { file } = step;
  const subject = subjectFor(chat.greenhouseId ?? randomUUID(), file);
  const isNew = chat.greenhouseId === null;
  const evening = step.isFirst ? await firstEvening(subject, ports) : null;
  return async (memory) => {
    const before = chat.greenhouseId === null ? null : await memory.greenhouse(chat.greenhouseId);
    const kept = before === null ? file : keepingTolerance(file, JSON.parse(before.body) as GreenhouseFile);
    const saved = await memory.saveGreenhouse({ id: subject.greenhouseId, body: JSON.stringify(kept), savedAtS: nowS });
    const isChanged = change !== null && saved.body !== change.body;
    const house = isChanged ? { version: saved.version, before: change.body, sinceS: change.sinceS } : null;
    const dialogue = writing(house);
    await memory.updateChat(chat.id, { greenhouseId: subject.greenhouseId, dialogue: house !== null && dialogue === null ? withUndo(house, nowS) : dialogue });
    const about = [...earlierNote(before?.body ?? null, subject, nowS), ...(isChanged ? await wordsOfChange(change, { subject, nowS, canUndo: dialogue === null }, memory) : [])];
    if (isNew) for (const job of jobsOfDay(subject.greenhouseId, subject.greenhouse, subject.zone, dateOf(nowS, subject.zone))) if (job.dueAtS > nowS) await memory.addJob(job);
    if (evening !== null && 'advisory' in evening) await keepAdvisory(subject.greenhouseId, evening, memory);
    return [about.length === 0 ? step.reply : { ...step.reply, text: [step.reply.text, ...about].join('\n') }, ...(evening === null ? [] : ['advisory' in evening ? advisoryMessage(evening, subject.greenhouse.grower.units) : evening]), ...(step.after ? [step.after] : [])];
  };
}

/** The house as it was, and the lasting change that was told. */
interface HouseChange {
  readonly body: string;
  readonly sinceS: number;
  readonly mark: Extract<Meaning, { kind: 'mark' }> | null;
}

const withUndo = (house: HouseBefore, atS: number): string | null => dialogueWith(JSON.stringify({ about: 'told', text: '', house, atS } satisfies Pending), null);

/** Taken back while something about the change is still asked. */
const takingBack =
  (changed: HouseBefore, chat: StoredChat, atS: number): Handled =>
  async (memory) => {
    await memory.updateChat(chat.id, { dialogue: null });
    return chat.greenhouseId === null ? [] : [{ text: await takeHouseBack(chat.greenhouseId, changed, { store: memory, atS }) }];
  };

/** Where an evening time was just set: that the message comes before it, if it does. */
function earlierNote(before: string | null, subject: EveningSubject, nowS: number): readonly string[] {
  const evening = subject.greenhouse.grower.eveningAt ?? null;
  if (before === null || evening === null || evening === (JSON.parse(before) as GreenhouseFile).grower?.eveningAt) return [];
  const note = eveningNote({ evening, eveningToday: eveningToday(subject, nowS) });
  return note === null ? [] : [note];
}

/** What is said below a change: that it is kept with its day, how to take it back. */
async function wordsOfChange({ mark }: HouseChange, { subject, nowS, canUndo }: { readonly subject: EveningSubject; readonly nowS: number; readonly canUndo: boolean }, memory: WithinMemory): Promise<readonly string[]> {
  const { zone, greenhouseId } = subject;
  if (mark !== null) return [await logMark(mark, { greenhouseId, zone, receivedAtS: nowS, counted: true }, memory)];
  return canUndo ? [UNDO] : [];
}

const zoneIn = ({ place }: GreenhouseFile): string => place.timeZone ?? tzLookup(place.latitude, place.longitude);

function subjectFor(greenhouseId: string, file: GreenhouseFile): EveningSubject {
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error(`a described greenhouse fails its check: ${check.faults.map(({ field, message }) => `${field}: ${message}`).join('; ')}`);
  return { greenhouseId, greenhouse: check.greenhouse, zone: zoneOf(check.greenhouse) };
}

/** The first advisory comes right after the first three things; without weather the set-up goes on all the same. */
async function firstEvening(subject: EveningSubject, ports: DescribePorts): Promise<WorkedOutEvening | Outgoing> {
  try {
    return await composeAdvisory(subject, { ...ports, store: ports.memory });
  } catch (error) {
    if (error instanceof NoWeatherError) return { text: NO_WEATHER };
    ports.log.error('first advisory failed', { error });
    return { text: NO_ADVICE };
  }
}
