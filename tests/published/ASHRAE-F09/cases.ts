import { ventFlowM3PerS } from '../../../engine/airflow/vent-flow.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/** ASHRAE Handbook Fundamentals 2009 ch. 16 eq. 37-39, as given in the EnergyPlus engineering reference; evaluated apart from this code. */
export const source = 'ASHRAE-F09';

const flow = (windSpeedMPerS: number, insideC: number): number =>
  ventFlowM3PerS({ openAreaM2: 1, stackHeightM: 1 }, { insideAirTempK: celsiusToKelvin(insideC), outsideAirTempK: celsiusToKelvin(15), windSpeedMPerS, windEffectiveness: 0.55 });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'ch. 16 eq. 37-39: opening of 1 m2, 2 m/s, 5 K, 1 m', unit: 'm3/s', tolerance: 5e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: [
      { name: 'wind alone', expected: 1.1, model: () => flow(2, 15) },
      { name: 'stack alone', expected: 0.2444, model: () => flow(0, 20) },
      { name: 'both', expected: 1.1268, model: () => flow(2, 20) },
    ],
  },
];
