import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import { drumConductanceWPerK } from '../../../engine/mass/water-drum.js';
import { kelvinToFahrenheitDegrees } from '../../../engine/units.js';
import { CLEAR_COLD_NIGHT, hourOfLastNightS, INSIDE, OUTSIDE, referenceHouse, runInventedNight, type InventedNight, type InventedWeather } from '../../fixtures/houses.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';

/**
 * What whole houses were reported to do, against the reference house (4 x 8 x 2.4 m) on an invented night of -10 °C after three sunny
 * days. Other houses, other nights: these rows hold sign and size, not a point, and the tolerances are the spread of the reports.
 */
export const sources = ['Hangzhou2012', 'Savage1980', 'FAO-FrostProtection2005', 'Purdue-HighTunnel', 'NRAES-33', 'Churchill1975'] as const;

const SINGLE: GreenhouseFile['layers'] = [{ film: 'standard' }];
const DOUBLE: GreenhouseFile['layers'] = [{ film: 'standard' }, { film: 'standard' }];
const OVERCAST: InventedWeather = { ...CLEAR_COLD_NIGHT, lastNightCloud: 1 };
const EVENING_S = hourOfLastNightS(CLEAR_COLD_NIGHT, -8);

const night = (changes: Partial<GreenhouseFile>, weather: InventedWeather = CLEAR_COLD_NIGHT, inUse = false): (() => InventedNight) =>
  once(() => {
    const house = referenceHouse(changes);
    return runInventedNight(house, weather, { controls: (timeS) => (inUse && timeS > EVENING_S ? { heaterOn: true, coverOn: house.columns.map(({ rowCover }) => rowCover !== null) } : {}) });
  });

const aboveOutsideK = (run: InventedNight): number => run.lowK(INSIDE) - run.lowK(OUTSIDE);

/** Mean over clear and overcast, moist and dry soil: a stand-in for a season. */
const seasonMeanK = (layers: GreenhouseFile['layers']): (() => number) => {
  const runs = (['moist', 'dry'] as const).flatMap((moisture) =>
    [CLEAR_COLD_NIGHT, OVERCAST].map((weather) => night({ layers, soil: { kind: 'loam', moisture, pathMoisture: moisture } }, weather)),
  );
  return once(() => runs.reduce((sum, run) => sum + aboveOutsideK(run()), 0) / runs.length);
};
const single = seasonMeanK(SINGLE);
const double = seasonMeanK(DOUBLE);

type Cover = NonNullable<NonNullable<GreenhouseFile['beds']>[number]['cover']>;
const coverRow = (name: string, cover: Cover, expected: number): PublishedRow => {
  const beds = [{ name: 'bed', area: 20, crops: ['kale'], cover }];
  const [bare, covered] = [night({ beds }), night({ beds }, CLEAR_COLD_NIGHT, true)];
  const plants = { place: 'cover', bed: 'bed' } as const;
  return { name, expected, model: () => covered().lowK(plants) - bare().lowK(plants) };
};

const perKilowattRow = (name: string, layers: GreenhouseFile['layers'], lossWPerK: number): PublishedRow => {
  const heater: GreenhouseFile['heater'] = { kind: 'electric', power: 1000, thermostat: false };
  const [cold, heated] = [night({ layers, heater }), night({ layers, heater }, CLEAR_COLD_NIGHT, true)];
  return { name, expected: 1000 / lossWPerK, model: () => heated().lowK(INSIDE) - cold().lowK(INSIDE) };
};

// Worksheet of NRAES-33 for the reference house at 15 K: cover U 4.0 or 6.8 W/(m2 K), 0.75 or 1 air change an hour, edge 1.4 W/(m K): 4958 and 7993 W.
const DOUBLE_LOSS_W_PER_K = 4958 / 15;
const SINGLE_LOSS_W_PER_K = 7993 / 15;
const DRUM_COUNT = 8;
const DRUM_WARMER_K = 5;
const [withoutDrums, withDrums] = [night({}), night({ drums: [{ litres: 208, count: DRUM_COUNT }] })];

export const effectTables: readonly PublishedTable[] = [
  {
    source: 'Hangzhou2012', title: 'inside minimum above outside, winter mean', unit: 'K', tolerance: 1, toleranceReason: 'mean of four kinds of night stands in for two winters',
    rows: [
      { name: 'single film', expected: 2, model: single },
      { name: 'double film', expected: 3, model: double },
      { name: 'double less single', expected: 1, model: () => double() - single() },
    ],
  },
  {
    source: 'Savage1980', title: 'inside minimum above outside, winter mean', unit: 'K', tolerance: 1.5, toleranceReason: 'mean of four kinds of night; another climate',
    rows: [{ name: 'single film', expected: 1.3, model: single }],
  },
  {
    source: 'FAO-FrostProtection2005', title: 'vol. 1, passive methods: air under a row cover above that without', unit: 'K', tolerance: 2, toleranceReason: 'printed as a range from 1 (thin) to 5 °C (thick)',
    rows: [coverRow('fabric of 17 g/m2', { kind: 'fabric', weight: 17 }, 1), coverRow('fabric of 30 g/m2', { kind: 'fabric', weight: 30 }, 3), coverRow('fabric of 50 g/m2', { kind: 'fabric', weight: 50 }, 5)],
  },
  {
    source: 'Purdue-HighTunnel', title: 'low tunnel inside a high tunnel, 42 against 35 °F at 7 h', unit: '°F', tolerance: 3, toleranceReason: 'one morning, whole degrees, other house',
    rows: [coverRow('film tunnel', { kind: 'film-tunnel' }, 7)].map((row) => ({ ...row, model: () => kelvinToFahrenheitDegrees(row.model()) })),
  },
  {
    source: 'NRAES-33', title: 'heater, against the steady worksheet', unit: 'K/kW', tolerance: 1, toleranceReason: 'the worksheet counts neither the soil nor a clear sky apart',
    rows: [perKilowattRow('double film', DOUBLE, DOUBLE_LOSS_W_PER_K), perKilowattRow('single film', SINGLE, SINGLE_LOSS_W_PER_K)],
  },
  {
    source: 'Churchill1975', title: 'drums of 208 L: heat of 5 K over the steady worksheet', unit: 'K per drum', tolerance: 0.1, toleranceReason: 'how much warmer a drum stays is estimated (about 5 K)',
    rows: [{ name: `${DRUM_COUNT} drums`, expected: (DRUM_WARMER_K * drumConductanceWPerK(208)) / DOUBLE_LOSS_W_PER_K, model: () => (withDrums().lowK(INSIDE) - withoutDrums().lowK(INSIDE)) / DRUM_COUNT }],
  },
];
