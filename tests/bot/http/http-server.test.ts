import { connect } from 'node:net';
import { afterEach, describe, expect, it } from 'vitest';
import { httpAddress } from '../../../bot/http/address.js';
import type { Door, Knock } from '../../../bot/http/door.js';
import { healthOf } from '../../../bot/http/health.js';
import { createMetrics } from '../../../bot/http/metrics.js';
import { startHttp, type HttpOptions, type HttpServer } from '../../../bot/http/server.js';
import { readSettings, SettingError } from '../../../config/settings.js';

const open: HttpServer[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});
const logged: string[] = [];
const note = (event: string): void => void logged.push(event);
const log = { info: note, warn: note, error: note };

async function serve(more: Partial<HttpOptions> = {}): Promise<string> {
  const server = await startHttp({ address: { host: '127.0.0.1', port: 0 }, checks: {}, metrics: null, doors: [], log, ...more });
  open.push(server);
  return server.url;
}

describe('/healthz', () => {
  it('says 200 when every check is well, with the word of each', async () => {
    const url = await serve({ checks: { database: () => null, telegram: () => Promise.resolve(null) } });
    const answer = await fetch(`${url}/healthz`);
    expect([answer.status, await answer.json()]).toEqual([200, { ok: true, checks: { database: 'ok', telegram: 'ok' } }]);
  });

  it('says 503 when one is not, and which: what it says, or what it threw, without a token', async () => {
    const url = await serve({ checks: { database: () => null, telegram: () => 'no poll answered for 95 s', weather: () => Promise.reject(new Error('asked bot123456:AAinvented')) } });
    const answer = await fetch(`${url}/healthz`);
    expect([answer.status, await answer.json()]).toEqual([503, { ok: false, checks: { database: 'ok', telegram: 'no poll answered for 95 s', weather: 'asked bot[token]' } }]);
  });

  it('does not hang with a check that hangs', async () => {
    expect(await healthOf({ stuck: () => new Promise(() => undefined), fine: () => null }, 20)).toEqual({ ok: false, checks: { stuck: 'no answer within 0.02 s', fine: 'ok' } });
  });
});

describe('/metrics', () => {
  it('counts and reads what was registered, in the form of the monitoring system', async () => {
    const metrics = createMetrics();
    const messages = metrics.counter('messages_total', 'Messages by how they ended', { result: ['sent', 'later'] });
    const starts = metrics.counter('starts_total', 'Starts');
    let waiting = 3;
    metrics.gauge('outbox_waiting', 'Messages that wait', () => waiting);
    const url = await serve({ metrics });
    messages({ result: 'sent' });
    messages({ result: 'sent' });
    messages({ result: '4001' });
    starts();
    waiting = 5;
    const answer = await fetch(`${url}/metrics`);
    const lines = (await answer.text()).split('\n');
    expect(answer.headers.get('content-type')).toMatch(/^text\/plain; version=0\.0\.4/u);
    expect(lines).toEqual(expect.arrayContaining(['# TYPE duskward_messages_total counter', 'duskward_messages_total{result="sent"} 2', 'duskward_messages_total{result="later"} 0', 'duskward_messages_total{result="other"} 1', 'duskward_starts_total 1', '# TYPE duskward_outbox_waiting gauge', 'duskward_outbox_waiting 5']));
    expect(lines.some((line) => line.startsWith('process_resident_memory_bytes '))).toBe(true);
  });

  it('never has a label value that nobody declared: no chat or person can stand there', async () => {
    const metrics = createMetrics();
    const sends = metrics.counter('sends_total', 'Sends', { channel: ['telegram'], result: ['sent'] });
    sends({ channel: 'telegram', result: 'sent', chat: '4001' });
    sends({ channel: '4001', result: '4002' });
    sends();
    const { text } = await metrics.page();
    expect(text.split('\n').filter((line) => line.startsWith('duskward_sends_total'))).toEqual(['duskward_sends_total{channel="telegram",result="sent"} 1', 'duskward_sends_total{channel="other",result="other"} 2']);
  });

  it('is not there when there are no numbers', async () => {
    expect((await fetch(`${await serve()}/metrics`)).status).toBe(404);
  });
});

