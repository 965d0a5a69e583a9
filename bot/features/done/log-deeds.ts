import type { Intent } from '../../language/intent.js';
import type { Store } from '../../ports.js';
import { deedsKept } from '../../text/reply-text.js';
import type { Advisory } from '../evening/advisory.js';

type Did = Extract<Intent, { kind: 'did' }>;

/** Keeps what the grower did and did not do; the words "done" alone stand for the whole plan that was last sent. */
export async function logDeeds(intent: Did, message: { greenhouseId: string; night: string; receivedAtS: number; text: string }, store: Store): Promise<string> {
  const planned = await lastPlan(store, message.greenhouseId);
  const all = intent.done === undefined && intent.not === undefined ? planned : intent.rest ? planned.filter((item) => !intent.not?.includes(item)) : (intent.done ?? []);
  const heat = intent.amounts?.heater;
  const setC = heat?.unit === 'C' ? heat.value : null;
  const keep = async (items: readonly string[], done: boolean): Promise<void> => {
    if (items.length === 0) return;
    await store.addAction({ greenhouseId: message.greenhouseId, receivedAtS: message.receivedAtS, night: message.night, body: JSON.stringify({ items, setC }), done, text: message.text });
  };
  await keep(all, true);
  await keep(intent.not ?? [], false);
  return deedsKept(all, intent.not ?? []);
}

async function lastPlan(store: Store, greenhouseId: string): Promise<readonly PlanItem[]> {
  const last = await store.lastAdvisory(greenhouseId);
  if (!last) return [];
  return [...new Set((JSON.parse(last.body) as Advisory).plan.actions.map(({ action }) => action))];
}

type PlanItem = NonNullable<Did['done']>[number];
