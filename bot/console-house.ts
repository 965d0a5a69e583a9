import { readFile, stat } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import type { ChatAddress } from './chat.js';
import { readGreenhouse } from './commands/read-input.js';
import type { Memory } from './journal.js';
import type { Clock } from './ports.js';
import { jobsOfDay } from './schedule/day-jobs.js';
import { dateOf } from './schedule/day-times.js';
import { movingTheDay } from './schedule/moved-day.js';
import { zoneOf } from './time-zone.js';

export const DEMO_GREENHOUSE = fileURLToPath(new URL('../config/demo/greenhouse.json', import.meta.url));

/** What the console speaks of: the demo, a greenhouse file, or one that is described by talking. Each keeps its own chat. */
export type ConsoleHouse = { readonly kind: 'demo' } | { readonly kind: 'file'; readonly path: string } | { readonly kind: 'described' };

const chatOf = ({ kind }: ConsoleHouse): ChatAddress => ({ channel: 'console', chat: kind });

export interface OpenedConsole {
  readonly address: ChatAddress;
  /** False while the greenhouse is still to be described. */
  readonly hasHouse: boolean;
}

/** Opens the console's chat with its greenhouse and the work of its day. A file that is newer than what was said of the house since counts; an older one does not undo what was said. */
export async function openConsoleHouse(house: ConsoleHouse, { memory, clock }: { memory: Memory; clock: Clock }): Promise<OpenedConsole> {
  const nowS = Math.floor(clock.nowS());
  const address = chatOf(house);
  const chat = await memory.openChat(address, { isGroup: false, atS: nowS });
  if (house.kind === 'described') return { address, hasHouse: chat.greenhouseId !== null };
  const path = house.kind === 'file' ? house.path : DEMO_GREENHOUSE;
  const greenhouse = await readGreenhouse(path);
  const greenhouseId = `console-${house.kind}`;
  const stored = await memory.greenhouse(greenhouseId);
  const isNewer = stored === null || (await stat(path)).mtimeMs / 1000 > stored.savedAtS;
  if (isNewer) await movingTheDay(memory, nowS).saveGreenhouse({ id: greenhouseId, body: await readFile(path, 'utf8'), savedAtS: nowS });
  await memory.updateChat(chat.id, { greenhouseId });
  const zone = zoneOf(greenhouse);
  for (const job of jobsOfDay(greenhouseId, greenhouse, zone, dateOf(nowS, zone))) if (job.dueAtS > nowS) await memory.addJob(job);
  return { address, hasHouse: true };
}
