import { cropFamilies, cropRows, nightSpan } from '../engine/index.js';
import type { Outgoing } from './chat.js';
import { afterCondition, prepareCondition } from './features/condition/answer-condition.js';
import { answerCrop } from './features/crop/answer-crop.js';
import { logDeeds } from './features/done/log-deeds.js';
import { logMark } from './features/mark/log-mark.js';
import { allCropsMeant } from './features/outcome/all-crops.js';
import { cropWords, logOutcome } from './features/outcome/log-outcome.js';
import { answerSettings } from './features/settings/answer-settings.js';
import { prepareTolerance } from './features/tolerance/answer-tolerance.js';
import { askedAfterCall } from './features/tolerance/ask-tolerance.js';
import { keptWithMove, toleranceView } from './features/tolerance/moved-tolerance.js';
import { takeBackTold } from './features/undo/take-back.js';
import { advisoryMessage } from './features/evening/advisory-message.js';
import { cropName } from './features/evening/crop-name.js';
import { composeAdvisory, keepAdvisory, type EveningPorts, type EveningSubject } from './features/evening/issue-advisory.js';
import { toleranceNights } from './features/evening/tolerance-nights.js';
import type { WorkedOutEvening } from './features/evening/work-out-evening.js';
import { answerExport } from './features/export/answer-export.js';
import { answerCropAhead, answerOutlook, weekOf } from './features/outlook/answer-outlook.js';
import type { WorkOutWeek } from './features/outlook/work-out-week.js';
import { askBackAbout } from './features/reading/ask-word.js';
import { fixReading } from './features/reading/fix-reading.js';
import type { ReadingMessage } from './features/reading/judge.js';
import type { Pending } from './features/reading/pending.js';
import { logReadings } from './features/reading/log-reading.js';
import { thermometerNames } from './features/reading/thermometer.js';
import { answerHistory } from './features/record/answer-history.js';
import { answerRecord } from './features/record/answer-record.js';
import type { DrawNights } from './features/record/nights-picture.js';
import { answerSuppose } from './features/suppose/answer-suppose.js';
import { advisoryAskedAbout } from './features/why/asked-about.js';
import type { CropWord } from './language/crop-word.js';
import { meanings, type Intent, type Meaning } from './language/intent.js';
import { readMessage, type Heard } from './language/message.js';
import { tolerancesIn } from './language/tolerance.js';
import { understand } from './language/understand.js';
import { inOneMessage, undoOnce, withDeedsTold } from './several-answers.js';
import { NoWeatherError, type IncomingMessage, type Log, type Records } from './ports.js';
import { dateOf, dayTimes } from './schedule/day-times.js';
import { localTime } from './text/local-time.js';
import { shortWeek } from './text/short-week.js';
import { smallTalk } from './text/small-talk.js';
import { whyText } from './text/why-text.js';
import { askBack, HELP, NOTHING_TO_STOP, notBuiltYet, NO_WEATHER, SOMETHING_FAILED } from './text/reply-text.js';

/** Names of crops for the language room: families first, so that a plain word means the family. */
export const CROP_WORDS: readonly CropWord[] = [
  ...cropFamilies.map(({ name }) => ({ id: name, names: [name] })),
  ...cropRows.filter(({ id }) => !id.startsWith('class_')).map((row) => ({ id: row.id, names: [row.commonName, ...row.aliases] })),
];

export interface ConversationPorts extends EveningPorts {
  readonly store: Records;
  readonly log: Log;
  readonly workOutWeek: WorkOutWeek;
  /** Left out: words alone. */
  readonly drawNights?: DrawNights;
}

/** An answer that is ready but for what has to be written with it: whoever calls does both in one go, so that neither is without the other. */
export type ReadyAnswer = (store: Records) => Promise<Outgoing>;

