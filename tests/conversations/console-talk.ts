import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough, Writable } from 'node:stream';
import type { ChatAddress } from '../../bot/chat.js';
import { openConsoleHouse, type ConsoleHouse } from '../../bot/console-house.js';
import { movingClock } from '../../bot/play/moving-clock.js';
import { openPlay, type Player } from '../../bot/play/open-play.js';
import { openSqliteStore } from '../../bot/store/sqlite-store.js';
import type { NightThreads } from '../../bot/threads/night-threads.js';
import type { Person } from './console-transcript.js';

const START_S = Date.parse('2026-11-25T14:00:00-05:00') / 1000;
const ZONE = 'America/Toronto';
/** Small and without devices, so that an evening is worked out quickly. */
const PLAIN_HOUSE = {
  name: 'Plain House',
  place: { latitude: 45.1, longitude: -72.2, elevation: 180, timeZone: ZONE },
  size: { width: 4, length: 8, height: 2.4 },
  layers: [{ film: 'standard' }],
  beds: [{ name: 'the bed', area: 10, crops: ['lettuce'], cover: { kind: 'fabric', weight: 50 } }],
};
const SECOND: ChatAddress = { channel: 'console', chat: 'second' };
const PROMPT = '> ';

export interface ConsoleTalk {
  /** Types a line, and returns when the prompt is back. */
  types(person: Person, line: string): Promise<void>;
  /** What stands on a person's screen since anybody typed. */
  heard(person: Person): string;
  /** Faults that were logged. */
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** One or two people at consoles; null: their greenhouse is still to be described. The first words are said to begin with. */
export async function openTalk({ house, people, firstWords, threads }: { house: Readonly<Record<string, unknown>> | null; people: number; firstWords: string; threads: NightThreads }): Promise<ConsoleTalk> {
  const folder = mkdtempSync(join(tmpdir(), 'duskward-talk-'));
  const memory = await openSqliteStore({ path: ':memory:' });
  const clock = movingClock(START_S);
  const faults: string[] = [];
  const fault = (event: string, fields?: Record<string, unknown>): void => {
    const error = fields?.['error'];
    faults.push(error instanceof Error ? `${event}: ${error.message}` : event);
  };
  const { address } = await openConsoleHouse(houseIn(folder, house), { memory, clock });
  const seats = [seat(address, firstWords), seat(SECOND, 'start')].slice(0, people);
  const stop = new AbortController();
  const listening = openPlay({ memory, clock, threads, zone: ZONE, log: { info: () => undefined, warn: fault, error: fault } }, seats.map(({ player }) => player))(stop.signal);
  await Promise.all(seats.map(({ screen }) => screen.prompts(1)));
  return {
    faults,
    types: async (person, line) => {
      for (const { screen } of seats) screen.wipe();
      await seats[person - 1]!.types(line);
    },
    heard: (person) => seats[person - 1]?.screen.text ?? '',
    close: async () => {
      stop.abort();
      for (const { player } of seats) (player.input as PassThrough).end();
      await listening;
      await memory.close();
      rmSync(folder, { recursive: true });
    },
  };
}

function houseIn(folder: string, house: Readonly<Record<string, unknown>> | null): ConsoleHouse {
  if (house === null) return { kind: 'described' };
  const path = join(folder, 'house.json');
  writeFileSync(path, JSON.stringify({ ...PLAIN_HOUSE, ...house }));
  return { kind: 'file', path };
}

/** What a console shows; each prompt is written by itself. */
class Screen extends Writable {
  text = '';
  private prompted = 0;
  private waiting: (() => void)[] = [];

  override _write(chunk: Buffer, _encoding: string, done: () => void): void {
    const text = chunk.toString('utf8');
    if (text === PROMPT) this.prompted += 1;
    else this.text += text;
    for (const look of this.waiting) look();
    done();
  }

  wipe(): void {
    this.text = '';
  }

  /** Resolves when so many more prompts have come. */
  prompts(more: number, from = this.prompted): Promise<void> {
    return new Promise((resolve) => {
      const look = (): void => {
        if (this.prompted < from + more) return;
        this.waiting = this.waiting.filter((one) => one !== look);
        resolve();
      };
      this.waiting.push(look);
      look();
    });
  }
}

function seat(address: ChatAddress, firstWords: string): { readonly screen: Screen; readonly player: Player; types(line: string): Promise<void> } {
  const screen = new Screen();
  const input = new PassThrough();
  const words = { greeting: '', farewell: '', keepFile: () => Promise.resolve(null), left: () => undefined };
  return {
    screen,
    player: { address, input, output: screen, firstWords, ...words },
    types: async (line) => {
      const prompted = screen.prompts(1);
      input.write(`${line}\n`);
      await prompted;
    },
  };
}
