import { SettingError, type Settings } from '../../config/settings.js';

export interface HttpAddress {
  readonly host: string;
  readonly port: number;
}

/** Where a proxy on the same machine finds us when only a webhook is asked for. */
const BEHIND_A_PROXY: HttpAddress = { host: '127.0.0.1', port: 8080 };
const FORM = /^(?:\[(?<six>[0-9a-f:.]+)\]|(?<host>[\w.-]+)):(?<port>\d{1,5})$/iu;
const HIGHEST_PORT = 65_535;

/** Where to listen; null when nothing is to be served. */
export function httpAddress({ DUSKWARD_HTTP: text, DUSKWARD_TELEGRAM_TOKEN: token, DUSKWARD_TELEGRAM_WEBHOOK: webhook }: Settings): HttpAddress | null {
  if (text === null) return token !== null && webhook !== null ? BEHIND_A_PROXY : null;
  const parts = FORM.exec(text)?.groups;
  const port = Number(parts?.['port']);
  if (!parts || port > HIGHEST_PORT) throw new SettingError(`DUSKWARD_HTTP: expected host:port such as 127.0.0.1:8080 or [::1]:8080, got ${JSON.stringify(text)}`);
  return { host: (parts['six'] ?? parts['host'])!, port };
}