const wordsAlone: DrawNights = () => Promise.resolve(null);
const replying = (message: Outgoing): ReadyAnswer => () => Promise.resolve(message);
const saying = (text: string): ReadyAnswer => replying({ text });

/** What concerns the chat alone, where there is one. */
const askingChat =
  (asked: 'start' | 'stop' | 'erase', otherwise: string): ReadyAnswer =>
  async (store) => ({ text: (await store.askChat?.(asked)) ?? otherwise });

/** One message in, one answer out, on a channel that has nothing to keep in step. */
export async function answerMessage(message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<Outgoing> {
  return (await prepareAnswer(message, subject, ports))(ports.store);
}

/** Understands a message and does all that takes time: weather and physics. What fails is answered too. */
export async function prepareAnswer(message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<ReadyAnswer> {
  const { grower } = subject.greenhouse;
  const heard = { text: message.text, atS: message.receivedAtS, zone: subject.zone, units: grower.units, crops: CROP_WORDS, thermometers: thermometerNames(subject.greenhouse) };
  return prepareIntent(withCareSaid(understand(heard), heard), message, subject, ports);
}

/** "Covered the beds. The kale is worth 60": what is said beside a deed or a reading of how readily to call is kept too. */
function withCareSaid(intent: Intent, heard: Heard): Intent {
  const hasOwn = meanings(intent).some(({ kind }) => kind === 'settings' || kind === 'unclear');
  return hasOwn || tolerancesIn(heard).length === 0 ? intent : { ...intent, also: [...(intent.also ?? []), { kind: 'settings' }] };
}

/** As prepareAnswer, for a meaning that is known already, such as a pressed button's. Each of several things is answered; one that fails takes none along. */
export async function prepareIntent(intent: Intent, message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<ReadyAnswer> {
  const ready: ReadyAnswer[] = [];
  const store = withDeedsTold(ports.store);
  let now = subject;
  for (const meaning of meanings(intent)) {
    ready.push(await prepareMeaning(meaning, message, now, { ...ports, store }));
    if (meaning.kind === 'condition') now = afterCondition(meaning, message.text, now);
    if (meaning.kind === 'did') await logDeeds(meaning, deedIn(meaning, message, subject), store);
  }
  return async (written) => {
    const answers: Outgoing[] = [];
    for (const answer of ready) answers.push(await answer(written));
    return inOneMessage(answers);
  };
}

async function prepareMeaning(intent: Meaning, message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<ReadyAnswer> {
  try {
    return await answerMeaning(intent, message, subject, ports);
  } catch (error) {
    if (error instanceof NoWeatherError) return saying(NO_WEATHER);
    ports.log.error('answer failed', { kind: intent.kind, error });
    return saying(SOMETHING_FAILED);
  }
}

async function answerMeaning(intent: Meaning, message: IncomingMessage, subject: EveningSubject, ports: ConversationPorts): Promise<ReadyAnswer> {
  const { units } = subject.greenhouse.grower;
  const time = localTime(subject.zone);
  const spoken = { greenhouseId: message.greenhouseId, greenhouse: subject.greenhouse, zone: subject.zone, receivedAtS: message.receivedAtS, text: message.text, units };
  const night = nightSpan(message.receivedAtS, subject.greenhouse.place);
  const tonight = time.date(night.sunsetS);
  // Early in the morning the night that is over may still be meant: what is ahead is what can be helped.
  const isTonight = (date: string): boolean => date <= tonight;
  switch (intent.kind) {
    case 'reading':
      return (store) => logReadings(intent, spoken, store);
    case 'fix':
      return (store) => corrected(intent, spoken, store);
    case 'why': {
      const words = { units, cropName };
      const asked = await advisoryAskedAbout({ greenhouseId: subject.greenhouseId, night: tonight, nowS: message.receivedAtS }, ports.store);
      if (asked !== null) return saying(whyText(asked, words));
      const evening = await composeAdvisory(subject, ports);
      return async (store) => {
        await keepAdvisory(subject.greenhouseId, evening, store);
        return { text: whyText(evening.advisory, words) };
      };
    }
    case 'advice':
      return advisoryAnswer(await composeAdvisory(subject, ports), subject);
    case 'outlook': {
      if (intent.night !== undefined && isTonight(intent.night) && intent.span === undefined) return advisoryAnswer(await composeAdvisory(subject, ports), subject);
      const week = await weekOf(subject, ports);
      return replying({ text: answerOutlook(week, { ...(intent.night === undefined ? {} : { night: intent.night }), ...(intent.span ? { nights: intent.span.nights } : {}) }, units), ...(intent.night === undefined ? { short: shortWeek(week, units) } : {}) });
    }
    case 'crop': {
      const crops = 'crops' in intent ? intent.crops : [intent.crop];
      if (!isTonight(intent.night)) return saying(answerCropAhead(await weekOf(subject, ports), { crops, night: intent.night }));
      const evening = await composeAdvisory(subject, ports);
      return async (store) => {
        await keepAdvisory(subject.greenhouseId, evening, store);
        return { text: answerCrop(crops, evening.advisory, { units, cropName, dayName: time.day(night.sunsetS) }) };
      };
    }
    case 'did':
      return async (store) => {
        const deed = deedIn(intent, message, subject);
        const kept = await told(spoken, (written) => moving(subject, written, () => logDeeds(intent, deed, written)))(store);
        const asked = await askedAfterCall(deed, store);
        return asked === null ? kept : inOneMessage([kept, asked]);
      };
    case 'outcome':
      return told(spoken, (store) => outcomeKept(intent, spoken, store));
    case 'mark':
      return told(spoken, (store) => logMark(intent, { ...spoken, counted: false }, store));
    case 'settings':
      return (
        prepareTolerance({ ...spoken, nights: (greenhouse, store) => toleranceNights(store, { ...subject, greenhouse }) }, CROP_WORDS) ??
        (async (store) => ({ text: await answerSettings({ ...spoken, eveningToday: eveningToday(subject, message.receivedAtS), tolerance: toleranceView(subject.greenhouse, await toleranceNights(store, subject)) }, store) }))
      );
    case 'chat':
      return saying(smallTalk(message.text));
    case 'suppose':
      return saying(await answerSuppose(intent, subject, { nowS: Math.floor(ports.clock.nowS()), compose: (supposing) => composeAdvisory(subject, ports, supposing) }));
    case 'condition':
      return prepareCondition(intent, message.text, subject, {
        nowS: Math.floor(ports.clock.nowS()),
        store: ports.store,
        cropName,
        compose: (changed, supposing) => composeAdvisory(changed, ports, supposing),
        keep: (kept, store) => keepAdvisory(subject.greenhouseId, kept, store),
      });
    case 'record':
      return replying(await answerRecord(subject, { store: ports.store, drawNights: ports.drawNights ?? wordsAlone }));
    case 'history':
      return replying(await answerHistory(subject, { store: ports.store, nowS: message.receivedAtS, drawNights: ports.drawNights ?? wordsAlone }));
    case 'export':
      return replying(await answerExport(subject, ports.store));
    case 'help':
      return saying(HELP);
    case 'start':
      return askingChat('start', HELP);
    case 'stop':
      return askingChat('stop', NOTHING_TO_STOP);
    case 'erase':
      return askingChat('erase', notBuiltYet('erase'));
    case 'unclear': {
      const all = intent.asks === 'which-crop' && intent.word === undefined ? allCropsMeant(subject.greenhouse, { text: message.text, atS: message.receivedAtS, zone: subject.zone, units, crops: CROP_WORDS }) : [];
      if (all.length > 0) return told(spoken, async (store) => undoOnce(await inTurn(all, (one) => outcomeKept(one, spoken, store))).join('\n'));
      return (store) => (intent.asks === 'which-state' ? askedForState(spoken, store) : askBackAbout(intent, spoken, store));
    }
    default:
      return saying(notBuiltYet(intent.kind));
  }
}

/** A deed with the words that tell it: another bed may be spoken of in the same message. */
const deedIn = (did: Extract<Meaning, { kind: 'did' }>, message: IncomingMessage, subject: EveningSubject): Parameters<typeof logDeeds>[1] => ({
  greenhouseId: message.greenhouseId,
  receivedAtS: message.receivedAtS,
  text: message.text,
  words: did.words ?? message.text,
  greenhouse: subject.greenhouse,
  zone: subject.zone,
  night: localTime(subject.zone).date(nightSpan(message.receivedAtS, subject.greenhouse.place).sunsetS),
});

const advisoryAnswer =
  (evening: WorkedOutEvening, subject: EveningSubject): ReadyAnswer =>
  async (store) => {
    await keepAdvisory(subject.greenhouseId, evening, store);
    return advisoryMessage(evening, subject.greenhouse.grower.units);
  };

/** Something that one word takes back for a while. */
const told =
  ({ receivedAtS, text: words }: Pick<IncomingMessage, 'receivedAtS' | 'text'>, keep: (store: Records) => Promise<string>): ReadyAnswer =>
  async (store) => {
    const text = await keep(store);
    await store.keepPending?.(JSON.stringify({ about: 'told', text: words, atS: receivedAtS } satisfies Pending));
    return { text };
  };

/** A word that may move how readily the grower is called out, and how it does. */
const moving = (subject: Pick<EveningSubject, 'greenhouseId' | 'greenhouse'>, store: Records, keep: () => Promise<string>): Promise<string> => keptWithMove(keep, { greenhouse: subject.greenhouse, nights: () => toleranceNights(store, subject) });

/** How a crop came through. */
export const outcomeKept = (outcome: Extract<Meaning, { kind: 'outcome' }>, spoken: ReadingMessage, store: Records): Promise<string> => moving(spoken, store, () => logOutcome(outcome, spoken, store));

/** Takes back the last that was told, whatever it was, or corrects the last reading. */
export async function corrected(intent: Extract<Meaning, { kind: 'fix' }>, spoken: ReadingMessage, store: Records, words: string | null = null): Promise<Outgoing> {
  const isWithdrawal = Object.keys(intent).length === 1;
  const back = isWithdrawal ? await takeBackTold({ ...spoken, told: words }, store, cropWords) : null;
  if (back === null) return fixReading(intent, spoken, store);
  return back.hasReadings ? inOneMessage([{ text: back.text }, await fixReading(intent, spoken, store)]) : { text: back.text };
}

/** When the evening message comes today, on the grower's clock; null where that is over. */
export function eveningToday({ greenhouse, zone }: Pick<EveningSubject, 'greenhouse' | 'zone'>, nowS: number): string | null {
  const { advisoryS } = dayTimes(greenhouse, zone, dateOf(nowS, zone));
  return advisoryS < nowS ? null : localTime(zone).clock(advisoryS);
}

/** How a crop came through was not clear: the state alone will do as an answer. */
async function askedForState(spoken: ReadingMessage, store: Records): Promise<Outgoing> {
  const { hits } = readMessage({ text: spoken.text, atS: spoken.receivedAtS, zone: spoken.zone, units: spoken.units, crops: CROP_WORDS });
  await store.keepPending?.(JSON.stringify({ about: 'outcome', crops: hits.map(({ words }) => words), atS: spoken.receivedAtS } satisfies Pending));
  return { text: askBack('which-state', undefined, undefined, spoken.units) };
}

/** One after the other: what is written keeps its order. */
async function inTurn<T, R>(all: readonly T[], work: (one: T) => Promise<R>): Promise<readonly R[]> {
  const done: R[] = [];
  for (const one of all) done.push(await work(one));
  return done;
}
