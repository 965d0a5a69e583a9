/**
 * Run as a process of its own: opens the memory at argv[2] and does the whole round for ever: takes updates from a service that
 * gives them from number argv[3] on, up to argv[4]; answers them in order; plans a message for each night; sends what is due.
 * Each line on standard output is something that happened outside: the service was told that it may forget an update, or a
 * message left for a chat.
 */
import { writeSync } from 'node:fs';
import type { Memory } from '../../../bot/journal.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';

const STDOUT = 1;
const AT_S = 1_768_424_400;
const CHATS = 3;
const UPDATES_A_NIGHT = 5;
const BATCH = 10;
// Larger than a page of the database: a message that spans several.
const LONG_TEXT = 'x'.repeat(6000);
const [, , path = '', from = '', last = ''] = process.argv;
const say = (...words: readonly (string | number)[]): void => void writeSync(STDOUT, `${words.join(' ')}\n`);

async function receive(memory: Memory, n: number): Promise<void> {
  const chat = String(n % CHATS);
  await memory.keepInbound({ channel: 'telegram', chat, update: String(n), isGroup: false, sender: chat, receivedAtS: AT_S, content: { kind: 'text', text: `reading ${n}`, forwarded: false } });
  say('confirmed', n);
}

async function answer(memory: Memory): Promise<number> {
  const open = await memory.openInbound(BATCH);
  for (const row of open) {
    const chat = await memory.openChat(row, { isGroup: false, atS: AT_S });
    await memory.atomically(async (within) => {
      const text = row.content.kind === 'text' ? row.content.text : '';
      await within.updateChat(chat.id, { greenhouseId: `g${row.chat}`, dialogue: text });
      await within.addReading({ greenhouseId: `g${row.chat}`, receivedAtS: AT_S, validAtS: AT_S, place: 'inside', statistic: 'low', tempC: -3, text });
      await within.addOutbound({ chatId: chat.id, key: `reply:${row.update}`, message: { text: `${text} ${LONG_TEXT}` }, notBeforeS: AT_S, uselessAfterS: null });
      const night = Math.floor(Number(row.update) / UPDATES_A_NIGHT);
      await within.addJob({ key: `night:${row.chat}:${night}`, kind: 'advisory', greenhouseId: `g${row.chat}`, dueAtS: AT_S, body: String(night) });
      await within.finishInbound(row.id, 'done', AT_S);
    });
  }
  return open.length;
}

async function work(memory: Memory): Promise<number> {
  const due = await memory.dueJobs(AT_S, BATCH);
  for (const job of due) {
    await memory.atomically(async (within) => {
      for (const { id } of await within.chatsOf(job.greenhouseId)) await within.addOutbound({ chatId: id, key: job.key, message: { text: job.key }, notBeforeS: AT_S, uselessAfterS: null });
      await within.addAdvisory({ greenhouseId: job.greenhouseId, night: job.body, issuedAtS: AT_S, body: job.key });
      await within.finishJob(job.id, 'done', AT_S);
    });
  }
  return due.length;
}

async function send(memory: Memory): Promise<number> {
  const due = await memory.dueOutbound(AT_S, BATCH);
  for (const row of due) {
    await memory.beginSend(row.id, AT_S);
    say('sent', row.key);
    await memory.endSend(row.id, { state: 'sent', sentAs: row.key }, AT_S);
  }
  return due.length;
}

try {
  const memory = await openSqliteStore({ path });
  say('open', await memory.recoverSends());
  let next = Number(from);
  for (let moved = 1; next <= Number(last) || moved > 0; ) {
    // Two at a time, so that there is always something to answer and to send while more comes in.
    for (const end = next + 2; next < end && next <= Number(last); next++) await receive(memory, next);
    moved = (await answer(memory)) + (await work(memory)) + (await send(memory));
  }
  await memory.close();
  say('closed');
} catch (error) {
  say('failed', (error as { code?: string }).code ?? 'unknown', String(error));
  process.exitCode = 1;
}