describe('a door', () => {
  const knocks: (Pick<Knock, 'body'> & { readonly secret: string | undefined })[] = [];
  const door = (answer: () => Promise<number>): Door => ({
    path: '/in',
    knock: ({ header, body }) => {
      knocks.push({ body, secret: header('x-secret') });
      return answer();
    },
  });

  it('gets the body and headers as they came, and its status goes back', async () => {
    const url = await serve({ doors: [door(() => Promise.resolve(403))] });
    const answer = await fetch(`${url}/in`, { method: 'POST', headers: { 'X-Secret': 'word' }, body: '{"text":"-2\u00b0"}' });
    expect(answer.status).toBe(403);
    expect(knocks.at(-1)).toEqual({ body: '{"text":"-2\u00b0"}', secret: 'word' });
  });

  it('opens for POST alone, and for no body that is too large', async () => {
    const url = await serve({ doors: [door(() => Promise.resolve(200))] });
    const before = knocks.length;
    expect((await fetch(`${url}/in`)).status).toBe(404);
    expect((await fetch(`${url}/in`, { method: 'POST', body: 'x'.repeat(1_000_001) })).status).toBe(413);
    expect((await fetch(`${url}/elsewhere`, { method: 'POST' })).status).toBe(404);
    expect(knocks.length).toBe(before);
  });

  it('that breaks is a 500 without a word of why, and it is logged', async () => {
    const url = await serve({ doors: [door(() => Promise.reject(new Error('private')))] });
    const answer = await fetch(`${url}/in`, { method: 'POST' });
    expect([answer.status, await answer.text()]).toEqual([500, 'error']);
    expect(logged).toContain('http request failed');
  });

  it.each(['/healthz', '/metrics'])('cannot stand at %s', async (path) => {
    await expect(serve({ doors: [{ ...door(() => Promise.resolve(200)), path }] })).rejects.toThrow(SettingError);
  });
});

/** Less than connections are kept open (5 s in Node), far more than closing takes. */
const TIRED_MS = 3_000;

describe('the server', () => {
  it('told to close lets a request under way end, takes no more, and does not wait for idle connections', async () => {
    let finish = (): void => undefined;
    let isAsked = false;
    const server = await startHttp({
      address: { host: '127.0.0.1', port: 0 },
      checks: {},
      metrics: null,
      log,
      doors: [{ path: '/in', knock: () => new Promise((resolve) => ((isAsked = true), (finish = () => resolve(200)))) }],
    });
    const idle = connect(Number(new URL(server.url).port), '127.0.0.1');
    await new Promise((resolve) => idle.once('connect', resolve));
    const underWay = fetch(`${server.url}/in`, { method: 'POST' });
    while (!isAsked) await new Promise((resolve) => setTimeout(resolve, 2));
    const closing = server.close();
    await expect(fetch(`${server.url}/healthz`)).rejects.toThrow();
    finish();
    expect((await underWay).status).toBe(200);
    // Connections kept open for a next request would hold it up until the client or the server tires of them.
    const tired = new Promise((resolve) => setTimeout(() => resolve('held up'), TIRED_MS));
    expect(await Promise.race([closing.then(() => 'closed'), tired])).toBe('closed');
    idle.destroy();
  });

  it('on a taken port says so', async () => {
    const { port } = new URL(await serve());
    await expect(serve({ address: { host: '127.0.0.1', port: Number(port) } })).rejects.toThrow(/DUSKWARD_HTTP: cannot listen on 127\.0\.0\.1:\d+ .*EADDRINUSE/u);
  });
});

describe('where to listen', () => {
  const address = (more: Record<string, string>): ReturnType<typeof httpAddress> => httpAddress(readSettings(more));
  const WEBHOOK = { DUSKWARD_TELEGRAM_TOKEN: '1:a', DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in' };

  it('is nowhere unless asked for; with a webhook behind a proxy on the same machine', () => {
    expect(address({})).toBeNull();
    expect(address({ DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in' })).toBeNull();
    expect(address(WEBHOOK)).toEqual({ host: '127.0.0.1', port: 8080 });
    expect(address({ ...WEBHOOK, DUSKWARD_HTTP: '0.0.0.0:9000' })).toEqual({ host: '0.0.0.0', port: 9000 });
  });

  it.each([['localhost:80', { host: 'localhost', port: 80 }], ['[::1]:8080', { host: '::1', port: 8080 }], ['bot.example.org:65535', { host: 'bot.example.org', port: 65_535 }]])('%s', (text, expected) => {
    expect(address({ DUSKWARD_HTTP: text })).toEqual(expected);
  });

  it.each(['8080', ':8080', 'localhost', 'localhost:x', 'localhost:65536', 'http://localhost:80', '::1:80'])('%s is refused with an example', (text) => {
    expect(() => address({ DUSKWARD_HTTP: text })).toThrow(/^DUSKWARD_HTTP: expected host:port such as 127\.0\.0\.1:8080/u);
  });
});
