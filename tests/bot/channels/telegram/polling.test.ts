import { afterEach, describe, expect, it } from 'vitest';
import { TelegramStoppedError } from '../../../../bot/channels/telegram/stopped.js';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import type { FaultRule } from '../../../fixtures/bot-api/faults.js';
import { GROWER, startRig, until, type Rig } from './telegram-rig.js';

const open: { close(): Promise<void> }[] = [];
afterEach(async () => {
  for (const each of open.splice(0).reverse()) await each.close();
});
async function rigWith(...more: Parameters<typeof startRig>): Promise<Rig> {
  const rig = await startRig(...more);
  open.push(rig);
  return rig;
}

const say = (rig: Rig, text: string): number => rig.api.act({ do: 'says', person: GROWER, text }).update!;
const texts = (inbounds: Rig['taken']): readonly string[] => inbounds.map(({ content }) => (content.kind === 'text' ? content.text : content.kind));

describe('long polling', () => {
  it('takes messages in order, confirms them and ends when told', async () => {
    const rig = await rigWith();
    const listening = rig.listen();
    for (let i = 1; i <= 250; i++) say(rig, `message ${i}`);
    await until('all are confirmed', () => rig.api.pending() === 0);
    expect(texts(rig.taken)).toEqual(Array.from({ length: 250 }, (_, i) => `message ${i + 1}`));
    await until('it polls', rig.api.isPolled);
    rig.stop();
    let ended = false;
    void listening.then(() => (ended = true));
    // Far sooner than the poll would end by itself.
    await until('it ended', () => ended);
  });

  it('asks for the kinds that it understands, holds the poll open and takes the webhook away', async () => {
    const rig = await rigWith();
    await fetch(`${rig.api.url}/bot${rig.api.token}/setWebhook?url=http://127.0.0.1:9/`);
    void rig.listen();
    await until('it polls', rig.api.isPolled);
    expect(rig.api.calls.map(({ method }) => method)).toEqual(['setWebhook', 'getMe', 'setMyCommands', 'deleteWebhook']);
    say(rig, 'hello');
    await until('it is confirmed', () => rig.api.pending() === 0);
    expect(rig.api.calls.find(({ method }) => method === 'getUpdates')?.fields).toMatchObject({ timeout: 30, allowed_updates: ['message', 'edited_message', 'callback_query', 'my_chat_member'] });
  });

  it('offers the commands, and works without when they are not taken', async () => {
    const rig = await rigWith({ channel: { commands: [{ name: 'tonight', description: 'What to do tonight' }] } });
    rig.api.fail({ method: 'setMyCommands', fault: { kind: 'answer', code: 400, description: 'Bad Request: BOT_COMMAND_INVALID' } });
    void rig.listen();
    await until('it polls', rig.api.isPolled);
    expect(rig.logged.join('')).toContain('BOT_COMMAND_INVALID');
    const second = await rigWith({ over: rig.api, channel: { commands: [{ name: 'tonight', description: 'What to do tonight' }] } });
    void second.listen();
    await until('they are there', () => rig.api.world.commands.length > 0);
    expect(rig.api.world.commands).toEqual([{ command: 'tonight', description: 'What to do tonight' }]);
  });

  it('goes on when the numbers of updates start again lower', async () => {
    const rig = await rigWith();
    void rig.listen();
    say(rig, 'before');
    await until('it is confirmed', () => rig.api.pending() === 0);
    rig.api.world.queue.goOnAt(12);
    for (const text of ['after', 'a quiet week']) {
      say(rig, text);
      await until('it is confirmed', () => rig.api.pending() === 0);
    }
    expect(texts(rig.taken)).toEqual(['before', 'after', 'a quiet week']);
  });
});

