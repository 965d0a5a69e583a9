import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { HOUSE_PARAMETERS, type HouseParameter, type ToldBy } from '../../engine/learn/parameters.js';

const TOLD_BY: Readonly<Record<ToldBy, string>> = {
  'dawn-level': 'the level of the morning lows',
  'clear-against-overcast': 'clear nights beside overcast ones',
  'evening-against-dawn': 'evenings beside mornings, sunny days beside dark ones',
  'outside-reading': 'a thermometer outside',
};

const prior = ({ scale, centre, spread }: HouseParameter): string => (scale === 'factor' ? `${centre} x e^(${spread} z)` : `${centre} K, sd ${spread} K`);
const line = (parameter: HouseParameter): string => `| \`${parameter.id}\` | ${parameter.meaning} | ${prior(parameter)} | ${parameter.source} | ${parameter.toldBy === null ? 'none: it keeps its prior' : TOLD_BY[parameter.toldBy]} |`;

it('DEVELOPERS.md tells of every parameter as the engine has it', () => {
  const page = readFileSync(new URL('../../DEVELOPERS.md', import.meta.url), 'utf8');
  const lines = page.split('\n');
  expect(HOUSE_PARAMETERS.map(line).filter((wanted) => !lines.includes(wanted))).toEqual([]);
});
