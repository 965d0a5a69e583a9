/** A process to be killed: writes readings from the given number on, and acknowledges each on its own line once it is stored. */
import { writeSync } from 'node:fs';
import { sqliteStore } from '../../../bot/store/sqlite-store.js';

const [file = '', from = '0'] = process.argv.slice(2);
const store = await sqliteStore(file);
for (let n = Number(from); ; n += 1) {
  const reading = await store.addReading({ greenhouseId: 'north', receivedAtS: n, validAtS: n, place: 'inside', statistic: 'low', tempC: -n / 100, text: String(n) });
  // Straight to the pipe: a line that waits in this process's memory would not be an acknowledgement.
  writeSync(1, `${reading.text}\n`);
}
