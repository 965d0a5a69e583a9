/** Every setting that the environment can give, with its default and what it does. */
export interface Setting {
  readonly default: string | null;
  readonly doc: string;
}

export const SETTINGS = {
  DUSKWARD_GREENHOUSE: { default: null, doc: 'Greenhouse file of the console conversation; the demo greenhouse when not set.' },
  DUSKWARD_WEATHER_URL: { default: null, doc: 'Base address of the weather service; every path hangs under it. The public Open-Meteo hosts when not set.' },
  DUSKWARD_WEATHER_KEY: { default: null, doc: 'Key of a paid plan of the weather service. The free service is for non-commercial use only.' },
  DUSKWARD_WEATHER_MEMBERS: { default: 'off', doc: 'With "on" the 51 single runs of the ensemble are asked for instead of their mean and spread: how errors of temperature and cloud go together tonight. They cost 5.1 weighted calls a variable, 10.2 in all instead of 1 each time; on the free plan they take at most half of its limits.' },
  DUSKWARD_WEATHER2_URL: { default: null, doc: 'Base address of the second weather service, asked when the first fails. The public MET Norway host when not set.' },
  DUSKWARD_CONTACT: { default: null, doc: 'Mail or web address of the operator, sent to the weather services in the User-Agent. The second service demands it: without one there is no fallback.' },
  DUSKWARD_TELEGRAM_TOKEN: { default: null, doc: 'Token of the Telegram bot; growers reach the assistant there when it is set.' },
  DUSKWARD_TELEGRAM_API_ROOT: { default: null, doc: 'Base address of the Bot API, for a server of your own. The public one when not set.' },
  DUSKWARD_TELEGRAM_WEBHOOK: { default: null, doc: 'Public https address that Telegram is to send messages to; its path is served on DUSKWARD_HTTP. Long polling when not set.' },
  DUSKWARD_TELEGRAM_SECRET: { default: null, doc: 'Secret that Telegram sends along to the webhook: 16 to 256 of A-Z a-z 0-9 _ -. A new one is made at each start when not set.' },
  DUSKWARD_HTTP: { default: null, doc: 'Where to listen for health, metrics and the webhook, as host:port. Not at all when not set, except for a webhook: then 127.0.0.1:8080.' },
  DUSKWARD_DATABASE: { default: 'data/duskward.sqlite', doc: 'SQLite file that keeps greenhouses, readings, actions, weather and advisories.' },
  DUSKWARD_CLOCK: { default: null, doc: 'An instant to start from, for trials: 2026-01-14T22:00:00Z, optionally with a speed such as "x600".' },
  DUSKWARD_LOG: { default: 'warn', doc: 'Lowest level that is logged to standard error: debug, info, warn, error.' },
} as const satisfies Readonly<Record<string, Setting>>;

export type SettingName = keyof typeof SETTINGS;
export type Settings = Readonly<Record<SettingName, string | null>>;

/** A setting that cannot be used: printed as it is, without a stack. */
export class SettingError extends Error {
  override readonly name = 'SettingError';
}

/** Reads the settings from an environment; empty texts count as not set. */
export function readSettings(environment: Readonly<Record<string, string | undefined>>): Settings {
  const entries = Object.entries(SETTINGS).map(([name, setting]) => [name, environment[name]?.trim() || setting.default] as const);
  const unknown = Object.keys(environment).filter((name) => name.startsWith('DUSKWARD_') && !(name in SETTINGS));
  if (unknown.length > 0) throw new SettingError(`no such setting: ${unknown.join(', ')}; known are ${Object.keys(SETTINGS).join(', ')}`);
  return Object.fromEntries(entries) as Settings;
}

/** A setting that is "on" or "off". */
export function isOn(settings: Settings, name: SettingName): boolean {
  const value = settings[name];
  if (value === 'on' || value === 'off') return value === 'on';
  throw new SettingError(`${name}: expected "on" or "off", got ${JSON.stringify(value)}`);
}
