import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { expect, it } from 'vitest';
import { startBotApi } from '../../../fixtures/bot-api/server.js';
import { GROWER, until } from './telegram-rig.js';
import { scriptWords } from '../../../fixtures/script.js';

const KILLS = 6;
const MESSAGES_A_LIFE = 40;

it(`${KILLS} stops at any moment, hard and soft, lose no message and keep their order`, async () => {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-listener-'));
  const file = join(folder, 'journal');
  const api = await startBotApi();
  const start = (): ChildProcess => spawn(process.execPath, [...scriptWords('tests/bot/channels/telegram/listener.ts'), api.url, api.token, file], { stdio: ['ignore', 'ignore', 'inherit'] });
  const journal = (): readonly string[] => (existsSync(file) ? readFileSync(file, 'utf8').split('\n').slice(0, -1) : []);
  let said = 0;
  for (let life = 0; life < KILLS; life++) {
    for (let i = 0; i < MESSAGES_A_LIFE; i++) api.act({ do: 'says', person: GROWER, text: String(said++) });
    const [child, before] = [start(), journal().length];
    await until('it is at work', () => journal().length >= before + 5);
    // A different moment within the work on a message each time.
    await sleepMs(life * 1.7);
    child.kill(life % 2 === 0 ? 'SIGKILL' : 'SIGTERM');
    await once(child, 'exit');
  }
  expect(api.pending()).toBeGreaterThan(0);
  const last = start();
  await until('all are confirmed', () => api.pending() === 0);
  last.kill('SIGTERM');
  expect((await once(last, 'exit'))[0]).toBe(0);
  const firsts = [...new Set(journal())];
  expect(firsts).toEqual(Array.from({ length: said }, (_, i) => String(i)));
  await api.close();
  rmSync(folder, { recursive: true });
});
