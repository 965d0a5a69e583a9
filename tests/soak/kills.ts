import Database from 'better-sqlite3';
import { DateTime } from 'luxon';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleepMs } from 'node:timers/promises';
import { dayTimes } from '../../bot/schedule/day-times.js';
import { nightThreads } from '../../bot/threads/night-threads.js';
import { seeded } from '../bot/store/seeded.js';
import { startAssistant, type AssistantProcess } from './assistant-process.js';
import { modelEvening, quickWords } from './quick-evening.js';
import type { Report } from './report.js';
import { grower, settle, startWorld, within, type Grower, type World } from './world.js';

const START_S = Date.parse('2026-11-25T09:00:00Z') / 1000;
const GROWERS = 6;
const SEED = 20_261_125;
/** Fast enough for many nights, slow enough for an evening message to be late by a start and still of use. */
const SPEED = 300;
const STARTS_WITHIN_MS = 60_000;
/** A life after it listens, at most. */
const LONGEST_LIFE_MS = 3_000;
/** The service takes a message a second in a chat, and most of the time nobody is alive to send one: more talk than this piles up before the evening messages. */
const BETWEEN_WORDS_MS = 2_000;
const ENDS_WITHIN_MS = 60_000;

/** What was said by whom, and told to be kept. */
type Said = ReadonlyMap<number, string[]>;

/** kill -9 at random moments of a day's traffic: what was said is kept once, what is due comes once, and twice only what was on its way. */
export async function killRounds(rounds: number): Promise<Report> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-kills-'));
  const database = join(folder, 'duskward.sqlite');
  const model = join(folder, 'evening.json');
  const growers = Array.from({ length: GROWERS }, (_, n) => grower(n));
  const threads = nightThreads(1);
  writeFileSync(model, JSON.stringify(await modelEvening(growers[0]!, START_S, threads.workOut)));
  await threads.close();
  await settle(database, growers, START_S);
  const world = await startWorld({ startS: START_S, speed: SPEED });
  for (const { chat } of growers) world.api.world.chat(chat).state = 'open';
  const start = (): AssistantProcess => startAssistant(['tests/soak/quick-main.ts', model], world.settings(database));
  const said: Said = new Map(growers.map(({ chat }) => [chat, []]));
  const talk = new AbortController();
  const talking = keepTalking(world, said, talk.signal);
  const random = seeded(SEED);
  const onTheirWay = new Set<string>();
  const errors: string[] = [];
  try {
    for (let round = 0; round < rounds; round += 1) {
      const life = start();
      if (!(await within(STARTS_WITHIN_MS, () => world.api.isPolled() || life.isOver()))) throw new Error('expected it to listen, it does not');
      await sleepMs(random() * LONGEST_LIFE_MS);
      await life.kill('SIGKILL');
      errors.push(...life.errors);
      for (const key of sendingIn(database)) onTheirWay.add(key);
      await within(1_000, () => !world.api.isPolled());
    }
    talk.abort();
    await talking;
    const last = start();
    if (!(await within(STARTS_WITHIN_MS, () => world.api.isPolled() || last.isOver()))) throw new Error('expected it to listen, it does not');
    if (!(await within(ENDS_WITHIN_MS, () => world.api.pending() === 0 && isSettled(database)))) errors.push('it does not come to rest');
    const endS = world.nowS();
    const { code } = await last.kill('SIGTERM');
    errors.push(...last.errors, ...(code === 0 ? [] : [`ended with ${code}`]));
    return judged({ world, database, growers, said, onTheirWay, errors, rounds, endS });
  } finally {
    talk.abort();
    await world.close();
    rmSync(folder, { recursive: true });
  }
}

/** Growers tell readings all the time, each its own number after the other. */
async function keepTalking(world: World, said: Said, signal: AbortSignal): Promise<void> {
  for (let n = 0; !signal.aborted; n += 1) {
    for (const [chat, texts] of said) {
      const text = `low was -${1 + Math.floor(n / 10) % 9}.${n % 10}C`;
      texts.push(text);
      world.api.act({ do: 'says', person: chat, text });
      await sleepMs(BETWEEN_WORDS_MS);
    }
  }
}

function rows<T>(database: string, sql: string): readonly T[] {
  const file = new Database(database, { readonly: true });
  try {
    return file.prepare<[], T>(sql).all();
  } finally {
    file.close();
  }
}

