import { nightSpan, type Greenhouse } from '../../../engine/index.js';
import { bedsNamed } from '../../language/beds-named.js';
import type { Intent, Item } from '../../language/intent.js';
import type { Records } from '../../ports.js';
import { deedsKept, planLeft } from '../../text/deed-text.js';
import { localTime } from '../../text/local-time.js';
import type { Advisory, AdvisoryAction } from '../evening/advisory.js';
import type { Deed } from '../evening/deeds-tonight.js';

type Did = Extract<Intent, { kind: 'did' }>;

interface Message {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  /** Local date of the night to come, or of the one that is running. */
  readonly night: string;
  readonly receivedAtS: number;
  readonly text: string;
  /** What of the text tells the deed. */
  readonly words: string;
}

/** Keeps what the grower did and did not do; "done" alone stands for the whole plan that was last sent for this night, and "not tonight" for none of it. */
export async function logDeeds(intent: Did, message: Message, store: Records): Promise<string> {
  const said = intent.night ?? lastNightMeant(intent, message) ?? message.night;
  const past = said === message.night ? null : said;
  const planned = past === null ? await planOfNight(store, message) : [];
  const isLeft = intent.done?.length === 0 && intent.not === undefined;
  const wholePlan = intent.rest === true || (intent.done === undefined && intent.not === undefined);
  const items = wholePlan ? itemsOf(planned.filter(({ run }) => run !== false)) : (intent.done ?? []);
  const done = items.filter((item) => !intent.not?.includes(item));
  // A fan that the plan switches off is done by being off.
  const notDone = isLeft ? itemsOf(planned.filter(({ run }) => run !== false)) : [...(intent.not ?? []), ...(wholePlan ? itemsOf(planned.filter(({ run }) => run === false)) : [])];
  const beds = bedsNamed(message.words, message.greenhouse.beds.map(({ name }) => name));
  const heat = intent.amounts?.heater;
  const plannedSetC = planned.find(({ action }) => action === 'heater')?.setC ?? null;
  const setC = heat?.unit === 'C' ? heat.value : wholePlan ? plannedSetC : null;
  const coveredInPlan = planned.flatMap(({ action, target }) => (action === 'cover' && target !== undefined ? [target] : []));
  const told = past === null ? message : { ...message, night: past };
  const fromS = past === null ? null : eveningOf(past, message);
  await keep({ items: done, beds: beds ?? (wholePlan ? coveredInPlan : null), setC, ...(fromS === null ? {} : { fromS }) }, true, told, store);
  await keep({ items: notDone, beds, setC: null, ...(fromS === null ? {} : { fromS }) }, false, told, store);
  return isLeft ? planLeft(notDone) : deedsKept({ done, not: notDone, beds, night: past }, localTime(message.zone).date(message.receivedAtS));
}

const MORNING = { from: '04:00', until: '12:00' } as const;
const DAY_S = 86_400;

/** In the morning nobody has left the work of the night to come yet: "forgot the covers" is of the night that is over. */
function lastNightMeant({ done, not }: Did, { receivedAtS, zone }: Message): string | null {
  const time = localTime(zone);
  const clock = time.clock(receivedAtS);
  return done === undefined && not !== undefined && clock >= MORNING.from && clock < MORNING.until ? time.date(receivedAtS - DAY_S) : null;
}

/** When the night of a date began. */
function eveningOf(night: string, { greenhouse, zone }: Message): number {
  return Math.floor(nightSpan(localTime(zone).noonOf(night), greenhouse.place).sunsetS);
}

/** What was planned, in the words of deeds. */
const itemsOf = (planned: readonly AdvisoryAction[]): Item[] => [...new Set(planned.map(({ action }): Item => (action === 'tube-fan' ? 'tube' : action)))];

async function keep(deed: Deed, done: boolean, message: Message, store: Records): Promise<void> {
  if (deed.items.length === 0) return;
  await store.addAction({ greenhouseId: message.greenhouseId, receivedAtS: message.receivedAtS, night: message.night, body: JSON.stringify(deed), done, text: message.text });
}

async function planOfNight(store: Records, message: Message): Promise<readonly AdvisoryAction[]> {
  const last = await store.lastAdvisory(message.greenhouseId);
  return last?.night === message.night ? (JSON.parse(last.body) as Advisory).plan.actions : [];
}
