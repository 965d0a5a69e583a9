import { annualMeanC, extremeHour } from '../box/box-summary.js';
import { lightOnPlane, skyShape } from '../box/sky-light-perez.js';
import { lightOfHour } from '../box/sun-clock.js';
import { HOURS_PER_YEAR } from '../box/weather-year.js';
import type { Vector } from '../box/room.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { annualByProgram, CASE_NAMES, describedCase, editions, ORIGINS, rangeOf, type CaseName, type Edition } from './free-float.js';

/**
 * Free-floating boxes of ASHRAE 140: light (600FF) and heavy (900FF), against the range of the programs of both editions. The boxes are
 * built from description files (README.md of ../box says how, and what was assumed) on the engine's network, sky, sun, film coefficients.
 */
export const sources = ['ASHRAE140-2017', 'ASHRAE140-2020'] as const;

/** A row that holds when the model lies between the lowest and the highest program, widened on both sides. */
function rangeRow(name: string, values: readonly number[], model: () => number, widened = 0): PublishedRow {
  const { low, high } = rangeOf(values);
  return { name: `${name} (${low} to ${high})`, expected: (low + high) / 2, tolerance: (high - low) / 2 + widened, model };
}

const FIGURES = [
  ['minimum', 'min', (t: Float64Array) => t[extremeHour(t, -1)]!],
  ['mean', 'mean', annualMeanC],
  ['maximum', 'max', (t: Float64Array) => t[extremeHour(t, 1)]!],
] as const;

const temperatures = (edition: Edition, name: CaseName): Float64Array => edition.run(name).hourlyMeanC;
const lowest = (edition: Edition, name: CaseName): number => FIGURES[0][2](temperatures(edition, name));

function annualTable(edition: Edition): PublishedTable {
  return {
    source: edition.source, title: 'free float, year: minimum, mean, maximum against the middle of the programs', unit: '°C', tolerance: 0, origin: 'published',
    toleranceReason: 'half the range of the programs, not widened',
    rows: CASE_NAMES.flatMap((name) => FIGURES.map(([figure, key, of]) => rangeRow(`${name} ${figure}`, [...annualByProgram(edition, name, key).values()], () => of(temperatures(edition, name))))),
  };
}

/** Programs round their own results to 0.01 or 0.1 K and are run with other steps: a little beyond the range is no difference. */
const DIFFERENCE_WIDENED_K = 0.5;

function massTable(edition: Edition): PublishedTable {
  const [light, heavy] = CASE_NAMES.map((name) => annualByProgram(edition, name, 'min')) as [ReadonlyMap<string, number>, ReadonlyMap<string, number>];
  const gains = [...heavy].flatMap(([program, value]) => (light.has(program) ? [value - light.get(program)!] : []));
  return {
    source: edition.source, title: 'what mass is worth: minimum of 900FF less that of 600FF', unit: 'K', tolerance: 0, origin: 'published',
    toleranceReason: `half the range of the programs, widened by ${DIFFERENCE_WIDENED_K} K`,
    rows: [rangeRow('heavy less light', gains.map((value) => Math.round(100 * value) / 100), () => lowest(edition, '900FF') - lowest(edition, '600FF'), DIFFERENCE_WIDENED_K)],
  };
}

function hourTable(edition: Edition): PublishedTable {
  return {
    source: edition.source, title: `hour of the year in which it is coldest inside: ${edition.coldest.name}`, unit: 'h', tolerance: 1, origin: 'published',
    toleranceReason: 'the programs say hour 6, 7 or 8',
    rows: CASE_NAMES.map((name) => ({ name, expected: edition.coldest.index, model: () => extremeHour(temperatures(edition, name), -1) })),
  };
}

const NIGHT_HOURS = 8;

