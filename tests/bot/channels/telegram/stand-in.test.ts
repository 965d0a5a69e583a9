import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import type { BotApi } from '../../../fixtures/bot-api/stand-in.js';
import { GROUP, GROWER, until } from './telegram-rig.js';
import { scriptWords } from '../../../fixtures/script.js';

// The rules are those of the server's source (tdlib/telegram-bot-api 10.0, Client.cpp and WebhookActor.cpp), see platform reference 1.1 and 1.2a.
interface Answer {
  readonly ok: boolean;
  readonly error_code?: number;
  readonly description?: string;
  readonly result?: unknown;
}

const RETRY_UNIT_MS = 20;

let api: BotApi;
let nowS: number;
beforeEach(async () => {
  nowS = 1_800_000_000;
  api = await startBotApi({ nowS: () => nowS, retryUnitMs: RETRY_UNIT_MS });
});
afterEach(() => api.close());

async function call(method: string, fields: object = {}): Promise<Answer> {
  const answer = await fetch(`${api.url}/bot${api.token}/${method}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(fields) });
  return (await answer.json()) as Answer;
}

const numbers = ({ result }: Answer): readonly number[] => (result as { update_id: number }[]).map(({ update_id: id }) => id);
const say = (text: string): number => api.act({ do: 'says', person: GROWER, text }).update!;

describe('polls of the stand-in', () => {
  it('give an update again until a higher number is asked for', async () => {
    const [first, second] = [say('one'), say('two')];
    expect(numbers(await call('getUpdates', { limit: 10 }))).toEqual([first, second]);
    expect(numbers(await call('getUpdates', { offset: first }))).toEqual([first, second]);
    expect(numbers(await call('getUpdates', { offset: second }))).toEqual([second]);
    expect(api.pending()).toBe(1);
    await call('getUpdates', { offset: second + 1, timeout: 0, limit: 1 });
    expect(api.pending()).toBe(0);
  });

  it('give one update when the same number is asked for again at once', async () => {
    const [first] = [say('one'), say('two')];
    expect(numbers(await call('getUpdates', { offset: first }))).toHaveLength(2);
    expect(numbers(await call('getUpdates', { offset: first }))).toEqual([first]);
  });

  it('are held until something comes', async () => {
    const poll = call('getUpdates', { timeout: 30 });
    await until('the poll is held', api.isPolled);
    const update = say('hello');
    expect(numbers(await poll)).toEqual([update]);
  });

  it('throw the older of two pollers out', async () => {
    const older = call('getUpdates', { timeout: 30 });
    await until('the older is held', api.isPolled);
    const newer = call('getUpdates', { timeout: 30 });
    expect(await older).toMatchObject({ ok: false, error_code: 409, description: 'Conflict: terminated by other getUpdates request; make sure that only one bot instance is running' });
    const update = say('hello');
    expect(numbers(await newer)).toEqual([update]);
  });

  it('forget what waited for a day', () => {
    say('old');
    nowS += 86_399;
    expect(api.pending()).toBe(1);
    nowS += 1;
    expect(api.pending()).toBe(0);
  });

  it('give all that waits when the numbers start again below the one asked for', async () => {
    const before = say('one');
    await call('getUpdates', { offset: before + 1, limit: 2 });
    api.world.queue.goOnAt(1000);
    expect(say('after a quiet week')).toBe(1000);
    expect(numbers(await call('getUpdates', { offset: before + 1 }))).toEqual([1000]);
  });
});

describe('the webhook of the stand-in', () => {
  it('brings an update again until 2xx: at once, then after times that double', async () => {
    const came: { id: number; atMs: number; secret: string | undefined }[] = [];
    const bot = createServer((request, response) => {
      let body = '';
      request.on('data', (chunk: Buffer) => (body += chunk.toString()));
      request.on('end', () => {
        came.push({ id: (JSON.parse(body) as { update_id: number }).update_id, atMs: performance.now(), secret: request.headers['x-telegram-bot-api-secret-token'] as string | undefined });
        response.writeHead(came.length < 4 ? 500 : 204).end();
      });
    });
    await new Promise<void>((resolve) => bot.listen(0, '127.0.0.1', resolve));
    await call('setWebhook', { url: `http://127.0.0.1:${(bot.address() as AddressInfo).port}/in`, secret_token: 'a-secret' });
    expect(await call('getUpdates')).toMatchObject({ error_code: 409, description: "Conflict: can't use getUpdates method while webhook is active; use deleteWebhook to delete the webhook first" });
    const [first, second] = [say('one'), say('two')];
    await until('both were brought', () => api.pending() === 0);
    expect(came.map(({ id }) => id)).toEqual([first, first, first, first, second]);
    expect(new Set(came.map(({ secret }) => secret))).toEqual(new Set(['a-secret']));
    // A timer may be a millisecond early.
    expect(came[2]!.atMs - came[1]!.atMs).toBeGreaterThanOrEqual(2 * RETRY_UNIT_MS - 2);
    expect(came[3]!.atMs - came[2]!.atMs).toBeGreaterThanOrEqual(4 * RETRY_UNIT_MS - 2);
    bot.closeAllConnections();
    bot.close();
  });

  it('cannot be set twice within a second, nor with a secret of other characters', async () => {
    await api.close();
    api = await startBotApi();
    expect(await call('setWebhook', { url: 'http://127.0.0.1:9/', secret_token: 'a b' })).toMatchObject({ error_code: 400, description: 'Bad Request: secret token contains unallowed characters' });
    expect(await call('setWebhook', { url: 'http://127.0.0.1:9/' })).toMatchObject({ error_code: 429, parameters: { retry_after: 1 } });
  });
});

