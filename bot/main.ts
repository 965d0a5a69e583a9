#!/usr/bin/env node
import { SettingError } from '../config/settings.js';
import { TelegramStoppedError } from './channels/telegram/stopped.js';
import { backup, BACKUP_USAGE } from './commands/backup.js';
import { greenhouse, GREENHOUSE_USAGE } from './commands/greenhouse.js';
import { InputError } from './commands/read-input.js';
import { replay, REPLAY_USAGE } from './commands/replay.js';
import { run, RUN_USAGE } from './commands/run.js';
import { simulate, SIMULATE_USAGE } from './commands/simulate.js';
import { tonight, TONIGHT_USAGE } from './commands/tonight.js';
import { understand, UNDERSTAND_USAGE } from './commands/understand.js';
import { NoWeatherError } from './ports.js';
import { StoreError } from './store/store-error.js';

const COMMANDS: Readonly<Record<string, (words: readonly string[]) => Promise<void>>> = { run, tonight, simulate, understand, replay, greenhouse, backup };
const USAGE = [RUN_USAGE, TONIGHT_USAGE, SIMULATE_USAGE, UNDERSTAND_USAGE, REPLAY_USAGE, GREENHOUSE_USAGE, BACKUP_USAGE].join('\n\n');

async function main(words: readonly string[]): Promise<void> {
  const [name = 'run', ...rest] = words;
  if (name === '--help' || name === 'help') return void console.log(USAGE);
  const command = COMMANDS[name];
  if (!command) throw new InputError(`no such command: ${name}; expected one of ${Object.keys(COMMANDS).join(', ')}\n\n${USAGE}`);
  await command(rest);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  const expected = error instanceof InputError || error instanceof SettingError || error instanceof NoWeatherError || error instanceof StoreError || error instanceof TelegramStoppedError;
  console.error(expected ? `duskward: ${error.message}` : error);
  process.exitCode = 1;
});