describe('a hand-over that fails', () => {
  it('is not confirmed and comes again, after a pause that grows; what came before it does not', async () => {
    const rig = await rigWith();
    let failures = 0;
    rig.onHandOver = ({ content }) => (content.kind === 'text' && content.text === 'two' && ++failures <= 3 ? Promise.reject(new Error('the disk is full')) : Promise.resolve());
    ['one', 'two', 'three'].forEach((text) => say(rig, text));
    void rig.listen();
    await until('all are confirmed', () => rig.api.pending() === 0);
    expect(texts(rig.offered)).toEqual(['one', 'two', 'two', 'two', 'two', 'three']);
    expect(texts(rig.taken)).toEqual(['one', 'two', 'three']);
    expect(rig.waitedMs).toEqual([1000, 2000, 4000]);
    expect(rig.logged.join('')).toContain('the disk is full');
  });

  it('for as long as it fails leaves the update with the service', async () => {
    const rig = await rigWith();
    rig.onHandOver = () => Promise.reject(new Error('the disk is full'));
    say(rig, 'one');
    void rig.listen();
    await until('it was offered often', () => rig.offered.length >= 8);
    expect(rig.api.pending()).toBe(1);
    expect(Math.max(...rig.waitedMs)).toBe(30_000);
    rig.stop();
    const second = await rigWith({ over: rig.api });
    void second.listen();
    await until('it is confirmed', () => rig.api.pending() === 0);
    expect(texts(second.taken)).toEqual(['one']);
  });
});

describe('told to stop', () => {
  it('in the middle of a hand-over it waits for that one, and leaves all of the batch unconfirmed', async () => {
    const rig = await rigWith();
    let finish = (): void => undefined;
    rig.onHandOver = () => new Promise((resolve) => (finish = resolve));
    ['one', 'two'].forEach((text) => say(rig, text));
    const listening = rig.listen();
    await until('it hands over', () => rig.offered.length === 1);
    rig.stop();
    let ended = false;
    void listening.then(() => (ended = true));
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(ended).toBe(false);
    finish();
    await listening;
    expect(texts(rig.taken)).toEqual(['one']);
    expect(rig.api.pending()).toBe(2);
    const second = await rigWith({ over: rig.api });
    void second.listen();
    await until('all are confirmed', () => rig.api.pending() === 0);
    expect(texts(second.taken)).toEqual(['one', 'two']);
  });

  it('before the service answers at all it ends too', async () => {
    const rig = await rigWith();
    rig.api.fail({ method: 'getMe', times: 1000, fault: { kind: 'cut' } });
    const listening = rig.listen();
    await until('it tried', () => rig.api.calls.length > 3);
    rig.stop();
    await expect(listening).resolves.toBeUndefined();
  });
});

describe('a service in trouble', () => {
  it.each<[string, FaultRule['fault'], number]>([
    ['an error of its own', { kind: 'answer', code: 500, description: 'Internal Server Error' }, 1000],
    ['a page of something in between', { kind: 'page', status: 502 }, 1000],
    ['a broken connection', { kind: 'cut' }, 1000],
    ['an answer that breaks off', { kind: 'half-answer' }, 1000],
    ['a wish for a rest', { kind: 'answer', code: 429, description: 'Too Many Requests: retry after 7', parameters: { retry_after: 7 } }, 7000],
  ])('is asked again after a rest: %s', async (_name, fault, restMs) => {
    const rig = await rigWith();
    for (const method of ['getMe', 'deleteWebhook', 'getUpdates']) rig.api.fail({ method, fault });
    say(rig, 'one');
    void rig.listen();
    await until('it is confirmed', () => rig.api.pending() === 0);
    expect(texts(rig.taken)).toEqual(['one']);
    expect(rig.waitedMs).toEqual([restMs, restMs, restMs]);
  });

  it('that does not even take a connection is asked again', async () => {
    const api = await startBotApi();
    await api.close();
    const rig = await rigWith({ over: api });
    const listening = rig.listen();
    await until('it waited', () => rig.waitedMs.length >= 3);
    expect(rig.waitedMs.slice(0, 3)).toEqual([1000, 2000, 4000]);
    expect(rig.logged.join('')).toContain('ECONNREFUSED');
    rig.stop();
    await listening;
  });

  it('that never answers a poll is given up on and asked again', async () => {
    const rig = await rigWith({ channel: { callTimes: { callS: 5, pollS: 0, pollSlackS: 0.3 } } });
    rig.api.fail({ method: 'getUpdates', fault: { kind: 'slow', ms: 60_000 } });
    say(rig, 'one');
    void rig.listen();
    await until('it is confirmed', () => rig.api.pending() === 0);
    expect(rig.logged.join('')).toContain('timed out');
  });
});

