import { readFileSync } from 'node:fs';
import { checkBoxCase, type BoxCase } from './box-case.js';
import { runBox } from './box-run.js';
import { summaryOf, summaryText } from './box-summary.js';
import { csvColumns, firstHourOf, readWeatherYear, type WeatherYear } from './weather-year.js';

export interface BoxRequest {
  readonly boxFile: string;
  readonly weatherFile: string;
  readonly day?: string;
  readonly json: boolean;
}

const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

function readText(what: string, path: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    throw new Error(`${what}: cannot read ${path} (${reasonOf(error)}); give the path of an existing file`, { cause: error });
  }
}

function readCase(path: string): BoxCase {
  const text = readText('--box', path);
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch (error) {
    throw new Error(`${path}: not JSON (${reasonOf(error)}); tests/published/ASHRAE140/600FF-2020.json is an example`, { cause: error });
  }
  const check = checkBoxCase(file);
  if (!check.ok) throw new Error(check.faults.map((fault) => `${path}: ${fault}`).join('\n'));
  return check.boxCase;
}

function readWeather(path: string): WeatherYear {
  const text = readText('--weather', path);
  try {
    return readWeatherYear(csvColumns(text));
  } catch (error) {
    throw new Error(`${path}: ${reasonOf(error)}`, { cause: error });
  }
}

/** Runs one box case from its files and prints what came out; returns the exit status. */
export function boxCommand({ boxFile, weatherFile, day, json }: BoxRequest): number {
  try {
    if (day !== undefined && firstHourOf(day) === null) throw new Error(`--day ${day}: no such day; expected month and day, for example 01-04`);
    const boxCase = readCase(boxFile);
    const summary = summaryOf(boxCase.name, runBox(boxCase, readWeather(weatherFile)), day);
    console.log(json ? JSON.stringify(summary, null, 2) : summaryText(summary));
    return 0;
  } catch (error) {
    console.error(reasonOf(error));
    return 1;
  }
}
