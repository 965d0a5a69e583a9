import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readSettings } from '../../config/settings.js';
import { keptIn } from '../channels/console/kept-files.js';
import { openConsoleHouse, type ConsoleHouse } from '../console-house.js';
import { clockFrom } from '../from-settings.js';
import { createLog } from '../log.js';
import { INVENTED_TOWNS } from '../play/invented-towns.js';
import { movingClock } from '../play/moving-clock.js';
import { openPlay } from '../play/open-play.js';
import { openSqliteStore } from '../store/sqlite-store.js';
import { CONSOLE_WORDS } from '../text/console-text.js';
import { PLAY_WORDS } from '../text/play-text.js';
import { nightThreads } from '../threads/night-threads.js';
import { InputError } from './input-error.js';
import { readOptions } from './options.js';

export const PLAY_USAGE = `duskward play [--describe] [--greenhouse FILE]
  For trying it out: the conversation on the console about the demo greenhouse or a file, under invented weather, on a clock that stands until you move it ("next evening", "in 3 hours"). Keeps nothing.
  --describe          a greenhouse that you describe by talking, near an invented town
  --greenhouse FILE   your own greenhouse file`;

export async function play(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { describe: { type: 'boolean' }, greenhouse: { type: 'string' } }, PLAY_USAGE);
  if (options.help) return void console.log(PLAY_USAGE);
  if (options.describe && options.greenhouse !== undefined) throw new InputError(`--describe begins without a greenhouse: leave out --greenhouse\n${PLAY_USAGE}`);
  const house: ConsoleHouse = options.describe ? { kind: 'described' } : options.greenhouse === undefined ? { kind: 'demo' } : { kind: 'file', path: options.greenhouse };
  const settings = readSettings(process.env);
  const log = createLog(settings.DUSKWARD_LOG!);
  const clock = movingClock(clockFrom(settings, log).nowS());
  const leaving = new AbortController();
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, () => leaving.abort());
  const memory = await openSqliteStore({ path: ':memory:' });
  const threads = nightThreads();
  try {
    const { address, hasHouse } = await openConsoleHouse(house, { memory, clock });
    const towns = INVENTED_TOWNS.map(({ name, region }) => `${name}, ${region}`);
    const listen = openPlay({ memory, clock, threads, log, zone: Intl.DateTimeFormat().resolvedOptions().timeZone }, [
      {
        address,
        input: process.stdin,
        output: process.stdout,
        firstWords: hasHouse ? CONSOLE_WORDS.tonight : CONSOLE_WORDS.begin,
        greeting: hasHouse ? PLAY_WORDS.greeting : [PLAY_WORDS.towns(towns), PLAY_WORDS.greeting].join('\n'),
        farewell: CONSOLE_WORDS.farewell,
        keepFile: keptIn(join(tmpdir(), 'duskward-play'), CONSOLE_WORDS),
        left: () => undefined,
      },
    ]);
    await listen(leaving.signal);
  } finally {
    await threads.close();
    await memory.close();
  }
}
