import { readSettings } from '../../config/settings.js';
import { runConsole } from '../app.js';
import { readOptions } from './options.js';

export const RUN_USAGE = 'duskward run\n  The assistant. Settings come from the environment (see README); with none set it talks on the console about the demo greenhouse.';

export async function run(words: readonly string[]): Promise<void> {
  if (readOptions(words, {}, RUN_USAGE).help) return void console.log(RUN_USAGE);
  await runConsole(readSettings(process.env), { input: process.stdin, output: process.stdout });
}
