import Database from 'better-sqlite3';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { runAssistant } from '../../../bot/assistant.js';
import { realTime } from '../../../bot/channels/telegram/real-time.js';
import { workOutHere, type WorkedOutEvening, type WorkOut } from '../../../bot/features/evening/work-out-evening.js';
import { placeKeyOf } from '../../../bot/greenhouse-place.js';
import type { Memory } from '../../../bot/journal.js';
import { describer } from '../../../bot/post/describe-reply.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import type { WorldMessage } from '../../fixtures/bot-api/chat-world.js';
import type { Act } from '../../fixtures/bot-api/people.js';
import { startBotApi } from '../../fixtures/bot-api/server.js';
import type { BotApi } from '../../fixtures/bot-api/stand-in.js';
import { startHostileWeather } from '../../fixtures/hostile-weather.js';
import { composed } from '../../soak/composed.js';
import { modelEvening } from '../../soak/quick-evening.js';
import { settle } from '../../soak/world.js';
import { storeFolder } from '../store/store-folder.js';
import type { Neighbour } from './neighbours.js';
import { tellingEvening, tellingWeek } from './telling-evening.js';

/** The running assistant and its growers, on a clock that the test turns. */
export interface Town {
  readonly api: BotApi;
  readonly memory: Memory;
  readonly nowS: () => number;
  /** Does it, and waits for all that comes of it: what was sent to that chat. */
  does(what: Act): Promise<readonly WorldMessage[]>;
  says(chat: number, text: string): Promise<string>;
  /** Hands the assistant an update that no well-behaved program would send, and waits for what comes of it. */
  gets(chat: number, kind: 'message' | 'callback_query', body: object): Promise<readonly WorldMessage[]>;
  /** Lets time pass, with all that becomes due in it. */
  passes(hours: number): Promise<void>;
  /** From now on every evening takes until `let` is called; `asked` resolves once somebody waits for one. */
  holdEvenings(): { readonly asked: Promise<void>; readonly let: () => void };
  until(isSo: () => Promise<boolean>): Promise<void>;
  /** What the assistant logged as an error. */
  readonly errors: readonly string[];
  /** Every row of every table, as text. */
  rows(): string;
  close(): Promise<void>;
}

/** A second of the service's own waiting lasts so much less. */
const QUICKER = 1_000;
const TICK_EVERY_MS = 5;
const HOUR_S = 3600;
const LONGEST_MS = 20_000;
const LOOK_MS = 2;

/** Worked out once: what tells of its house is replaced. */
let model: Promise<WorkedOutEvening> | undefined;

export async function startTown(startS: number, neighbours: readonly Neighbour[], strangers: readonly number[] = []): Promise<Town> {
  const folder = storeFolder();
  let atS = startS;
  const nowS = (): number => atS;
  model ??= modelEvening(neighbours[0]!, startS, workOutHere);
  await settle(folder.path, neighbours, startS);
  const [api, weather] = await Promise.all([startBotApi({ nowS, privacy: false }), startHostileWeather({ nowS })]);
  for (const { chat } of neighbours) api.world.chat(chat).state = 'open';
  const memory = await openSqliteStore({ path: folder.path, placeKeyOf });
  const errors: string[] = [];
  const log = { info: () => undefined, warn: () => undefined, error: (event: string, fields?: Record<string, unknown>) => void errors.push(`${event} ${String(fields?.['error'])}`) };
  const time = { nowMs: () => realTime.nowMs() * QUICKER, sleepMs: (ms: number, signal?: AbortSignal) => realTime.sleepMs(ms / QUICKER, signal) };
  const clock = { nowS };
  const evening = tellingEvening(await model);
  let held: { readonly begun: () => void; readonly over: Promise<void> } | null = null;
  const workOut: WorkOut = async (question) => {
    held?.begun();
    await held?.over;
    return evening(question);
  };
  const rooms = composed({ memory, clock, clockSpeed: 60_000 / TICK_EVERY_MS, log, workOut, workOutWeek: tellingWeek, telegram: { token: api.token, apiRoot: api.url, time }, weatherUrl: weather.url });
  const places = { placesCalled: (town: string) => Promise.resolve(neighbours.map((one) => one.town).filter(({ name }) => name.toLowerCase() === town.toLowerCase())) };
  const stop = new AbortController();
  const ended = runAssistant({ ...rooms.ports, describe: describer({ ...rooms.ports, places }) }, stop.signal);
  ended.catch((error: unknown) => void errors.push(String(error)));

  const chats = (): readonly number[] => [...neighbours.map(({ chat }) => chat), ...strangers];
  const isQuiet = async (): Promise<boolean> => {
    if (api.pending() > 0 || (await memory.dueJobs(atS, 1)).length > 0) return false;
    const unsettled = await Promise.all(chats().map((chat) => memory.isUnsettled({ channel: 'telegram', chat: String(chat) }, atS)));
    return !unsettled.includes(true);
  };
  async function until(isSo: () => Promise<boolean>): Promise<void> {
    for (const endMs = performance.now() + LONGEST_MS; !(await isSo()); ) {
      if (performance.now() > endMs) throw new Error(`expected it to become so, it does not: ${errors.join('; ')}`);
      await sleepMs(LOOK_MS);
    }
  }
  const settled = (): Promise<void> => until(isQuiet);
  async function answered(chat: number, act: () => void): Promise<readonly WorldMessage[]> {
    const before = api.sentTo(chat).length;
    atS += 1;
    act();
    await settled();
    return api.sentTo(chat).slice(before);
  }
  const does = (what: Act): Promise<readonly WorldMessage[]> => answered(what.chat ?? what.person, () => void api.act(what));
  return {
    api,
    memory,
    nowS,
    errors,
    does,
    until,
    holdEvenings: () => {
      let [begun, end] = [() => {}, () => {}];
      const asked = new Promise<void>((resolve) => (begun = resolve));
      held = { begun, over: new Promise((resolve) => (end = resolve)) };
      return {
        asked,
        let: () => {
          held = null;
          end();
        },
      };
    },
    says: async (chat, text) => (await does({ do: 'says', person: chat, text })).map((message) => message.text).join('\n'),
    gets: (chat, kind, body) => answered(chat, () => void api.world.queue.push(kind, body, { chat, dateS: atS })),
    passes: async (hours) => {
      const untilS = atS + hours * HOUR_S;
      for (let next = nextDueS(folder.path); next !== null && next <= untilS; next = nextDueS(folder.path)) {
        atS = Math.max(atS, next);
        await settled();
      }
      atS = untilS;
      await settled();
    },
    rows: () => rowsOf(folder.path),
    close: async () => {
      stop.abort();
      await ended;
      await rooms.close();
      await memory.close();
      await Promise.all([api.close(), weather.close()]);
      folder.remove();
    },
  };
}

function reading<T>(path: string, ask: (file: Database.Database) => T): T {
  const file = new Database(path, { readonly: true });
  try {
    return ask(file);
  } finally {
    file.close();
  }
}

const nextDueS = (path: string): number | null => reading(path, (file) => file.prepare<[], { due: number | null }>("select min(due_at_s) as due from job where state = 'open'").get()!.due);

const rowsOf = (path: string): string =>
  reading(path, (file) => {
    const tables = file.prepare<[], { name: string }>("select name from sqlite_master where type = 'table'").all();
    return tables.map(({ name }) => `${name}: ${JSON.stringify(file.prepare(`select * from "${name}"`).all())}`).join('\n');
  });
