import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runAssistant } from '../../../bot/assistant.js';
import type { TelegramChannel } from '../../../bot/channels/telegram/channel.js';
import { workOutWeekHere } from '../../../bot/threads/week-work.js';
import { workOutHere, type WorkOut } from '../../../bot/features/evening/work-out-evening.js';
import type { Memory } from '../../../bot/journal.js';
import { openSqliteFile, type SqliteFile } from '../../../bot/store/open-sqlite.js';
import { memoryOn } from '../../../bot/store/sqlite-store.js';
import { composed } from '../../soak/composed.js';
import { modelEvening, quickEvening } from '../../soak/quick-evening.js';
import { grower, settle, startWorld, within, type Grower, type World } from '../../soak/world.js';

export interface Running {
  readonly world: World;
  readonly growers: readonly Grower[];
  readonly path: string;
  readonly file: SqliteFile;
  readonly memory: Memory;
  readonly channel: TelegramChannel;
  readonly counted: readonly string[];
  /** Works evenings out; quickly unless told otherwise. */
  workOut: WorkOut;
  /** Sees each text before it is answered, and may throw. */
  beforeAnswer: (text: string) => void;
  says(n: number, text: string): void;
  /** What a grower got, in order. */
  heard(n: number): readonly string[];
  /** What of it begins so. */
  heardOf(n: number, beginning: string): readonly string[];
  close(): Promise<void>;
}

/** How long a write waits for another program: long enough to be seen, short enough for a test. */
const BUSY_MS = 50;
const STARTS_WITHIN_MS = 10_000;

/** The assistant at work in this process, over the stand-ins of its services, with a file as its database. */
export async function startRunning({ startS, speed, growers: howMany = 2 }: { readonly startS: number; readonly speed: number; readonly growers?: number }): Promise<Running> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-running-'));
  const path = join(folder, 'duskward.sqlite');
  const growers = Array.from({ length: howMany }, (_, n) => grower(n));
  const model = await modelEvening(growers[0]!, startS, workOutHere);
  const world = await startWorld({ startS, speed });
  await settle(path, growers, startS);
  for (const { chat } of growers) world.api.world.chat(chat).state = 'open';
  const file = openSqliteFile(path, BUSY_MS);
  const memory = await memoryOn(file);
  const counted: string[] = [];
  const log = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const rooms = composed({ memory, clock: world, clockSpeed: speed, log, workOut: (question) => running.workOut(question), workOutWeek: workOutWeekHere, telegram: { token: world.api.token, apiRoot: world.api.url }, weatherUrl: world.weather.url, count: (event) => void counted.push(event) });
  const stop = new AbortController();
  const heard = (n: number): readonly string[] => world.api.sentTo(growers[n]!.chat).map(({ text }) => text);
  const running: Running = {
    world,
    growers,
    path,
    file,
    memory,
    channel: rooms.ports.channels.get('telegram') as TelegramChannel,
    counted,
    workOut: quickEvening(model),
    beforeAnswer: () => undefined,
    says: (n, text) => void world.api.act({ do: 'says', person: growers[n]!.chat, text }),
    heard,
    heardOf: (n, beginning) => heard(n).filter((text) => text.startsWith(beginning)),
    close: async () => {
      stop.abort();
      await ended;
      await rooms.close();
      await memory.close();
      await world.close();
      rmSync(folder, { recursive: true });
    },
  };
  const { describe } = rooms.ports;
  const change: typeof describe.change = async (text, chat) => {
    running.beforeAnswer(text);
    return describe.change(text, chat);
  };
  const ended = runAssistant({ ...rooms.ports, describe: { ...describe, change } }, stop.signal);
  ended.catch(() => undefined);
  if (!(await within(STARTS_WITHIN_MS, world.api.isPolled))) throw new Error('expected it to listen, it does not');
  return running;
}
