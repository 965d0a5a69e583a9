import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Memory } from '../../bot/journal.js';
import { openSqliteStore } from '../../bot/store/sqlite-store.js';

const AT_S = 1_768_424_400;
const DAY_S = 86_400;
const BATCH = 50;
const WARM_UP = 5;
const MEASURED = 60;

export interface JournalTiming {
  readonly chats: number;
  readonly finishedRows: number;
  readonly openInboundMs: number;
  readonly dueOutboundMs: number;
  readonly dueJobsMs: number;
  /** A begun and ended send: two commits on the disk. */
  readonly sendMs: number;
  /** Kept, applied with a reading and an answer, finished: two commits. */
  readonly updateMs: number;
}

/** The due queries on a journal in a file: every chat with a past of finished nights, and each with a message, an update and a job that are due now. */
export async function timeJournal(chats: number, nights: number): Promise<JournalTiming> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-bench-'));
  const memory = await openSqliteStore({ path: join(folder, 'duskward.sqlite'), atomicLimitMs: 600_000 });
  try {
    const chatIds = await memory.atomically((within) => fill(within, chats, nights));
    const openInboundMs = await medianMs(() => memory.openInbound(BATCH));
    const dueOutboundMs = await medianMs(() => memory.dueOutbound(AT_S, BATCH));
    const dueJobsMs = await medianMs(() => memory.dueJobs(AT_S, BATCH));
    const due = [...(await memory.dueOutbound(AT_S, WARM_UP + MEASURED))];
    const sendMs = await medianMs(async () => {
      const { id } = due.pop()!;
      await memory.beginSend(id, AT_S);
      await memory.endSend(id, { state: 'sent', sentAs: String(id) }, AT_S);
    });
    await memory.atomically((within) => finishAll(within, AT_S, chats));
    let n = 0;
    const updateMs = await medianMs(async () => {
      n += 1;
      await memory.keepInbound(update(`new-${n}`, 'new'));
      const [row] = await memory.openInbound(1);
      await memory.atomically(async (within) => {
        await within.addReading({ greenhouseId: 'g0', receivedAtS: AT_S, validAtS: AT_S, place: 'inside', statistic: 'low', tempC: -3, text: '-3' });
        await within.addOutbound({ chatId: chatIds[0]!, key: `reply:new-${n}`, message: { text: 'noted' }, notBeforeS: 0, uselessAfterS: null });
        await within.finishInbound(row!.id, 'done', AT_S);
      });
    });
    return { chats, finishedRows: 3 * chats * nights, openInboundMs, dueOutboundMs, dueJobsMs, sendMs, updateMs };
  } finally {
    await memory.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

const update = (id: string, chat: string) => ({ channel: 'telegram', chat, update: id, isGroup: false, sender: chat, receivedAtS: AT_S, content: { kind: 'text', text: 'low was -3', forwarded: false } }) as const;

async function fill(memory: Parameters<Parameters<Memory['atomically']>[0]>[0], chats: number, nights: number): Promise<readonly string[]> {
  const ids: string[] = [];
  for (let c = 0; c < chats; c++) {
    const { id } = await memory.openChat({ channel: 'telegram', chat: String(c) }, { isGroup: false, atS: AT_S });
    await memory.updateChat(id, { greenhouseId: `g${c}` });
    ids.push(id);
  }
  for (let night = nights; night >= 0; night--) {
    const dueAtS = AT_S - night * DAY_S;
    for (const [c, chatId] of ids.entries()) {
      await memory.keepInbound(update(`${c}-${night}`, String(c)));
      await memory.addOutbound({ chatId, key: `advisory:g${c}:${night}`, message: { text: 'x'.repeat(500), html: 'x'.repeat(500) }, notBeforeS: dueAtS, uselessAfterS: null });
      await memory.addJob({ key: `advisory:g${c}:${night}`, kind: 'advisory', greenhouseId: `g${c}`, dueAtS, body: '{}' });
    }
    if (night > 0) await finishAll(memory, dueAtS, chats);
  }
  return ids;
}

async function finishAll(memory: Parameters<typeof fill>[0], atS: number, chats: number): Promise<void> {
  for (const { id } of await memory.openInbound(chats)) await memory.finishInbound(id, 'done', atS);
  for (const { id } of await memory.dueOutbound(atS, chats)) {
    await memory.beginSend(id, atS);
    await memory.endSend(id, { state: 'sent', sentAs: String(id) }, atS);
  }
  for (const { id } of await memory.dueJobs(atS, chats)) await memory.finishJob(id, 'done', atS);
}

async function medianMs(work: () => Promise<unknown>): Promise<number> {
  const times: number[] = [];
  for (let i = 0; i < WARM_UP + MEASURED; i++) {
    const startMs = performance.now();
    await work();
    if (i >= WARM_UP) times.push(performance.now() - startMs);
  }
  return times.sort((a, b) => a - b)[Math.floor(times.length / 2)]!;
}
