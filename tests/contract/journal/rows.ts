import type { Inbound } from '../../../bot/chat.js';
import type { Journal, Memory, OutboundRow } from '../../../bot/journal.js';

export const EVENING_S = 1_768_424_400; // 2026-01-14T21:00:00Z
export const DAY_S = 86_400;

/** What a suite asks of an engine beyond an empty memory. */
export interface OpenOptions {
  readonly placeKeyOf?: (greenhouseBody: string) => string | null;
  readonly atomicLimitMs?: number;
}
export type OpenMemory = (options?: OpenOptions) => Promise<Memory>;

export const inbound = (update: string, changes: Partial<Inbound> = {}): Inbound => ({
  channel: 'telegram',
  chat: '100',
  update,
  isGroup: false,
  sender: '100',
  receivedAtS: EVENING_S,
  content: { kind: 'text', text: `said ${update}`, forwarded: false },
  ...changes,
});

type NewOutbound = Parameters<Journal['addOutbound']>[0];
export const outbound = (chatId: string, key: string, changes: Partial<NewOutbound> = {}): NewOutbound => ({ chatId, key, message: { text: `text of ${key}` }, notBeforeS: EVENING_S, uselessAfterS: null, ...changes });

type NewJob = Parameters<Journal['addJob']>[0];
export const job = (key: string, changes: Partial<NewJob> = {}): NewJob => ({ key, kind: 'advisory', greenhouseId: 'hill', dueAtS: EVENING_S, body: '{"date":"2026-01-14"}', ...changes });

export const newChat = async (memory: Pick<Journal, 'openChat'>, chat = '100'): Promise<string> => (await memory.openChat({ channel: 'telegram', chat }, { isGroup: false, atS: EVENING_S })).id;

export const keys = (rows: readonly { readonly key: string }[]): readonly string[] => rows.map(({ key }) => key);
export const updates = (rows: readonly { readonly update: string }[]): readonly string[] => rows.map(({ update }) => update);

export async function dueRow(memory: Journal, key: string, atS = EVENING_S): Promise<OutboundRow> {
  const row = (await memory.dueOutbound(atS, 100)).find((due) => due.key === key);
  if (row === undefined) throw new Error(`expected ${key} to be due, got others`);
  return row;
}

/** Sends what is due under this key, as a sender does. */
export async function send(memory: Journal, key: string, sentAs: string): Promise<number> {
  const { id } = await dueRow(memory, key);
  await memory.beginSend(id, EVENING_S);
  await memory.endSend(id, { state: 'sent', sentAs }, EVENING_S);
  return id;
}
