import { readFileSync } from 'node:fs';
import { checkBoxCase, type BoxCase } from '../box/box-case.js';
import { runBox, type BoxRun } from '../box/box-run.js';
import { readWeatherYear, type WeatherYear } from '../box/weather-year.js';
import { outsideCsv, outsideJson } from '../outside-data.js';
import { once } from '../rc-network.js';

export type EditionYear = 2017 | 2020;
export type CaseName = '600FF' | '900FF';
export const CASE_NAMES: readonly CaseName[] = ['600FF', '900FF'];

/** A description file of this folder. */
export function describedCase(name: string, edition: EditionYear): BoxCase {
  const check = checkBoxCase(JSON.parse(readFileSync(new URL(`${name}-${edition}.json`, import.meta.url), 'utf8')));
  if (!check.ok) throw new Error(check.faults.join('\n'));
  return check.boxCase;
}

type ByProgram = Readonly<Record<string, readonly number[]>>;
interface AnnualOfProgram { readonly min?: number; readonly mean?: number; readonly max?: number }

/** Results of the programs as their file has them; only the fields that are read. */
interface ResultsFile {
  readonly annual: Readonly<Record<CaseName, Readonly<Record<string, AnnualOfProgram>>>>;
  readonly hourly_feb1?: Readonly<Record<CaseName, ByProgram>>;
  readonly hourly?: Readonly<Record<string, ByProgram>>;
  readonly annual_incident_kwh_m2?: Readonly<Record<string, Readonly<Record<string, number>>>>;
  readonly annual_transmitted_kwh_m2?: Readonly<Record<string, Readonly<Record<string, number>>>>;
}

export interface Edition {
  readonly source: 'ASHRAE140-2017' | 'ASHRAE140-2020';
  readonly edition: EditionYear;
  readonly origin: string;
  readonly results: ResultsFile;
  readonly weather: WeatherYear;
  /** First hour (index) of the day that is given hour by hour, and its name. */
  readonly day: { readonly first: number; readonly name: string };
  readonly hourly: (name: CaseName) => ByProgram;
  /** Programs that run an hour or two behind the others: left out of hourly means. */
  readonly lagging: readonly string[];
  /** Index of the hour in which the year is coldest inside. */
  readonly coldest: { readonly index: number; readonly name: string };
  readonly run: (name: CaseName) => BoxRun;
}

/** What both editions are asked for, and where their files come from. */
const GIVEN = [
  {
    source: 'ASHRAE140-2020', edition: 2020, results: 'box-cases/free-float-2020.json', weather: 'weather/725650TYCST.csv', day: { first: 31 * 24, name: '1 February' }, coldest: { index: (31 + 8) * 24 + 6, name: '9 February, hour 7' }, lagging: ['BSIMAC'],
    origin: 'NREL/BESTEST-GSR (c82e3718): RESULTS5-2A and 725650TYCST.epw',
  },
  {
    source: 'ASHRAE140-2017', edition: 2017, results: 'box-cases/free-float-2017.json', weather: 'weather/DRYCOLDTMY.csv', day: { first: 3 * 24, name: '4 January' }, coldest: { index: 3 * 24 + 6, name: '4 January, hour 7' }, lagging: [],
    origin: 'lbl-srg/modelica-buildings (47ef526685): ASHRAE140_data.dat; NREL/BESTEST-GSR (c82e3718): DRYCOLDTMY.epw',
  },
] as const;

export const ORIGINS = GIVEN.map(({ source, origin }) => ({ source, origin }));

/** The editions whose outside files are there. */
export const editions: readonly Edition[] = GIVEN.flatMap(({ source, edition, results: resultsPath, weather: weatherPath, day, coldest, lagging, origin }): readonly Edition[] => {
  const results = outsideJson(resultsPath) as ResultsFile | null;
  const columns = outsideCsv(weatherPath);
  if (!results || !columns) return [];
  const weather = readWeatherYear(columns);
  const runs: Readonly<Record<CaseName, () => BoxRun>> = { '600FF': once(() => runBox(describedCase('600FF', edition), weather)), '900FF': once(() => runBox(describedCase('900FF', edition), weather)) };
  const hourly = (name: CaseName): ByProgram => results.hourly_feb1?.[name] ?? results.hourly![`${name}, JAN 4`]!;
  return [{ source, edition, origin, results, weather, day, coldest, lagging, hourly, run: (name) => runs[name]() }];
});

/** Lowest and highest of what the programs found. */
export function rangeOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  return { low: Math.min(...values), high: Math.max(...values) };
}

/** What each program found for a case and figure, with its name; some did not give all. */
export function annualByProgram({ results }: Edition, name: CaseName, figure: keyof AnnualOfProgram): ReadonlyMap<string, number> {
  const entries = Object.entries(results.annual[name]).filter(([program]) => program !== 'range');
  return new Map(entries.flatMap(([program, annual]) => (annual[figure] === undefined ? [] : [[program, annual[figure]] as const])));
}
