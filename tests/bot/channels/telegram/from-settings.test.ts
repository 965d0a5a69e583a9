import { describe, expect, it } from 'vitest';
import { telegramFromSettings } from '../../../../bot/channels/telegram/from-settings.js';
import { readSettings, SettingError, type Settings } from '../../../../config/settings.js';

const TOKEN = '7000000001:AAinventedTokenOfNobodyForTests-0123456';
const SECRET = 'invented-secret_0123456789';
const settings = (more: Record<string, string>): Settings => readSettings({ DUSKWARD_TELEGRAM_TOKEN: TOKEN, ...more });

describe('Telegram from the settings', () => {
  it('is not there without a token', () => {
    expect(telegramFromSettings(readSettings({ DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in' }))).toBeNull();
  });

  it('polls the public service when only the token is set', () => {
    expect(telegramFromSettings(settings({}))).toEqual({ token: TOKEN, apiRoot: null, webhook: null });
  });

  it('has the webhook with its secret', () => {
    expect(telegramFromSettings(settings({ DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in', DUSKWARD_TELEGRAM_SECRET: SECRET }))?.webhook).toEqual({ url: 'https://example.org/in', secret: SECRET });
  });

  it('makes a secret that the service takes, a new one each time', () => {
    const made = [1, 2].map(() => telegramFromSettings(settings({ DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in' }))!.webhook!.secret);
    expect(made[0]).toMatch(/^[\w-]{43}$/u);
    expect(made[0]).not.toBe(made[1]);
  });

  it('takes a plain http webhook only beside a Bot API server of one\'s own', () => {
    const plain = { DUSKWARD_TELEGRAM_WEBHOOK: 'http://127.0.0.1:8080/in' };
    expect(() => telegramFromSettings(settings(plain))).toThrow(/public https address/u);
    expect(telegramFromSettings(settings({ ...plain, DUSKWARD_TELEGRAM_API_ROOT: 'http://127.0.0.1:8081' }))?.webhook?.url).toBe('http://127.0.0.1:8080/in');
  });

  it.each<[string, Record<string, string>]>([
    ['DUSKWARD_TELEGRAM_TOKEN', { DUSKWARD_TELEGRAM_TOKEN: 'not-a-token-but-private' }],
    ['DUSKWARD_TELEGRAM_API_ROOT', { DUSKWARD_TELEGRAM_API_ROOT: 'api.example.org' }],
    ['DUSKWARD_TELEGRAM_WEBHOOK', { DUSKWARD_TELEGRAM_WEBHOOK: 'example.org/in' }],
    ['DUSKWARD_TELEGRAM_SECRET', { DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in', DUSKWARD_TELEGRAM_SECRET: 'short' }],
    ['DUSKWARD_TELEGRAM_SECRET', { DUSKWARD_TELEGRAM_WEBHOOK: 'https://example.org/in', DUSKWARD_TELEGRAM_SECRET: 'with blanks and private' }],
  ])('refuses a wrong %s by its name, without telling a secret', (name, more) => {
    const read = (): unknown => telegramFromSettings(settings(more));
    expect(read).toThrow(SettingError);
    expect(read).toThrow(new RegExp(`^${name}: expected`, 'u'));
    expect(read).not.toThrow(/private|short/u);
  });
});
