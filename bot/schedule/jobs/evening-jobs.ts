import type { Outgoing } from '../../chat.js';
import type { Advisory } from '../../features/evening/advisory.js';
import { advisoryMessage } from '../../features/evening/advisory-message.js';
import { cropName } from '../../features/evening/crop-name.js';
import { composeAdvisory, keepAdvisory } from '../../features/evening/issue-advisory.js';
import type { WorkedOutEvening } from '../../features/evening/work-out-evening.js';
import { wasRisky } from '../../features/morning/morning-message.js';
import { NoWeatherError } from '../../ports.js';
import { actionSentence } from '../../text/action-text.js';
import { chanceClass } from '../../text/chance.js';
import { toHtml } from '../../text/html.js';
import { reminderText } from '../../text/morning-text.js';
import { NO_ADVICE, NO_WEATHER } from '../../text/reply-text.js';
import { jobKey, type JobBody } from '../day-jobs.js';
import { audienceOf, isQuietNow, NOTHING_TO_WRITE, tell, together, type JobContext, type JobEnd } from './job-context.js';

/** "How did the crops come through" comes this long after the evening. */
const OUTCOME_AFTER_S = 2 * 86_400;
const OUTCOME_USEFUL_S = 86_400;
const TRIES_BEFORE_A_WORD = 3;

/** The nightly advisory: once a night for each greenhouse, whatever happened in between. */
export async function advisoryJob(context: JobContext): Promise<JobEnd> {
  const { subject, body, nowS } = context;
  const audience = await audienceOf(context);
  const send = (message: Outgoing): JobEnd => tell(audience, { key: jobKey('advisory', subject.greenhouseId, body.date), message, notBeforeS: nowS, uselessAfterS: body.uselessAfterS });
  try {
    const evening = await composeAdvisory(subject, { ...context, store: context.memory });
    const keep: JobEnd = (memory) => keepAdvisory(subject.greenhouseId, evening, memory);
    // After a crash in the evening the advisory is late, not missing; in the quiet hours it comes only while it can still help.
    if (isQuietNow(context) && evening.advisory.plan.actions.length === 0) return together(keep, askLater(evening.advisory, context));
    return together(keep, send(advisoryMessage(evening, subject.greenhouse.grower.units)), askLater(evening.advisory, context));
  } catch (error) {
    // What fails again and again must not leave the grower without a word before dark.
    if (!(error instanceof NoWeatherError) && context.job.attempts < TRIES_BEFORE_A_WORD) throw error;
    context.log.error('advisory given up', { error });
    const text = error instanceof NoWeatherError ? NO_WEATHER : NO_ADVICE;
    return send({ text, html: toHtml(text) });
  }
}

const askLater =
  (advisory: Advisory, { subject, body, nowS }: JobContext): JobEnd =>
  async (memory) => {
    if (!wasRisky(advisory)) return;
    const dueAtS = nowS + OUTCOME_AFTER_S;
    await memory.addJob({ key: jobKey('outcome', subject.greenhouseId, body.date), kind: 'outcome', greenhouseId: subject.greenhouseId, dueAtS, body: JSON.stringify({ date: body.date, uselessAfterS: dueAtS + OUTCOME_USEFUL_S } satisfies JobBody) });
  };

/** The advisory that went out for the evening; null when none did. */
export async function issuedFor({ memory, subject, body }: Pick<JobContext, 'memory' | 'subject' | 'body'>): Promise<Advisory | null> {
  const last = await memory.lastAdvisory(subject.greenhouseId);
  return last?.night === body.date ? (JSON.parse(last.body) as Advisory) : null;
}

/** Who hears of the work at the last moment is not reminded of it in the same breath (project estimate). */
const REMIND_NOT_WITHIN_S = 10 * 60;

/** One reminder, when the work is still to do and nobody has said a word since. */
export async function reminderJob(context: JobContext): Promise<JobEnd> {
  const { memory, subject, body, nowS } = context;
  const advisory = await issuedFor(context);
  if (!advisory || advisory.plan.actions.length === 0 || isQuietNow(context)) return NOTHING_TO_WRITE;
  const issuedAtS = Date.parse(advisory.issuedAt) / 1000;
  if (nowS - issuedAtS < REMIND_NOT_WITHIN_S) return NOTHING_TO_WRITE;
  // A word about last night is none about this one.
  if ((await memory.actions(subject.greenhouseId, issuedAtS)).some(({ night }) => night === body.date)) return NOTHING_TO_WRITE;
  const work = advisory.plan.actions.map((action) => `- ${actionSentence(action, { units: subject.greenhouse.grower.units, cropName })}`).join('\n');
  const text = reminderText(work);
  return tell(await audienceOf(context), { key: jobKey('reminder', subject.greenhouseId, body.date), message: { text, html: toHtml(text) }, notBeforeS: nowS, uselessAfterS: body.uselessAfterS });
}

const CLASSES = ['safe', 'very unlikely', 'unlikely', 'possible', 'even odds', 'likely', 'almost sure'] as const;
const MUCH_BY_CLASSES = 2;

/** A newer forecast: a word only when the decision changes, or a crop's chance by two classes while something can still be done. */
export async function recheckJob(context: JobContext): Promise<JobEnd> {
  const { subject, body, nowS } = context;
  const before = await issuedFor(context);
  if (!before) return NOTHING_TO_WRITE;
  try {
    const evening = await composeAdvisory(subject, { ...context, store: context.memory });
    if (!isWorthAnotherWord(before, evening)) return NOTHING_TO_WRITE;
    const keep: JobEnd = (memory) => keepAdvisory(subject.greenhouseId, evening, memory);
    return together(keep, tell(await audienceOf(context), { key: jobKey('recheck', subject.greenhouseId, body.date), message: advisoryMessage(evening, subject.greenhouse.grower.units), notBeforeS: nowS, uselessAfterS: body.uselessAfterS }));
  } catch (error) {
    if (error instanceof NoWeatherError) return NOTHING_TO_WRITE;
    throw error;
  }
}

function isWorthAnotherWord(before: Advisory, { advisory, choice }: WorkedOutEvening): boolean {
  if (choice === 'switched' || choice === 'stand-down') return true;
  const canStillAct = advisory.plan.actions.length > 0;
  if (before.plan.actions.length === 0) return canStillAct;
  const classOf = (probability: number): number => CLASSES.indexOf(chanceClass(probability));
  return canStillAct && advisory.crops.some((crop) => {
    const was = before.crops.find((other) => other.crop === crop.crop && other.bed === crop.bed);
    return was !== undefined && classOf(crop.damageProbability) - classOf(was.damageProbability) >= MUCH_BY_CLASSES;
  });
}
