import { afterEach, describe, expect, it } from 'vitest';
import { startHttp, type HttpServer } from '../../../../bot/http/server.js';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import type { BotApi } from '../../../fixtures/bot-api/stand-in.js';
import { GROWER, startRig, until, type Rig } from './telegram-rig.js';

const SECRET = 'invented-secret_0123456789';
const ANY_PORT = { host: '127.0.0.1', port: 0 };

interface Served {
  readonly rig: Rig;
  readonly api: BotApi;
  readonly address: string;
}

const open: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0).reverse()) await close();
});

/** The channel behind an HTTP server, as the product has it. A listening server is needed before its address is known, so it gets its door late. */
async function serve(isLocal = true): Promise<Served> {
  const api = await startBotApi({ isLocal, retryUnitMs: 5 });
  open.push(() => api.close());
  let knock: ((request: { header: (name: string) => string | undefined; body: string }) => Promise<number>) | null = null;
  const lines: string[] = [];
  const note = (event: string): void => void lines.push(event);
  const http: HttpServer = await startHttp({ address: ANY_PORT, checks: {}, metrics: null, doors: [{ path: '/telegram', knock: (request) => knock!(request) }], log: { info: note, warn: note, error: note } });
  open.push(() => http.close());
  const address = `${http.url}/telegram`;
  const rig = await startRig({ over: api, channel: { webhook: { url: address, secret: SECRET } } });
  open.push(() => rig.close());
  knock = (request) => rig.channel.door!.knock(request);
  return { rig, api, address };
}

const bring = (address: string, body: unknown, headers: Record<string, string> = { 'x-telegram-bot-api-secret-token': SECRET }): Promise<Response> =>
  fetch(address, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body: typeof body === 'string' ? body : JSON.stringify(body) });
const isSet = (api: BotApi): boolean => api.calls.some(({ method, status }) => method === 'setWebhook' && status === 200);
const texts = ({ taken }: Rig): readonly string[] => taken.map(({ content }) => (content.kind === 'text' ? content.text : content.kind));

describe('the webhook', () => {
  it('takes messages in order of each chat and never polls', async () => {
    const { rig, api } = await serve();
    const listening = rig.listen();
    for (let i = 1; i <= 60; i++) api.act({ do: 'says', person: GROWER + (i % 3), text: String(i) });
    await until('all are confirmed', () => isSet(api) && api.pending() === 0);
    for (const chat of [0, 1, 2]) {
      const heard = rig.taken.filter((inbound) => inbound.chat === String(GROWER + chat)).map(({ content }) => (content.kind === 'text' ? Number(content.text) : NaN));
      expect(heard).toEqual(Array.from({ length: 60 }, (_, i) => i + 1).filter((i) => i % 3 === chat));
    }
    expect(api.calls.map(({ method }) => method)).not.toContain('getUpdates');
    expect(api.calls.find(({ method }) => method === 'setWebhook')?.fields).toMatchObject({ secret_token: SECRET, allowed_updates: ['message', 'edited_message', 'callback_query', 'my_chat_member'] });
    rig.stop();
    await expect(listening).resolves.toBeUndefined();
  });

  it('a hand-over that fails makes the service come again', async () => {
    const { rig, api } = await serve();
    let failures = 0;
    rig.onHandOver = () => (++failures <= 2 ? Promise.reject(new Error('the disk is full')) : Promise.resolve());
    const update = api.act({ do: 'says', person: GROWER, text: 'one' }).update!;
    void rig.listen();
    await until('it is confirmed', () => isSet(api) && api.pending() === 0);
    expect(api.deliveries).toEqual([503, 503, 200].map((status) => ({ update, status })));
    expect(texts(rig)).toEqual(['one']);
  });

  it('is answered only after the hand-over', async () => {
    const { rig, api } = await serve();
    let finish = (): void => undefined;
    rig.onHandOver = () => new Promise((resolve) => (finish = resolve));
    void rig.listen();
    api.act({ do: 'says', person: GROWER, text: 'one' });
    await until('it hands over', () => rig.offered.length === 1);
    expect([api.deliveries.length, api.pending()]).toEqual([0, 1]);
    finish();
    await until('it is confirmed', () => api.pending() === 0);
    expect(api.deliveries[0]?.status).toBe(200);
  });

  it('told to stop it lets what is under way end, and sends the rest back', async () => {
    const { rig, api, address } = await serve();
    let finish = (): void => undefined;
    rig.onHandOver = () => new Promise((resolve) => (finish = resolve));
    const listening = rig.listen();
    api.act({ do: 'says', person: GROWER, text: 'one' });
    await until('it hands over', () => rig.offered.length === 1);
    rig.stop();
    let ended = false;
    void listening.then(() => (ended = true));
    const after = await bring(address, { update_id: 1, message: { message_id: 1, date: 1, chat: { id: 1, type: 'private', first_name: 'G' }, from: { id: 1, is_bot: false, first_name: 'G' }, text: 'late' } });
    expect([after.status, ended]).toEqual([503, false]);
    finish();
    await listening;
    await until('it is confirmed', () => api.pending() === 0);
    expect(texts(rig)).toEqual(['one']);
  });

  it.each([
    ['none', {}],
    ['an empty one', { 'x-telegram-bot-api-secret-token': '' }],
    ['another', { 'x-telegram-bot-api-secret-token': 'invented-secret_0123456780' }],
    ['a beginning', { 'x-telegram-bot-api-secret-token': SECRET.slice(0, -1) }],
    ['a longer one', { 'x-telegram-bot-api-secret-token': `${SECRET}x` }],
  ])('a secret that is %s is refused with 403', async (_name, headers) => {
    const { rig, api, address } = await serve();
    void rig.listen();
    await until('it listens', () => rig.channel.trouble() === null && isSet(api));
    const answer = await bring(address, { update_id: 1, message: { message_id: 1, date: 1, chat: { id: 1, type: 'private' }, from: { id: 1, is_bot: false }, text: 'x' } }, headers);
    expect([answer.status, rig.offered]).toEqual([403, []]);
  });

  it.each(['', '{', '[]', 'null', '{"message":{}}', '{"update_id":"1"}'])('a body that is no update (%s) is refused with 400', async (body) => {
    const { rig, api, address } = await serve();
    void rig.listen();
    await until('it listens', () => isSet(api));
    expect((await bring(address, body)).status).toBe(400);
  });

  it('an update that cannot be read is logged and given up, or it would block its chat for a day', async () => {
    const { rig, api, address } = await serve();
    void rig.listen();
    await until('it listens', () => isSet(api));
    expect((await bring(address, { update_id: 1, message: { message_id: 1, from: { id: 1, is_bot: false }, text: 'no chat' } })).status).toBe(200);
    expect(rig.logged.join('')).toContain('telegram update cannot be read');
    expect(rig.offered).toEqual([]);
  });

  it('is set again after the rest that the service wants when it was set just before', async () => {
    const { rig, api } = await serve();
    api.fail({ method: 'setWebhook', fault: { kind: 'answer', code: 429, description: 'Too Many Requests: retry after 1', parameters: { retry_after: 1 } } });
    void rig.listen();
    await until('it is set', () => rig.channel.trouble() === null);
    expect(rig.waitedMs).toEqual([1000]);
  });

  it('that the service does not want ends listening with its words', async () => {
    const { rig } = await serve(false);
    await expect(rig.listen()).rejects.toThrow(/refuses setWebhook \(400 "Bad Request: bad webhook: An HTTPS URL must be provided for webhook"\)/u);
  });
});
