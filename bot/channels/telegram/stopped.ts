import type { CallFailure } from './call-failure.js';

/** The channel cannot go on; the message says why and what to do, and carries no token. */
export class TelegramStoppedError extends Error {
  override readonly name = 'TelegramStoppedError';
}

/** Answers that will be the same however often we ask; null for what may heal. */
export function stoppedBy(failure: CallFailure, method: string): TelegramStoppedError | null {
  if (failure.kind !== 'answered' || failure.code === 429 || failure.code >= 500) return null;
  const said = `${failure.code} "${failure.cause}"`;
  if (failure.code === 401) return new TelegramStoppedError(`Telegram refuses the bot token (${said}): it is wrong or was revoked. Get the right one from @BotFather and set DUSKWARD_TELEGRAM_TOKEN.`);
  if (failure.code === 404) return new TelegramStoppedError(`Telegram knows no such bot (${said}): check DUSKWARD_TELEGRAM_TOKEN and DUSKWARD_TELEGRAM_API_ROOT.`);
  if (failure.code === 409) return new TelegramStoppedError(`Another process receives this bot's messages (${said}): stop it, or set DUSKWARD_TELEGRAM_WEBHOOK in both or in none. Only one may poll.`);
  return new TelegramStoppedError(`Telegram refuses ${method} (${said}).`);
}
