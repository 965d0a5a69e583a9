import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import type { Fault } from '../../../fixtures/bot-api/faults.js';
import { chatOf, GROUP, GROWER, startRig, type Rig } from './telegram-rig.js';

let rig: Rig;
beforeEach(async () => {
  rig = await startRig();
  rig.api.act({ do: 'says', person: GROWER, text: 'hello' });
  rig.api.act({ do: 'says', person: GROWER, chat: GROUP, text: '/start' });
});
afterEach(() => rig.close());

const send = (chat = GROWER): ReturnType<Rig['channel']['send']> => rig.channel.send(chatOf(chat), { text: 'cover the beds' });
const fail = (fault: Fault, chat?: number): void => rig.api.fail({ method: 'sendMessage', fault, ...(chat === undefined ? {} : { chat }) });
const answer = (code: number, description: string, parameters?: { retry_after?: number; migrate_to_chat_id?: number }): Fault => ({ kind: 'answer', code, description, ...(parameters ? { parameters } : {}) });

describe('how a send ends', () => {
  it('sent: the id of the message', async () => {
    const result = await send();
    expect(result).toEqual({ kind: 'sent', message: String(rig.api.sentTo(GROWER)[0]!.id) });
  });

  it.each<[string, Fault, object]>([
    ['500 of the service', answer(500, 'Internal Server Error: restart'), { kind: 'later', scope: 'channel' }],
    ['503 of something in between', { kind: 'page', status: 503 }, { kind: 'later', scope: 'channel' }],
    ['a page that is no answer at all', { kind: 'page', status: 403 }, { kind: 'later', scope: 'channel' }],
    ['401', answer(401, 'Unauthorized'), { kind: 'later', scope: 'channel' }],
    ['404', answer(404, 'Not Found'), { kind: 'later', scope: 'channel' }],
    ['429', answer(429, 'Too Many Requests: retry after 17', { retry_after: 17 }), { kind: 'later', scope: 'chat', afterS: 17 }],
    ['403, blocked', answer(403, 'Forbidden: bot was blocked by the user'), { kind: 'gone', cause: 'Forbidden: bot was blocked by the user' }],
    ['403, deactivated', answer(403, 'Forbidden: user is deactivated'), { kind: 'gone' }],
    ['403, kicked', answer(403, 'Forbidden: bot was kicked from the group chat'), { kind: 'gone' }],
    ['403, deleted', answer(403, 'Forbidden: the group chat was deleted'), { kind: 'gone' }],
    ['403, never written to us', answer(403, "Forbidden: bot can't initiate conversation with a user"), { kind: 'gone' }],
    ['400, no such chat', answer(400, 'Bad Request: chat not found'), { kind: 'gone' }],
    ['400, moved', answer(400, 'Bad Request: group chat was upgraded to a supergroup chat', { migrate_to_chat_id: -1_001_234_567_890 }), { kind: 'moved', to: '-1001234567890' }],
    ['400, anything else', answer(400, 'Bad Request: BUTTON_DATA_INVALID'), { kind: 'refused', cause: 'Bad Request: BUTTON_DATA_INVALID' }],
    ['400, no right to write in the group', answer(400, 'Bad Request: not enough rights to send text messages to the chat'), { kind: 'refused' }],
    ['502 of something in between: it may have arrived', { kind: 'page', status: 502 }, { kind: 'unknown' }],
    ['504 of something in between: it may have arrived', { kind: 'page', status: 504 }, { kind: 'unknown' }],
    ['a broken connection: it may have arrived', { kind: 'cut' }, { kind: 'unknown' }],
  ])('%s', async (_name, fault, result) => {
    fail(fault);
    expect(await send()).toMatchObject(result);
    expect(rig.api.sentTo(GROWER)).toEqual([]);
    expect(rig.api.calls.filter(({ method }) => method === 'sendMessage')).toHaveLength(1);
  });

  it.each<[string, Fault]>([
    ['lost', { kind: 'lost-answer' }],
    ['broken off', { kind: 'half-answer' }],
  ])('an answer that is %s: unknown, and it did arrive, once', async (_name, fault) => {
    fail(fault);
    expect(await send()).toMatchObject({ kind: 'unknown' });
    expect(rig.api.sentTo(GROWER)).toHaveLength(1);
  });

  it('an answer that does not come in time: unknown', async () => {
    const hasty = await startRig({ over: rig.api, channel: { callTimes: { callS: 0.2, pollS: 1, pollSlackS: 1 } } });
    fail({ kind: 'slow', ms: 1000 });
    expect(await hasty.channel.send(chatOf(GROWER), { text: 'x' })).toMatchObject({ kind: 'unknown', cause: expect.stringContaining('timed out') as string });
  });

  it('no connection at all: later, for it cannot have arrived', async () => {
    const api = await startBotApi();
    await api.close();
    const lonely = await startRig({ over: api });
    expect(await lonely.channel.send(chatOf(GROWER), { text: 'x' })).toMatchObject({ kind: 'later', scope: 'channel', cause: expect.stringContaining('ECONNREFUSED') as string });
  });

  it('a name that does not resolve: later, for it cannot have arrived', async () => {
    const lost = await startRig({ over: rig.api, channel: { apiRoot: 'http://no-such-host.invalid' } });
    expect(await lost.channel.send(chatOf(GROWER), { text: 'x' })).toMatchObject({ kind: 'later', scope: 'channel' });
  });

  it('somebody who really blocked us is gone until they write again', async () => {
    rig.api.act({ do: 'blocks', person: GROWER });
    expect(await send()).toMatchObject({ kind: 'gone' });
    rig.api.act({ do: 'unblocks', person: GROWER });
    expect(await send()).toMatchObject({ kind: 'sent' });
  });

  it('a group that really became a supergroup has moved, and is reached there', async () => {
    rig.api.act({ do: 'upgrades', person: GROWER, chat: GROUP, to: -1_001_234_567_890 });
    expect(await send(GROUP)).toEqual({ kind: 'moved', to: '-1001234567890' });
    expect(await send(-1_001_234_567_890)).toMatchObject({ kind: 'sent' });
  });

  it.each([
    { channel: 'sms', chat: '4001' },
    { channel: 'telegram', chat: '@somebody' },
    { channel: 'telegram', chat: '' },
    { channel: 'telegram', chat: '12345678901234567' },
  ] as const)('an address that is none of ours is refused without a call: %o', async (to) => {
    expect(await rig.channel.send(to, { text: 'x' })).toMatchObject({ kind: 'refused' });
    expect(rig.api.calls).toEqual([]);
  });
});

describe('too many requests', () => {
  const flood = answer(429, 'Too Many Requests: retry after 20', { retry_after: 20 });

  it('hold the chat back without asking again; other chats go on', async () => {
    fail(flood, GROWER);
    expect(await send()).toMatchObject({ kind: 'later', afterS: 20, scope: 'chat' });
    const calls = rig.api.calls.length;
    expect(await send()).toMatchObject({ kind: 'later', scope: 'chat' });
    expect(rig.api.calls).toHaveLength(calls);
    expect(await send(GROUP)).toMatchObject({ kind: 'sent' });
  });

  it('in a second chat before the first is free hold everybody back', async () => {
    fail(flood, GROWER);
    fail(flood, GROUP);
    expect(await send(GROWER)).toMatchObject({ scope: 'chat' });
    expect(await send(GROUP)).toMatchObject({ kind: 'later', afterS: 20, scope: 'channel' });
    rig.api.act({ do: 'says', person: 4002, text: 'hello' });
    const calls = rig.api.calls.length;
    expect(await send(4002)).toMatchObject({ kind: 'later', scope: 'channel' });
    expect(rig.api.calls).toHaveLength(calls);
  });
});