describe('sending to the stand-in', () => {
  it('is refused as the service does, for the markup before the chat', async () => {
    expect(await call('sendMessage', { chat_id: 77, text: '<b>x', parse_mode: 'HTML' })).toMatchObject({ error_code: 400, description: 'Bad Request: can\'t parse entities: Can\'t find end tag corresponding to start tag "b"' });
    expect(await call('sendMessage', { chat_id: 77, text: 'x' })).toMatchObject({ error_code: 400, description: 'Bad Request: chat not found' });
    say('hello');
    expect(await call('sendMessage', { chat_id: GROWER, text: ' ' })).toMatchObject({ description: 'Bad Request: message text is empty' });
    expect(await call('sendMessage', { chat_id: GROWER, text: 'x'.repeat(4097) })).toMatchObject({ description: 'Bad Request: message is too long' });
    expect(await call('sendMessage', { chat_id: GROWER, text: `<b>${'x'.repeat(4096)}</b>`, parse_mode: 'HTML' })).toMatchObject({ ok: true });
  });

  it('refuses a document that is not there or empty, and gives one back under its name', async () => {
    say('hello');
    const sendDocument = async (file: Blob | null): Promise<unknown> => {
      const body = new FormData();
      body.set('chat_id', String(GROWER));
      if (file !== null) body.set('document', file, 'readings.csv');
      return (await fetch(`${api.url}/bot${api.token}/sendDocument`, { method: 'POST', body })).json();
    };
    expect(await sendDocument(null)).toMatchObject({ error_code: 400, description: 'Bad Request: there is no document in the request' });
    expect(await sendDocument(new Blob([]))).toMatchObject({ error_code: 400, description: 'Bad Request: file must be non-empty' });
    expect(await sendDocument(new Blob(['a,b']))).toMatchObject({ ok: true, result: { document: { file_name: 'readings.csv', file_size: 3 } } });
  });

  it('fails for somebody who blocked the bot, until they unblock it', async () => {
    say('hello');
    api.act({ do: 'blocks', person: GROWER });
    expect(await call('sendMessage', { chat_id: GROWER, text: 'x' })).toMatchObject({ error_code: 403, description: 'Forbidden: bot was blocked by the user' });
    api.act({ do: 'unblocks', person: GROWER });
    expect(await call('sendMessage', { chat_id: GROWER, text: 'x' })).toMatchObject({ ok: true });
  });

  it('knows no token but its own', async () => {
    const answer = await fetch(`${api.url}/bot${api.token}x/getMe`);
    expect([answer.status, await answer.json()]).toEqual([401, { ok: false, error_code: 401, description: 'Unauthorized' }]);
  });
});

describe('groups of the stand-in', () => {
  it('let the bot hear what is meant for it alone', () => {
    const heard = (text: string): boolean => api.act({ do: 'says', person: GROWER, chat: GROUP, text }).update !== null;
    expect([heard('nice weather'), heard('/tonight'), heard(`@${api.bot.username} tonight`)]).toEqual([false, true, true]);
  });
});

it('the stand-in runs as a process of its own, driven over HTTP', async () => {
  const child = spawn(process.execPath, [...scriptWords('tests/fixtures/bot-api/main.ts'), '--token', api.token], { stdio: ['ignore', 'pipe', 'inherit'] });
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  const url = line.toString().trim();
  const admin = async (path: string, body?: object): Promise<unknown> =>
    (await fetch(`${url}/admin/${path}`, body === undefined ? {} : { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) })).json();
  const { update } = (await admin('act', { do: 'says', person: GROWER, text: '/tonight' })) as { update: number };
  await admin('fault', { method: 'sendMessage', fault: { kind: 'answer', code: 500, description: 'Internal Server Error' } });
  const send = async (): Promise<unknown> => (await fetch(`${url}/bot${api.token}/sendMessage?chat_id=${GROWER}&text=hi`)).json();
  expect(await send()).toMatchObject({ error_code: 500 });
  expect(await send()).toMatchObject({ ok: true });
  expect(await admin('state')).toMatchObject({ pending: 1, messages: [{ text: '/tonight', fromBot: false }, { text: 'hi', fromBot: true }] });
  expect(update).toBeGreaterThan(0);
  child.kill('SIGTERM');
  expect((await once(child, 'exit'))[0]).toBe(0);
});
