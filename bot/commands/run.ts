import { readSettings } from '../../config/settings.js';
import { runApp } from '../app.js';
import type { ConsoleHouse } from '../console-house.js';
import { readOptions } from './options.js';

export const RUN_USAGE = `duskward run [--describe]
  The assistant. Settings come from the environment (see README); without a Telegram token it talks on the console about the demo greenhouse, or the file in DUSKWARD_GREENHOUSE.
  --describe   on the console: a greenhouse that you describe by talking`;

/** Work under way is finished first; whoever hangs longer than this is left. */
const LONGEST_GOODBYE_MS = 10_000;

export async function run(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { describe: { type: 'boolean' } }, RUN_USAGE);
  if (options.help) return void console.log(RUN_USAGE);
  const settings = readSettings(process.env);
  const stopping = new AbortController();
  for (const signal of ['SIGTERM', 'SIGINT'] as const) {
    process.once(signal, () => {
      stopping.abort();
      // Unfinished updates are not confirmed and come again: leaving loses nothing.
      setTimeout(() => process.exit(1), LONGEST_GOODBYE_MS).unref();
    });
  }
  await runApp(settings, { streams: { input: process.stdin, output: process.stdout }, house: consoleHouse(options.describe === true, settings.DUSKWARD_GREENHOUSE) }, stopping.signal);
}

function consoleHouse(isDescribed: boolean, path: string | null): ConsoleHouse {
  if (isDescribed) return { kind: 'described' };
  return path === null ? { kind: 'demo' } : { kind: 'file', path };
}
