import type { Greenhouse } from '../../../engine/index.js';
import type { Intent, Item } from '../../language/intent.js';
import type { Records } from '../../ports.js';
import { deedsKept } from '../../text/reply-text.js';
import type { Advisory, AdvisoryAction } from '../evening/advisory.js';
import type { Deed } from '../evening/deeds-tonight.js';

type Did = Extract<Intent, { kind: 'did' }>;

interface Message {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly night: string;
  readonly receivedAtS: number;
  readonly text: string;
}

/** Keeps what the grower did and did not do; "done" alone stands for the whole plan that was last sent for this night. */
export async function logDeeds(intent: Did, message: Message, store: Records): Promise<string> {
  const planned = await planOfNight(store, message);
  const wholePlan = intent.rest === true || (intent.done === undefined && intent.not === undefined);
  const items = wholePlan ? itemsOf(planned.filter(({ run }) => run !== false)) : (intent.done ?? []);
  const done = items.filter((item) => !intent.not?.includes(item));
  // A fan that the plan switches off is done by being off.
  const notDone = [...(intent.not ?? []), ...(wholePlan ? itemsOf(planned.filter(({ run }) => run === false)) : [])];
  const beds = bedsNamed(message);
  const heat = intent.amounts?.heater;
  const plannedSetC = planned.find(({ action }) => action === 'heater')?.setC ?? null;
  const setC = heat?.unit === 'C' ? heat.value : wholePlan ? plannedSetC : null;
  const coveredInPlan = planned.flatMap(({ action, target }) => (action === 'cover' && target !== undefined ? [target] : []));
  await keep({ items: done, beds: beds ?? (wholePlan ? coveredInPlan : null), setC }, true, message, store);
  await keep({ items: notDone, beds, setC: null }, false, message, store);
  return deedsKept(done, notDone, beds);
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

const ARTICLE = /^the /u;

/** Beds whose names stand in the message; null when none does. */
function bedsNamed({ text, greenhouse }: Message): readonly string[] | null {
  const said = text.toLowerCase();
  const named = greenhouse.beds.map(({ name }) => name).filter((name) => said.includes(name.toLowerCase().replace(ARTICLE, '')));
  return named.length === 0 ? null : named;
}
