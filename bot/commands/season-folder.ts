import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { InputError } from './input-error.js';
import { readJson } from './read-input.js';

/** One evening of a season: the forecast as it was issued. */
export interface SeasonEvening {
  readonly night: number;
  readonly date: string;
  readonly issuedS: number;
  readonly response: unknown;
}

/** A season as its folder holds it: text is left as the grower's log has it. */
export interface SeasonFolder {
  readonly name: string;
  readonly evenings: readonly SeasonEvening[];
  readonly actions: readonly Cells[];
  readonly readings: readonly Cells[];
  /** What is wrong with each reading, in their order; null where the folder does not tell. Read for scores alone. */
  readonly slips: readonly (string | null)[] | null;
  /** Lows that came, by night; null where the folder comes without. Read for scores alone. */
  readonly truth: readonly Cells[] | null;
  readonly floor: readonly Cells[] | null;
}

export type Cells = Readonly<Record<string, string>>;

const Evenings = z.array(z.object({ night: z.int(), date: z.string(), issued_unix: z.int(), response: z.unknown() })).min(1);

const SLIP = 'hidden_gross';

/** A season's folder, or a message that says what it lacks. */
export async function readSeason(folder: string): Promise<SeasonFolder> {
  const parsed = Evenings.safeParse(await readJson(join(folder, 'forecasts.json'), 'the forecasts of the season'));
  if (!parsed.success) throw new InputError(`${join(folder, 'forecasts.json')}: expected a list of evenings with night, date, issued_unix and response, got ${parsed.error.issues[0]?.message ?? 'something else'}`);
  const table = (name: string): Promise<readonly Cells[]> => readTable(join(folder, name));
  const optional = async (name: string): Promise<readonly Cells[] | null> => (existsSync(join(folder, name)) ? table(name) : null);
  const readings = await table('readings.csv');
  return {
    name: folder.replace(/\/+$/u, '').split('/').at(-1)!,
    evenings: parsed.data.map(({ night, date, issued_unix, response }) => ({ night, date, issuedS: issued_unix, response })),
    actions: await table('actions.csv'),
    readings: readings.map((cells) => Object.fromEntries(Object.entries(cells).filter(([name]) => !name.startsWith('hidden_')))),
    slips: readings[0] !== undefined && SLIP in readings[0] ? readings.map((cells) => cells[SLIP] || null) : null,
    truth: await optional('truth.csv'),
    floor: await optional('floor.csv'),
  };
}

async function readTable(path: string): Promise<readonly Cells[]> {
  let text: string;
  try {
    text = await readFile(path, 'utf8');
  } catch (error) {
    throw new InputError(`${path}: expected a table that can be read, got ${(error as NodeJS.ErrnoException).code ?? String(error)}. Check the folder of the season.`);
  }
  const [head, ...lines] = text.trim().split('\n').map(cellsOfLine);
  return lines.map((cells) => Object.fromEntries(head!.map((name, i) => [name, cells[i] ?? ''])));
}

/** Cells of one line; a cell in double quotes may hold commas. */
const cellsOfLine = (line: string): readonly string[] => [...line.matchAll(/(?:^|,)(?:"([^"]*)"|([^,]*))/gu)].map(([, quoted, plain]) => (quoted ?? plain ?? '').trim());
