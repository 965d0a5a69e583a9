import { describe, expect, it } from 'vitest';
import { createLog } from '../../../bot/log.js';

const TOKEN = '7000000001:AAinventedTokenOfNobodyForTests-0123456';

function logged(event: string, fields: Record<string, unknown>): Record<string, unknown> {
  const lines: string[] = [];
  createLog('info', { write: (line) => void lines.push(line) }).error(event, fields);
  expect(lines).toHaveLength(1);
  return JSON.parse(lines[0]!) as Record<string, unknown>;
}

describe('a log line', () => {
  it('tells an error with its causes', () => {
    const error = new Error('no advisory', { cause: Object.assign(new TypeError('fetch failed'), { code: 'ECONNREFUSED' }) });
    const { msg, error: told } = logged('advisory failed', { error });
    expect(msg).toBe('advisory failed');
    expect(told).toMatchObject({ type: 'Error', message: 'no advisory', stack: expect.stringContaining('log.test') as string, cause: { type: 'TypeError', message: 'fetch failed', code: 'ECONNREFUSED' } });
  });

  it('tells the inner error of a failed call, and each of many errors', () => {
    const failed = Object.assign(new Error('call failed'), { error: new AggregateError([new Error('no way by IPv6'), new Error('no way by IPv4')], 'no way') });
    expect(logged('x', { failed })).toMatchObject({ failed: { message: 'call failed', error: { message: 'no way', errors: [{ message: 'no way by IPv6' }, { message: 'no way by IPv4' }] } } });
  });

  it.each<[string, unknown]>([
    ['a text', `asked https://api.example.org/bot${TOKEN}/getMe`],
    ['an encoded address', `https://api.example.org/bot${TOKEN.replace(':', '%3A')}/getMe`],
    ['a token by itself', TOKEN],
    ['an address', new URL(`https://api.example.org/bot${TOKEN}/getMe`)],
    ['an error', new Error(`asked bot${TOKEN}`)],
    ['the cause of a cause', new Error('a', { cause: new Error('b', { cause: `bot${TOKEN}` }) })],
    ['the inner error of a failed call', Object.assign(new Error('a'), { error: new Error(`bot${TOKEN}`) })],
    ['one of many errors', new AggregateError([new Error(`bot${TOKEN}`)], 'a')],
    ['the name of a field', { [`bot${TOKEN}`]: 1 }],
    ['a list in a list', [[[`bot${TOKEN}`]]]],
    ['a short token in an address', 'https://api.example.org/bot1:AA-invented/getMe'],
  ])('has no bot token out of %s', (_name, value) => {
    expect(JSON.stringify(logged(`with bot${TOKEN}`, { value }))).not.toMatch(/AA-?invented/u);
  });

  it('has nothing of what growers wrote or where they live, however deep', () => {
    const place = { latitude: 44.123, longitude: -72.456 };
    const line = JSON.stringify(logged('x', { text: 'private', a: { place, b: { c: [{ place, html: 'private', caption: 'private', text: 'private' }] } }, ...place }));
    expect(line).not.toMatch(/private|44\.123|72\.456/u);
    // A failed call carries what was to be sent.
    expect(JSON.stringify(logged('x', { error: Object.assign(new Error('a'), { payload: { chat_id: 4001, text: 'private' } }) }))).not.toMatch(/private|4001/u);
  });

  it('keeps what it may tell, and comes to an end with what goes round', () => {
    const round: { self?: unknown; name: string } = { name: 'round' };
    round.self = round;
    expect(logged('x', { count: 3, isOff: false, nothing: null, list: ['a', 1], round, big: 10n })).toMatchObject({ count: 3, isOff: false, nothing: null, list: ['a', 1], round: { name: 'round', self: '[deeper]' }, big: '10' });
  });
});
