import { readSettings } from '../../config/settings.js';
import { runConsole } from '../app.js';
import { runService } from '../service.js';
import { readOptions } from './options.js';

export const RUN_USAGE = 'duskward run\n  The assistant. Settings come from the environment (see README); with none set it talks on the console about the demo greenhouse.';

/** Work under way is finished first; whoever hangs longer than this is left. */
const LONGEST_GOODBYE_MS = 10_000;

export async function run(words: readonly string[]): Promise<void> {
  if (readOptions(words, {}, RUN_USAGE).help) return void console.log(RUN_USAGE);
  const settings = readSettings(process.env);
  if (settings.DUSKWARD_TELEGRAM_TOKEN === null) return runConsole(settings, { input: process.stdin, output: process.stdout });
  const stopping = new AbortController();
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      stopping.abort();
      // Unfinished updates are not confirmed and come again: leaving loses nothing.
      setTimeout(() => process.exit(1), LONGEST_GOODBYE_MS).unref();
    });
  }
  await runService(settings, stopping.signal);
}
