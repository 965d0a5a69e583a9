import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Memory } from '../../../bot/journal.js';
import { openSqliteFile, type SqliteFile } from '../../../bot/store/open-sqlite.js';
import { memoryOn } from '../../../bot/store/sqlite-store.js';
import { EVENING_S, inbound, job, newChat, outbound } from '../../contract/journal/rows.js';

const CHATS = 10;
const MESSAGES_A_CHAT = 10;

let file: SqliteFile;
let memory: Memory;
beforeEach(async () => {
  file = openSqliteFile(':memory:');
  memory = await memoryOn(file);
});
afterEach(() => memory.close());

/** Chats with a past: much that is finished, a little that is open. */
async function fill(): Promise<void> {
  await memory.atomically(async (within) => {
    for (let c = 0; c < CHATS; c++) {
      const chatId = await newChat(within, String(c));
      await within.updateChat(chatId, { greenhouseId: `g${c}` });
      for (let n = 0; n < MESSAGES_A_CHAT; n++) {
        await within.keepInbound(inbound(`${c}-${n}`, { chat: String(c) }));
        await within.addOutbound(outbound(chatId, `${c}-${n}`));
        await within.addJob(job(`${c}-${n}`, { greenhouseId: `g${c}` }));
      }
    }
  });
  file.database.exec(`
    update inbound set state = 'done', finished_at_s = 1 where id % 50 <> 0;
    update outbound set state = 'sent', sent_as = id, finished_at_s = 1 where id % 50 <> 0;
    update job set state = 'done', finished_at_s = 1 where id % 50 <> 0`);
}

/** The statements that a call runs, each with how the database goes about it. */
async function plansOf(call: () => Promise<unknown>): Promise<readonly (readonly [sql: string, steps: readonly string[]])[]> {
  const prepare = vi.spyOn(file.database, 'prepare');
  await call();
  const statements = prepare.mock.calls.map(([sql]) => sql).filter((sql) => /^(?:select|insert|update|delete)/u.test(sql));
  prepare.mockRestore();
  return [...new Set(statements)].map((sql) => {
    // The plan is the same whatever is asked for: no statistics are kept that could change it.
    const explained = file.database.prepare<unknown[], { detail: string }>(`explain query plan ${sql}`).all(...[...sql.matchAll(/\?/gu)].map(() => null));
    return [sql, explained.map(({ detail }) => detail)] as const;
  });
}

const rowIn = async <T>(rows: Promise<readonly T[]>): Promise<T> => {
  const [row] = await rows;
  if (row === undefined) throw new Error('expected a row that is due, got none');
  return row;
};

describe.each(['empty', 'with a past'])('a memory %s', (state) => {
  beforeEach(async () => {
    if (state !== 'empty') await fill();
  });

  it.each<[string, () => Promise<unknown>]>([
    ['openInbound', () => memory.openInbound(20)],
    ['dueOutbound', () => memory.dueOutbound(EVENING_S, 20)],
    ['dueJobs', () => memory.dueJobs(EVENING_S, 20)],
    ['recoverSends', () => memory.recoverSends()],
    ['keepInbound', () => memory.keepInbound(inbound('new'))],
    ['chat', () => memory.chat({ channel: 'telegram', chat: '3' })],
    ['chatsOf', () => memory.chatsOf('g3')],
    ['chatsAfter, first page', () => memory.chatsAfter(null, 20)],
    ['chatsAfter, next page', () => memory.chatsAfter('8', 20)],
    ['outboundSentAs', () => memory.outboundSentAs('nobody', '3')],
    ['moveJob', () => memory.moveJob('3-3', EVENING_S)],
    ['cancelJobs', () => memory.cancelJobs('g3', 'advisory')],
    ['readings', () => memory.readings('g3', 20)],
    ['everyReading', () => memory.everyReading('g3', 0)],
    ['lastAdvisory', () => memory.lastAdvisory('g3')],
    ['advisoryFor', () => memory.advisoryFor('g3', '2026-01-14')],
    ['advisoryBy', () => memory.advisoryBy('g3', '2026-01-14', EVENING_S)],
    ['advisoriesAfter, first page', () => memory.advisoriesAfter('g3', null, 20)],
    ['advisoriesAfter, next page', () => memory.advisoriesAfter('g3', { issuedAtS: EVENING_S, id: 1 }, 20)],
    ['actions', () => memory.actions('g3', 0)],
    ['outcomes', () => memory.outcomes('g3', 20)],
    ['marks', () => memory.marks('g3', 20)],
    ['toldIn', () => memory.toldIn('g3', 'telegram:3:7')],
    ['withdrawTold', () => memory.withdrawTold({ of: 'action', id: 3 }, EVENING_S)],
    ['greenhouse', () => memory.greenhouse('g3')],
    ['lastWeather', () => memory.lastWeather('p')],
  ])('%s reads no table from end to end, and sorts nothing', async (_name, call) => {
    const plans = await plansOf(call);
    expect(plans.length).toBeGreaterThan(0);
    expect(plans.filter(([, steps]) => steps.some((step) => /\bSCAN\b|TEMP B-TREE|AUTOMATIC/u.test(step)))).toEqual([]);
  });
});

describe('a memory with a past', () => {
  beforeEach(fill);

  it('walks only over what is open, however much is finished', async () => {
    const [[, inboundSteps] = []] = await plansOf(() => memory.openInbound(20));
    expect(inboundSteps).toEqual(expect.arrayContaining([expect.stringMatching(/^SEARCH .*USING INDEX inbound_open /u), expect.stringMatching(/USING COVERING INDEX inbound_of_chat /u)]));
    const outboundSteps = (await plansOf(() => memory.dueOutbound(EVENING_S, 20))).flatMap(([, steps]) => steps);
    for (const index of ['outbound_useless', 'outbound_due', 'outbound_sending', 'outbound_of_chat']) expect(outboundSteps.filter((step) => step.includes(`INDEX ${index} `))).toHaveLength(1);
    expect((await plansOf(() => memory.dueJobs(EVENING_S, 20))).flatMap(([, steps]) => steps)).toEqual([expect.stringMatching(/^SEARCH job USING INDEX job_due /u)]);
  });

  it('sends and finishes one row without reading others', async () => {
    const message = await rowIn(memory.dueOutbound(EVENING_S, 1));
    const update = await rowIn(memory.openInbound(1));
    const plans = await plansOf(async () => {
      await memory.beginSend(message.id, EVENING_S);
      await memory.endSend(message.id, { state: 'sent', sentAs: 'x' }, EVENING_S);
      await memory.finishInbound(update.id, 'done', EVENING_S);
      await memory.addOutbound(outbound(message.chatId, 'new'));
    });
    expect(plans.length).toBeGreaterThanOrEqual(5);
    expect(plans.flatMap(([, steps]) => steps).filter((step) => !/^SEARCH \w+ USING (?:INTEGER PRIMARY KEY|INDEX sqlite_autoindex_chat_1)/u.test(step))).toEqual([]);
  });
});