function nightTable(edition: Edition): PublishedTable {
  const rmsK = (name: CaseName): number => {
    const programs = Object.entries(edition.hourly(name)).filter(([program]) => !edition.lagging.includes(program)).map(([, values]) => values);
    const squares = Array.from({ length: NIGHT_HOURS }, (_, h) => (temperatures(edition, name)[edition.day.first + h]! - programs.reduce((sum, values) => sum + values[h]!, 0) / programs.length) ** 2);
    return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / NIGHT_HOURS);
  };
  return {
    source: edition.source, title: `night of ${edition.day.name}, hours 1-8: RMS against the mean of the programs`, unit: 'K', tolerance: 1.2, origin: 'published',
    toleranceReason: `agreed for this project; the programs differ by 2 to 5 K${edition.lagging.length > 0 ? `; without ${edition.lagging.join(', ')}, which lags` : ''}`,
    rows: CASE_NAMES.map((name) => ({ name, expected: 0, model: () => rmsK(name) })),
  };
}

/** Between the programs by day too, but for the hour in which the sun sets or rises, when they differ by how they cut the hour. */
const HOUR_WIDENED_K = 0.5;

function hourlyTable(edition: Edition): PublishedTable {
  return {
    source: edition.source, title: `${edition.day.name}, hour by hour, against the middle of the programs`, unit: '°C', tolerance: 0, origin: 'published',
    toleranceReason: `half the range of the programs, widened by ${HOUR_WIDENED_K} K`,
    rows: CASE_NAMES.flatMap((name) => {
      const programs = Object.values(edition.hourly(name));
      return Array.from({ length: 24 }, (_, h) => rangeRow(`${name} hour ${h + 1}`, programs.map((values) => values[h]!), () => temperatures(edition, name)[edition.day.first + h]!, HOUR_WIDENED_K));
    }),
  };
}

const FACES: Readonly<Record<string, Vector>> = { horz: [0, 0, 1], north: [0, 1, 0], east: [1, 0, 0], south: [0, -1, 0], west: [-1, 0, 0] };
const SAMPLES_PER_HOUR = 6;

/** Sunlight on a plane outside through the year. */
function incidentKWhPerM2(edition: Edition, outward: Vector): number {
  const boxCase = describedCase('600FF', edition.edition);
  let sumWh = 0;
  for (let hour = 0; hour < HOURS_PER_YEAR; hour += 1) {
    for (const light of lightOfHour(boxCase, edition.weather, hour, SAMPLES_PER_HOUR) ?? []) {
      const { beam, diffuse } = lightOnPlane(light, skyShape(light), outward, boxCase.site.groundReflectance);
      sumWh += (beam + diffuse) / SAMPLES_PER_HOUR;
    }
  }
  return sumWh / 1000;
}

/** Sums of the year by program; only the later edition has them. */
function sunTables(edition: Edition): readonly PublishedTable[] {
  const { annual_incident_kwh_m2: incident, annual_transmitted_kwh_m2: transmitted } = edition.results;
  if (!incident || !transmitted) return [];
  const windowM2 = describedCase('600FF', edition.edition).windows.reduce((sum, { widthM, heightM }) => sum + widthM * heightM, 0);
  // Rounding of a sum: the flat plane has a range of a few kWh/m2 only.
  const widened = 1;
  return [{
    source: edition.source, title: 'sunlight of the year on each face, and through the south windows', unit: 'kWh/m2', tolerance: 0, origin: 'published',
    toleranceReason: `half the range of the programs, widened by ${widened} kWh/m2`,
    rows: [
      ...Object.entries(incident).map(([face, byProgram]) => rangeRow(face, Object.values(byProgram), once(() => incidentKWhPerM2(edition, FACES[face]!)), widened)),
      rangeRow('through the windows of 600', Object.values(transmitted['600/South']!), () => edition.run('600FF').passedSunKWh / windowM2, widened),
    ],
  }];
}

const absent = ORIGINS.filter(({ source }) => !editions.some((edition) => edition.source === source)).map(({ source, origin }): PublishedTable => (
  { source, title: 'free-floating boxes', unit: '°C', tolerance: 0, toleranceReason: 'half the range of the programs', origin: 'published', rows: [], absent: origin }
));

export const tables: readonly PublishedTable[] = [
  ...editions.flatMap((edition) => [annualTable(edition), massTable(edition), hourTable(edition), nightTable(edition), hourlyTable(edition), ...sunTables(edition)]),
  ...absent,
];
