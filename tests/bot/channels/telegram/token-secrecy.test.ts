import { inspect } from 'node:util';
import { afterEach, describe, expect, it } from 'vitest';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import type { Fault } from '../../../fixtures/bot-api/faults.js';
import { chatOf, GROWER, startRig, until, type Rig } from './telegram-rig.js';

const open: Rig[] = [];
afterEach(async () => {
  for (const rig of open.splice(0).reverse()) await rig.close();
});
async function rigWith(...more: Parameters<typeof startRig>): Promise<Rig> {
  const rig = await startRig(...more);
  open.push(rig);
  return rig;
}

/** All that a thing shows when somebody prints it, fields that are not listed included. */
const shown = (thing: unknown): string => inspect(thing, { depth: 20, showHidden: true });

const SECRET_PART = (rig: Rig): string => rig.api.token.split(':')[1]!;

describe('the token shows nowhere', () => {
  it.each<[string, Fault]>([
    ['a broken connection', { kind: 'cut' }],
    ['half an answer', { kind: 'half-answer' }],
    ['a page', { kind: 'page', status: 502 }],
    ['an answer that repeats it', { kind: 'answer', code: 400, description: 'Bad Request: no such path as /botTOKEN/getMe' }],
  ])('in logs, results and errors after %s', async (_name, fault) => {
    const rig = await rigWith();
    const withToken: Fault = fault.kind === 'answer' ? { ...fault, description: fault.description.replace('TOKEN', rig.api.token) } : fault;
    rig.api.act({ do: 'says', person: GROWER, text: 'hello' });
    for (const method of ['sendMessage', 'answerCallbackQuery', 'setMyCommands', 'getUpdates']) rig.api.fail({ method, fault: withToken });
    const results = [await rig.channel.send(chatOf(GROWER), { text: 'x' }), await rig.channel.acknowledge('1')];
    const listening = rig.listen();
    await until('it polled', () => rig.api.calls.filter(({ method }) => method === 'getUpdates').length > 0);
    rig.stop();
    const ended: unknown = await listening.catch((error: unknown) => error);
    expect(rig.logged.length).toBeGreaterThan(1);
    expect(rig.logged.join('') + shown([results, ended])).not.toContain(SECRET_PART(rig));
  });

  it('in logs and results when nobody is there', async () => {
    const api = await startBotApi();
    await api.close();
    for (const apiRoot of [api.url, 'http://no-such-host.invalid', 'https://127.0.0.1:9']) {
      const rig = await rigWith({ over: api, channel: { apiRoot } });
      void rig.listen();
      await until('it waited', () => rig.waitedMs.length > 0);
      const result = await rig.channel.send(chatOf(GROWER), { text: 'x' });
      expect(rig.logged.join('')).toContain('getMe');
      expect(rig.logged.join('') + shown(result)).not.toContain(SECRET_PART(rig));
    }
  });

  it.each(['wrong', 'not there', 'polled twice'] as const)('in the error that ends listening: %s', async (why) => {
    const rig = await rigWith();
    const token = { wrong: `${rig.api.token}x`, 'not there': `9${rig.api.token}`, 'polled twice': rig.api.token }[why];
    const first = await rigWith({ over: rig.api, channel: { token } });
    const listening = first.listen();
    if (why === 'polled twice') {
      await until('it polls', rig.api.isPolled);
      void rig.listen();
    }
    const error: unknown = await listening.catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Error);
    expect(shown(error)).not.toContain(SECRET_PART(rig));
  });

  it('in the channel itself, for whoever prints it', async () => {
    const rig = await rigWith();
    expect(shown(rig.channel)).not.toContain(SECRET_PART(rig));
  });
});
