import { randomBytes } from 'node:crypto';
import { SettingError, type Settings } from '../../../config/settings.js';
import type { TelegramOptions } from './channel.js';

const TOKEN = /^\d+:[\w-]+$/u;
/** The service takes 1 to 256 of these; a short one could be guessed (16: project estimate). */
const SECRET = /^[\w-]{16,256}$/u;
const SECRET_BYTES = 32;

/** What the settings say of Telegram; null when it is not wanted. Values of secret settings never stand in an error. */
export function telegramFromSettings(settings: Settings): Pick<TelegramOptions, 'token' | 'apiRoot' | 'webhook'> | null {
  const { DUSKWARD_TELEGRAM_TOKEN: token, DUSKWARD_TELEGRAM_API_ROOT: apiRoot, DUSKWARD_TELEGRAM_WEBHOOK: webhook, DUSKWARD_TELEGRAM_SECRET: secret } = settings;
  if (token === null) return null;
  if (!TOKEN.test(token)) throw new SettingError('DUSKWARD_TELEGRAM_TOKEN: expected a bot token as @BotFather gives it, digits, a colon and letters; what is set does not look like one');
  if (apiRoot !== null) readAddress(apiRoot, 'DUSKWARD_TELEGRAM_API_ROOT');
  if (webhook === null) return { token, apiRoot, webhook: null };
  // A Bot API server of one's own may bring updates over plain http.
  if (readAddress(webhook, 'DUSKWARD_TELEGRAM_WEBHOOK').protocol !== 'https:' && apiRoot === null) throw new SettingError(`DUSKWARD_TELEGRAM_WEBHOOK: expected a public https address such as https://example.org/telegram, got ${webhook}`);
  if (secret !== null && !SECRET.test(secret)) throw new SettingError('DUSKWARD_TELEGRAM_SECRET: expected 16 to 256 of A-Z a-z 0-9 _ -');
  return { token, apiRoot, webhook: { url: webhook, secret: secret ?? randomBytes(SECRET_BYTES).toString('base64url') } };
}

function readAddress(text: string, setting: string): URL {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url?.protocol !== 'https:' && url?.protocol !== 'http:') throw new SettingError(`${setting}: expected an address such as https://example.org/telegram, got ${text}`);
  return url;
}
