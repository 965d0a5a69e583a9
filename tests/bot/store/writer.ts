/**
 * Run as a process of its own: opens the store at argv[2], then adds readings for ever, correcting and withdrawing some.
 * Each line on standard output acknowledges a promise that has resolved.
 */
import { writeSync } from 'node:fs';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';

const STDOUT = 1;
const AT_S = 1_768_424_400;
const [, , path = '', round = '', mode = 'write'] = process.argv;
// Synchronous: a line that was written is in the pipe, whatever happens to the process next.
const acknowledge = (...words: readonly (string | number)[]): void => void writeSync(STDOUT, `${words.join(' ')}\n`);

acknowledge('opening');
try {
  const store = await openSqliteStore({ path });
  acknowledge('open');
  if (mode === 'hold') setInterval(() => undefined, 60_000);
  for (let n = 0; mode === 'write'; n++) {
    const row = { greenhouseId: 'hill', receivedAtS: AT_S + n, validAtS: AT_S + n, place: 'inside', statistic: 'low', tempC: n / 8, text: `round-${round}-reading-${n}` } as const;
    const added = await store.addReading(row);
    acknowledge('added', added.id, row.text);
    if (n % 3 === 1) {
      const replacement = await store.replaceReading(added.id, { ...row, text: `${row.text}-corrected` });
      acknowledge('replaced', added.id, replacement.id);
    }
    if (n % 5 === 2) {
      const standing = await store.readings('hill', 1);
      const last = standing[0];
      if (last === undefined) throw new Error('expected the reading that was just added to stand, got none');
      await store.withdrawReading(last.id, AT_S + n);
      acknowledge('withdrawn', last.id);
    }
  }
} catch (error) {
  acknowledge('failed', (error as { code?: string }).code ?? 'unknown', String(error));
  process.exitCode = 1;
}
