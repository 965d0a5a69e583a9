import { drumConductanceWPerK, waterStore } from '../../../engine/mass/water-drum.js';
import { heatOfStoreJ } from '../../../engine/network/enthalpy.js';
import { celsiusToKelvin, JOULES_PER_KWH, SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { extrapolatedRc, once, type RcNetwork } from '../rc-network.js';

/** Lumped bodies (Incropera and DeWitt ch. 5) and their networks: closed forms and matrix exponentials, evaluated apart from this code. */
export const source = 'Incropera2007';

const HOUR_S = SECONDS_PER_HOUR;
const DRUM_LITRES = 208;
const drumHeatKWh = (fromC: number, toC: number): number =>
  (heatOfStoreJ(waterStore(DRUM_LITRES), celsiusToKelvin(fromC)) - heatOfStoreJ(waterStore(DRUM_LITRES), celsiusToKelvin(toC))) / JOULES_PER_KWH;

/** Temperatures of one lump at hours, all rows from one run. */
function lumpRows(name: string, rc: RcNetwork, values: readonly (readonly [hours: number, ...expected: number[]])[]): PublishedRow[] {
  const run = once(() => extrapolatedRc(rc, values.map(([hours]) => hours * HOUR_S), STEP_S));
  return values.flatMap(([hours, ...expected]) => expected.map((value, n) => ({ name: `${name}, ${hours} h, lump ${n + 1}`, expected: value, model: () => run().get(hours * HOUR_S)![n]! })));
}
const STEP_S = 10;
const RICHARDSON = 'acceptance 0.01 K; backward Euler at 10 s and 5 s, extrapolated (Richardson), so that only the network is tested';

const oneLump = (powerW: number): RcNetwork => ({ capacitiesJPerK: [6e6], startC: [10], links: [[0, 1, 150]], boundariesC: [() => -10], powerW: () => powerW });
const ramp: RcNetwork = { capacitiesJPerK: [4 * HOUR_S * 100], startC: [10], links: [[0, 1, 100]], boundariesC: [(timeS) => 2 - timeS / HOUR_S] };
const airAndMass: RcNetwork = { capacitiesJPerK: [1.5e5, 4e6], startC: [10, 12], links: [[0, 2, 150], [0, 1, 200]], boundariesC: [() => -8] };
const drum: RcNetwork = { capacitiesJPerK: [waterStore(DRUM_LITRES).thawedJPerK], startC: [12], links: [[0, 1, drumConductanceWPerK(DRUM_LITRES)]], boundariesC: [() => 2] };

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'lumped networks', unit: '°C', tolerance: 0.01, toleranceReason: RICHARDSON, origin: 'closed form',
    rows: [
      ...lumpRows('one lump', oneLump(0), [[1, 8.2786], [4, 3.9535], [8, -0.265], [14, -4.3269]]),
      ...lumpRows('one lump, 1000 W', oneLump(1000), [[1, 8.8524], [4, 5.969], [14, 0.4487]]),
      ...lumpRows('outside falling 1 K/h', ramp, [[1, 8.1152], [4, 3.4715], [8, -1.4587], [14, -7.8792]]),
      ...lumpRows('air and mass', airAndMass, [[0.25, 4.1558, 11.7416], [1, 2.7621, 10.6606], [4, 0.5618, 6.8472], [14, -4.004, -1.0704]]),
    ],
  },
  {
    source, title: 'water drum of 208 L', unit: 'as named', tolerance: 0.005, relative: true, toleranceReason: 'rounded to three digits; freezing band 0.2 K counted with the ice', origin: 'closed form',
    rows: [
      { name: 'heat capacity, kWh/K', expected: 0.242, model: () => drumHeatKWh(11, 10) },
      { name: '20 to 10 °C, kWh', expected: 2.42, model: () => drumHeatKWh(20, 10) },
      { name: 'freezing, kWh', expected: 19.3, model: () => drumHeatKWh(0, -0.2) },
      { name: '5 K warmer than its surroundings, W', expected: 63, model: () => 5 * drumConductanceWPerK(DRUM_LITRES) },
    ],
  },
  {
    source, title: 'water drum cooling from 12 °C in surroundings of 2 °C', unit: '°C', tolerance: 0.01, toleranceReason: 'rounded to 0.01 K; time constant printed to 0.1 h', origin: 'closed form',
    rows: lumpRows('drum', drum, [[1, 11.49], [6, 9.32], [14, 6.82]]),
  },
];