describe('what cannot be healed by waiting', () => {
  it('another poller: the older one ends with an error that says so', async () => {
    const rig = await rigWith();
    const listening = rig.listen();
    await until('it polls', rig.api.isPolled);
    const second = await rigWith({ over: rig.api });
    void second.listen();
    await expect(listening).rejects.toThrow(TelegramStoppedError);
    await expect(listening).rejects.toThrow(/Another process receives this bot's messages .*409.*stop it/u);
    say(rig, 'for the newer one');
    await until('it is confirmed', () => rig.api.pending() === 0);
    expect(texts(second.taken)).toEqual(['for the newer one']);
    expect(rig.taken).toEqual([]);
  });

  it('a webhook that somebody sets meanwhile', async () => {
    const rig = await rigWith();
    const listening = rig.listen();
    await until('it polls', rig.api.isPolled);
    await fetch(`${rig.api.url}/bot${rig.api.token}/setWebhook?url=http://127.0.0.1:9/`);
    await expect(listening).rejects.toThrow(/409.*terminated by setWebhook.*DUSKWARD_TELEGRAM_WEBHOOK/u);
  });

  it('a token that is wrong, from the start or revoked later', async () => {
    const rig = await rigWith();
    const wrong = await rigWith({ over: rig.api, channel: { token: `${rig.api.token}x` } });
    await expect(wrong.listen()).rejects.toThrow(/refuses the bot token .*401.*DUSKWARD_TELEGRAM_TOKEN/u);
    const listening = rig.listen();
    await until('it polls', rig.api.isPolled);
    rig.api.revoke();
    say(rig, 'ends the poll');
    await expect(listening).rejects.toThrow(/refuses the bot token .*401/u);
  });

  it('a bot that is not there', async () => {
    const rig = await rigWith({ channel: { token: '42:AAinventedTokenOfNobodyElse-0123456789' } });
    await expect(rig.listen()).rejects.toThrow(/knows no such bot .*404.*DUSKWARD_TELEGRAM_API_ROOT/u);
  });
});

describe('its own word on how it goes', () => {
  it('is trouble while what came in cannot be kept, with polls or a webhook alike', async () => {
    const rig = await rigWith();
    rig.onHandOver = () => Promise.reject(new Error('database or disk is full'));
    void rig.listen();
    await until('it polls', rig.api.isPolled);
    expect(rig.channel.trouble()).toBeNull();
    say(rig, 'one');
    await until('it is trouble', () => rig.channel.trouble() !== null);
    expect(rig.channel.trouble()).toBe('what came in cannot be kept: database or disk is full');
    rig.onHandOver = () => Promise.resolve();
    await until('it is well again', () => rig.channel.trouble() === null);
    expect(texts(rig.taken)).toEqual(['one']);
  });

  it('is trouble when every poll fails for minutes', async () => {
    let nowMs = 0;
    const rig = await rigWith({ channel: { time: { nowMs: () => nowMs, sleepMs: (ms, signal) => ((nowMs += ms), new Promise((resolve) => (signal?.aborted ? resolve() : void setTimeout(resolve, 1)))) } } });
    rig.api.fail({ method: 'getUpdates', times: 1_000, fault: { kind: 'answer', code: 500, description: 'Internal Server Error' } });
    void rig.listen();
    await until('it is trouble', () => nowMs > 120_000);
    expect(rig.channel.trouble()).toMatch(/^no poll answered for \d+ s$/u);
    rig.api.faultsOver();
    say(rig, 'ends the poll');
    await until('it is well again', () => rig.channel.trouble() === null);
  });

  it('is trouble before and after listening, and while polls are not answered', async () => {
    let nowMs = 0;
    const time = { nowMs: () => nowMs, sleepMs: (_ms: number, signal?: AbortSignal) => new Promise<void>((resolve) => signal?.addEventListener('abort', () => resolve())) };
    const rig = await rigWith({ channel: { time } });
    expect(rig.channel.trouble()).toBe('not listening');
    const listening = rig.listen();
    await until('it polls', rig.api.isPolled);
    expect(rig.channel.trouble()).toBeNull();
    nowMs = 89_000;
    expect(rig.channel.trouble()).toBeNull();
    nowMs = 91_000;
    expect(rig.channel.trouble()).toBe('no poll answered for 91 s');
    rig.stop();
    await listening;
    expect(rig.channel.trouble()).toBe('not listening');
  });
});