const sendingIn = (database: string): readonly string[] => rows<{ key: string }>(database, "select key from outbound where state = 'sending'").map(({ key }) => key);
const isSettled = (database: string): boolean => rows<{ n: number }>(database, "select (select count(*) from outbound where finished_at_s is null) + (select count(*) from inbound where state = 'open') as n")[0]!.n === 0;

interface Lived {
  readonly world: World;
  readonly database: string;
  readonly growers: readonly Grower[];
  readonly said: Said;
  readonly onTheirWay: ReadonlySet<string>;
  readonly errors: readonly string[];
  readonly rounds: number;
  readonly endS: number;
}

function judged({ world, database, growers, said, onTheirWay, errors, rounds, endS }: Lived): Report {
  const sent = rows<{ key: string; chat: string; sentAs: string | null; state: string; text: string }>(database, "select o.key, c.chat, o.sent_as as sentAs, o.state, json_extract(o.message, '$.text') as text from outbound o join chat c on c.id = o.chat_id order by o.id");
  const known = new Set(sent.map(({ sentAs }) => sentAs));
  const arrived = world.api.world.messages.filter(({ fromBot }) => fromBot);
  // What arrived and is not the one that is marked as sent arrived twice.
  const twice = arrived.filter(({ id }) => !known.has(String(id)));
  const excused = sent.filter(({ key }) => onTheirWay.has(key));
  const unexcused = twice.filter(({ chat, text }) => !excused.some((row) => row.chat === String(chat) && row.text === text));

  const readings = growers.map(({ id, chat }) => ({ chat, texts: rows<{ text: string }>(database, `select text from reading where greenhouse_id = '${id}' order by id`).map(({ text }) => text) }));
  const lost = readings.filter(({ chat, texts }) => JSON.stringify(texts) !== JSON.stringify(said.get(chat)));
  const allSaid = [...said.values()].flat().length;

  const evenings = growers.flatMap((one) => eveningsOf(one, endS).map((night) => ({ chat: one.chat, words: quickWords(one.greenhouse.name, night) })));
  const heard = new Map<string, number>();
  for (const { chat, text } of arrived) heard.set(`${chat} ${text}`, (heard.get(`${chat} ${text}`) ?? 0) + 1);
  const missing = evenings.filter(({ chat, words }) => !heard.has(`${chat} ${words}`));
  const doubled = evenings.filter(({ chat, words }) => (heard.get(`${chat} ${words}`) ?? 0) > 1).length;
  const unmarked = sent.filter(({ state, sentAs }) => state === 'sent' && !arrived.some(({ id }) => String(id) === sentAs));
  return {
    title: `kill -9 at ${rounds} random moments (seed ${SEED}, ${GROWERS} growers, clock x${SPEED})`,
    figures: [
      ['simulated days', ((endS - START_S) / 86_400).toFixed(1)],
      ['readings said and kept', `${allSaid}`],
      ['growers whose readings are not those said, in order, each once', `${lost.length}`],
      ['evenings due', `${evenings.length}`],
      ['evening messages missing', `${missing.length}`],
      ['evening messages that came twice', `${doubled}`],
      ['messages in all', `${sent.length}`],
      ['dropped as of no use any more', `${sent.filter(({ state }) => state === 'dropped').length}`],
      ['messages that came twice', `${twice.length}`],
      ['of those not on their way when a kill came', `${unexcused.length}`],
      ['marked as sent that never arrived', `${unmarked.length}`],
    ],
    broken: [
      ...errors.map((error) => `said on standard error: ${error}`),
      ...lost.map(({ chat, texts }) => `chat ${chat}: ${said.get(chat)?.length ?? 0} readings said, ${texts.length} kept`),
      ...missing.map(({ chat, words }) => `chat ${chat} never got "${words}"`),
      ...unexcused.map(({ chat, text }) => `chat ${chat} got twice, and not because of a kill: "${text.slice(0, 60)}"`),
      ...unmarked.map(({ key }) => `marked as sent and never arrived: ${key}`),
    ],
  };
}

/** Local dates whose evening message was due, with time for it to come late. */
function eveningsOf({ greenhouse, zone }: Grower, endS: number): readonly string[] {
  const dates: string[] = [];
  for (let day = DateTime.fromSeconds(START_S, { zone }); day.toSeconds() < endS + 86_400; day = day.plus({ days: 1 })) {
    const date = day.toISODate()!;
    const times = dayTimes(greenhouse, zone, date);
    if (times.advisoryS > START_S && times.advisoryS + 3600 < endS) dates.push(date);
  }
  return dates;
}
