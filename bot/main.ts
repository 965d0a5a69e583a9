#!/usr/bin/env node
import { SettingError } from '../config/settings.js';
import { TelegramStoppedError } from './channels/telegram/stopped.js';
import { InputError } from './commands/input-error.js';
import { NoWeatherError } from './ports.js';
import { StoreError } from './store/store-error.js';

interface Command {
  readonly usage: string;
  readonly run: (words: readonly string[]) => Promise<void>;
}

/** Each is loaded only when it is called: a command that prints an example needs no chat service. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  run: async () => import('./commands/run.js').then(({ RUN_USAGE, run }) => ({ usage: RUN_USAGE, run })),
  play: async () => import('./commands/play.js').then(({ PLAY_USAGE, play }) => ({ usage: PLAY_USAGE, run: play })),
  tonight: async () => import('./commands/tonight.js').then(({ TONIGHT_USAGE, tonight }) => ({ usage: TONIGHT_USAGE, run: tonight })),
  simulate: async () => import('./commands/simulate.js').then(({ SIMULATE_USAGE, simulate }) => ({ usage: SIMULATE_USAGE, run: simulate })),
  understand: async () => import('./commands/understand.js').then(({ UNDERSTAND_USAGE, understand }) => ({ usage: UNDERSTAND_USAGE, run: understand })),
  replay: async () => import('./commands/replay.js').then(({ REPLAY_USAGE, replay }) => ({ usage: REPLAY_USAGE, run: replay })),
  greenhouse: async () => import('./commands/greenhouse.js').then(({ GREENHOUSE_USAGE, greenhouse }) => ({ usage: GREENHOUSE_USAGE, run: greenhouse })),
  backup: async () => import('./commands/backup.js').then(({ BACKUP_USAGE, backup }) => ({ usage: BACKUP_USAGE, run: backup })),
};

async function main(words: readonly string[]): Promise<void> {
  const [name = 'run', ...rest] = words;
  if (name === '--help' || name === 'help') {
    const commands = await Promise.all(Object.values(COMMANDS).map((load) => load()));
    return void console.log(commands.map(({ usage }) => usage).join('\n\n'));
  }
  const load = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!load) throw new InputError(`no such command: ${name}; expected one of ${Object.keys(COMMANDS).join(', ')}. "duskward --help" tells more.`);
  await (await load()).run(rest);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  const expected = error instanceof InputError || error instanceof SettingError || error instanceof NoWeatherError || error instanceof StoreError || error instanceof TelegramStoppedError;
  console.error(expected ? `duskward: ${error.message}` : error);
  process.exitCode = 1;
});
