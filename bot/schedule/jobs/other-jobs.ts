import { DateTime } from 'luxon';
import type { Advisory } from '../../features/evening/advisory.js';
import { morningMessage } from '../../features/morning/morning-message.js';
import { dialogueAsked } from '../../features/reading/pending.js';
import { weekOf } from '../../features/outlook/answer-outlook.js';
import type { StoredChat } from '../../journal.js';
import { NoWeatherError } from '../../ports.js';
import { toHtml } from '../../text/html.js';
import { localTime } from '../../text/local-time.js';
import { outcomeQuestion } from '../../text/morning-text.js';
import { headsUpText } from '../../text/outlook-text.js';
import { jobKey, jobsOfDay } from '../day-jobs.js';
import { dateOf } from '../day-times.js';
import { issuedFor } from './evening-jobs.js';
import { audienceOf, isQuietNow, NOTHING_TO_WRITE, tell, together, type JobContext, type JobEnd } from './job-context.js';

/** Plans the next local day; after a long sleep it goes on with the day that it is now. */
export function dayJob({ subject, body, nowS }: JobContext): Promise<JobEnd> {
  const next = DateTime.fromISO(body.date, { zone: subject.zone }).plus({ days: 1 }).toISODate()!;
  const today = dateOf(nowS, subject.zone);
  const jobs = jobsOfDay(subject.greenhouseId, subject.greenhouse, subject.zone, next > today ? next : today);
  return Promise.resolve(async (memory) => {
    for (const job of jobs) await memory.addJob(job);
  });
}

/** A cold spell within these nights, or a severe night tomorrow, is told a day ahead. */
const SPELL_WITHIN_NIGHTS = 3;

/** Heads-up before a cold spell or a severe night: each told once. */
export async function weekJob(context: JobContext): Promise<JobEnd> {
  const { subject, body, nowS, memory } = context;
  try {
    const week = await weekOf(subject, { ...context, store: memory });
    const units = subject.greenhouse.grower.units;
    const audience = await audienceOf(context);
    const say = (key: string, text: string): JobEnd => tell(audience, { key, message: { text, html: toHtml(text) }, notBeforeS: nowS, uselessAfterS: body.uselessAfterS });
    const soon = week.nights.slice(0, SPELL_WITHIN_NIGHTS).map(({ night }) => night);
    if (week.spell && soon.includes(week.spell.from)) return say(`spell:${subject.greenhouseId}:${week.spell.from}`, headsUpText.spell(week.spell, units));
    const tomorrow = week.nights[1];
    const severe = tomorrow?.crops.filter(({ usual, covered }) => (covered ?? usual).verdict === 'at-risk' || (covered ?? usual).verdict === 'likely-lost') ?? [];
    return tomorrow && severe.length > 0 ? say(`severe:${subject.greenhouseId}:${tomorrow.night}`, headsUpText.night(tomorrow, units)) : NOTHING_TO_WRITE;
  } catch (error) {
    if (error instanceof NoWeatherError) return NOTHING_TO_WRITE;
    throw error;
  }
}

const A_WEEK_S = 7 * 86_400;
const MOST_READINGS = 400;

/** Morning plan and question for the night that is over. */
export async function morningJob(context: JobContext): Promise<JobEnd> {
  const { memory, subject, body, nowS } = context;
  const evening = DateTime.fromISO(body.date, { zone: subject.zone }).minus({ days: 1 }).toISODate()!;
  const advisory = await issuedFor({ ...context, body: { ...body, date: evening } });
  if (!advisory || isQuietNow(context)) return NOTHING_TO_WRITE;
  const readings = await memory.readings(subject.greenhouseId, MOST_READINGS);
  const morningsRead = new Set(readings.map(({ receivedAtS }) => dateOf(receivedAtS, subject.zone))).size;
  const askedThisWeek = new Set(readings.filter(({ receivedAtS }) => receivedAtS > nowS - A_WEEK_S).map(({ receivedAtS }) => dateOf(receivedAtS, subject.zone))).size;
  const morning = morningMessage(advisory, { morningsRead, askedThisWeek, units: subject.greenhouse.grower.units });
  if (!morning) return NOTHING_TO_WRITE;
  const audience = await audienceOf(context);
  return together(tell(audience, { key: jobKey('morning', subject.greenhouseId, body.date), message: morning.message, notBeforeS: nowS, uselessAfterS: body.uselessAfterS }), morning.asks ? awaitAnswer(audience, { about: 'low', atS: nowS }) : NOTHING_TO_WRITE);
}

/** A bare number that comes now is the low, also in the afternoon; a bare "fine" is of the crops that were asked about. */
const awaitAnswer =
  (audience: readonly StoredChat[], question: Parameters<typeof dialogueAsked>[1]): JobEnd =>
  async (memory) => {
    for (const { id } of audience) {
      const chat = await memory.chatById(id);
      if (chat) await memory.updateChat(id, { dialogue: dialogueAsked(chat.dialogue, question) });
    }
  };

/** Two days after a risky night: frost marks show only then. */
export async function outcomeJob(context: JobContext): Promise<JobEnd> {
  const { memory, subject, body, nowS } = context;
  if (isQuietNow(context)) return NOTHING_TO_WRITE;
  const stored = await memory.advisoryFor(subject.greenhouseId, body.date);
  if (!stored) return NOTHING_TO_WRITE;
  const advisory = JSON.parse(stored.body) as Advisory;
  const crops = advisory.crops.filter(({ verdict, pickedBefore }) => !pickedBefore && (verdict === 'at-risk' || verdict === 'likely-lost')).map(({ asked }) => asked);
  if (crops.length === 0) return NOTHING_TO_WRITE;
  const asked = [...new Set(crops)];
  const text = outcomeQuestion(asked, localTime(subject.zone).day(Date.parse(advisory.issuedAt) / 1000));
  const audience = await audienceOf(context);
  return together(tell(audience, { key: jobKey('outcome', subject.greenhouseId, body.date), message: { text, html: toHtml(text) }, notBeforeS: nowS, uselessAfterS: body.uselessAfterS }), awaitAnswer(audience, { about: 'outcome', crops: asked, night: body.date, atS: nowS }));
}
