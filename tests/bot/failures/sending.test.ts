import { afterEach, describe, expect, it } from 'vitest';
import type { SendResult } from '../../../bot/chat.js';
import type { Memory } from '../../../bot/journal.js';
import { EVENING_S, postRig, type PostRig } from './post-rig.js';

const CHATS = 120;
const SENT: SendResult = { kind: 'sent', message: '1' };
const HOUR_S = 3600;

let rig: PostRig;
const open = async (more?: Parameters<typeof postRig>[0]): Promise<PostRig> => (rig = await postRig(more));
afterEach(() => rig.memory.close());

const textsOf = (chat: string): readonly string[] => rig.tried.filter((line) => line.startsWith(`${chat} `)).map((line) => line.slice(chat.length + 1));

describe('a chat whose send takes for ever', () => {
  it('holds up no other chat, and its own messages stay in order', async () => {
    await open();
    let answer: (result: SendResult) => void = () => undefined;
    rig.onSend = ({ chat }, { text }) => (chat === 'slow' && text === 'one' ? new Promise((resolve) => (answer = resolve)) : Promise.resolve(SENT));
    for (const text of ['one', 'two']) await rig.put('slow', text);
    for (const text of ['one', 'two']) for (let n = 0; n < CHATS; n += 1) await rig.put(`chat-${n}`, text);
    const endAtMs = performance.now() + 20_000;
    while (rig.tried.length < 1 + 2 * CHATS && performance.now() < endAtMs) if ((await rig.post.sendDue()) === 0) await new Promise((resolve) => setTimeout(resolve, 5));
    for (let n = 0; n < CHATS; n += 1) expect(textsOf(`chat-${n}`)).toEqual(['one', 'two']);
    expect(textsOf('slow')).toEqual(['one']);
    answer(SENT);
    await rig.post.idle();
    await rig.sendAll();
    expect(textsOf('slow')).toEqual(['one', 'two']);
  });
});

describe('a service that asks all of us to wait', () => {
  it('is left alone for so long by all its chats, while another channel goes on', async () => {
    await open();
    rig.onSend = ({ channel }) => Promise.resolve(channel === 'telegram' ? { kind: 'later', afterS: 40, scope: 'channel', cause: 'too many' } : SENT);
    await rig.put('first', 'x');
    await rig.sendAll();
    for (let n = 0; n < CHATS; n += 1) await rig.put(`chat-${n}`, 'x');
    await rig.put('+15550100', 'x', { channel: 'sms' });
    rig.clock.atS += 39;
    await rig.sendAll();
    expect(rig.tried).toEqual(['first x', '+15550100 x']);
    rig.onSend = () => Promise.resolve(SENT);
    rig.clock.atS += 1;
    await rig.sendAll();
    expect(rig.tried).toHaveLength(2 + 1 + CHATS);
  });

  it('when it asks one chat, lets the others pass', async () => {
    await open();
    rig.onSend = ({ chat }) => Promise.resolve(chat === 'busy' ? { kind: 'later', afterS: 40, scope: 'chat', cause: 'too many' } : SENT);
    await rig.put('busy', 'x');
    await rig.sendAll();
    await rig.put('other', 'x');
    await rig.sendAll();
    expect(rig.tried).toEqual(['busy x', 'other x']);
  });
});

describe('a chat that cannot be reached', () => {
  const blocked = async (uselessAfterS: number | null): Promise<string> => {
    await open();
    rig.onSend = () => Promise.resolve({ kind: 'gone', cause: 'blocked' });
    const id = await rig.put('away', 'tonight', { uselessAfterS });
    await rig.put('away', 'answer');
    await rig.sendAll();
    expect(rig.tried).toEqual(['away tonight']);
    expect(await rig.memory.chatById(id)).toMatchObject({ reachable: false });
    rig.onSend = () => Promise.resolve(SENT);
    return id;
  };
  const backAt = async (id: string, atS: number): Promise<readonly string[]> => {
    rig.clock.atS = atS;
    await rig.sendAll();
    expect(rig.tried).toHaveLength(1);
    await rig.memory.updateChat(id, { reachable: true });
    await rig.sendAll();
    return rig.tried.slice(1);
  };

  it('gets what waited, in order, when the grower comes back while it is of use', async () => {
    expect(await backAt(await blocked(EVENING_S + HOUR_S), EVENING_S + HOUR_S)).toEqual(['away tonight', 'away answer']);
  });

  it('gets nothing that is of no use any more', async () => {
    expect(await backAt(await blocked(EVENING_S + HOUR_S), EVENING_S + HOUR_S + 1)).toEqual(['away answer']);
  });

  it('never gets a message without an end that found it gone', async () => {
    expect(await backAt(await blocked(null), EVENING_S + 1)).toEqual(['away answer']);
  });
});

describe('a message that is tried many times', () => {
  it('through an outage of an hour is not given up for the first answer that is lost', async () => {
    await open();
    await rig.put('a', 'x');
    const results: SendResult[] = [...Array.from({ length: 360 }, () => ({ kind: 'later', afterS: 10, scope: 'channel', cause: 'ECONNREFUSED' }) as const), { kind: 'unknown', cause: 'timed out' }];
    rig.onSend = () => Promise.resolve(results.shift() ?? SENT);
    for (; results.length > 0; rig.clock.atS += 10) await rig.sendAll();
    // Soon after: the outage does not count towards the pause either.
    rig.clock.atS += 15;
    await rig.sendAll();
    expect(rig.counted.at(-1)).toBe('sent');
  });

  it('without an answer each time is given up in the end: every one may have arrived', async () => {
    await open();
    rig.onSend = () => Promise.resolve({ kind: 'unknown', cause: 'timed out' });
    await rig.put('a', 'x', { uselessAfterS: null });
    for (let day = 0; day < 10 * 96; day += 1, rig.clock.atS += 900) await rig.sendAll();
    expect(rig.tried).toHaveLength(30);
  });
});

describe('a disk that does not take how a send ended', () => {
  it.each<[string, SendResult, readonly string[]]>([
    ['sent', SENT, ['a one', 'a two']],
    ['moved', { kind: 'moved', to: 'b' }, ['a one', 'b one', 'b two']],
  ])('for a while (%s): nothing leaves twice, and the chat goes on when it does', async (_name, first, expected) => {
    let failures = 2;
    const failing = (memory: Memory): Memory => ({ ...memory, endSend: (...how) => (failures-- > 0 ? Promise.reject(new Error('database or disk is full')) : memory.endSend(...how)) });
    await open({ wrap: failing });
    rig.onSend = () => Promise.resolve(rig.tried.length === 1 ? first : SENT);
    await rig.put('a', 'one');
    await rig.put('a', 'two');
    await rig.sendAll();
    expect(failures).toBeLessThan(0);
    expect(rig.tried).toEqual(expected);
  });
});
