import { effectTables } from './effects/cases.js';
import { scoreTable, type PublishedTable } from './published-table.js';
import { tables as ashrae2009 } from './ASHRAE-F09/cases.js';
import { tables as ashrae2017 } from './ASHRAE-F17/cases.js';
import { tables as campbell } from './Campbell1998/cases.js';
import { tables as carslaw } from './Carslaw1959/cases.js';
import { closedFormTables as carslawClosedForms } from './Carslaw1959/closed-form-cases.js';
import { tables as energyPlus } from './EnergyPlusEngRef/cases.js';
import { tables as erbs } from './Erbs1982/cases.js';
import { tables as incropera } from './Incropera2007/cases.js';
import { closedFormTables as incroperaClosedForms } from './Incropera2007/closed-form-cases.js';
import { tables as iso } from './ISO13790/cases.js';
import { tables as kusuda } from './Kusuda1965/cases.js';
import { tables as nraes } from './NRAES-33/cases.js';
import { tables as prata } from './Prata1996/cases.js';
import { tables as psychrolib } from './psychrolib/cases.js';
import { tables as pvlib } from './pvlib/cases.js';
import { tables as reda } from './Reda2004/cases.js';
import { tables as siegel } from './Siegel2002/cases.js';
import { tables as suncalc } from './suncalc/cases.js';
import { tables as unsworth } from './Unsworth1975/cases.js';
import { tables as vdi } from './VDI6007/cases.js';
import { tables as walton } from './Walton1983/cases.js';
import { tables as watmuff } from './Watmuff1977/cases.js';
import { tables as wmo } from './WMO-No8/cases.js';

/** In the order of the story: moist air, sun, sky, cover, air, ground, networks, plants, then whole houses. */
const ALL: readonly PublishedTable[] = [
  ...ashrae2017, ...wmo, ...psychrolib,
  ...reda, ...pvlib, ...suncalc, ...erbs,
  ...prata, ...unsworth,
  ...nraes, ...siegel, ...watmuff, ...walton,
  ...energyPlus, ...ashrae2009,
  ...carslaw, ...carslawClosedForms, ...kusuda,
  ...incropera, ...incroperaClosedForms, ...iso, ...vdi,
  ...campbell,
  ...effectTables,
];

const HEAD = ['table', 'unit', 'n', 'bias', 'mean abs', 'worst', 'tolerance', 'verdict'] as const;
const number = (value: number): string => (value === 0 ? '0' : Math.abs(value) < 1e-3 || Math.abs(value) >= 1e4 ? value.toExponential(1) : String(Number(value.toPrecision(3))));

function linesOf(table: PublishedTable): readonly (readonly string[])[] {
  if (table.absent !== undefined) return [[table.title, table.unit, '0', '', '', '', '', `absent: ${table.absent}`]];
  const score = scoreTable(table);
  const share = table.relative ? ' (share)' : '';
  const own = table.rows.some((row) => row.tolerance !== undefined) ? ' or own' : '';
  return [[table.title, `${table.unit}${share}`, String(score.n), number(score.bias), number(score.meanAbsolute), number(score.worst), `${number(table.tolerance)}${own}`, score.passed ? 'ok' : 'FAILED']];
}

function printSource(source: string, ofSource: readonly PublishedTable[]): boolean {
  const lines = [HEAD, ...ofSource.flatMap(linesOf)];
  const widths = HEAD.map((_, column) => Math.max(...lines.map((line) => line[column]!.length)));
  console.log(`\n${source}`);
  for (const line of lines) console.log(`  ${line.map((cell, column) => (column < 2 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!))).join('  ')}`);
  return ofSource.every((table) => table.absent !== undefined || scoreTable(table).passed);
}

const sources = [...new Set(ALL.map(({ source }) => source))];
const failed = sources.filter((source) => !printSource(source, ALL.filter((table) => table.source === source)));
const rows = ALL.reduce((sum, table) => sum + table.rows.length, 0);
const absent = ALL.filter((table) => table.absent !== undefined).length;
console.log(`\n${rows} rows in ${ALL.length} tables of ${sources.length} sources; ${absent} tables absent; ${failed.length === 0 ? 'none failed' : `failed: ${failed.join(', ')}`}`);
process.exitCode = failed.length === 0 ? 0 : 1;
