import { ventFlowM3PerS, type VentOpening } from '../../../engine/airflow/vent-flow.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/** ASHRAE Handbook Fundamentals 2009 ch. 16 eq. 37-39, as given in the EnergyPlus engineering reference; evaluated apart from this code. */
export const source = 'ASHRAE-F09';

const SMALL: VentOpening = { openAreaM2: 1, stackHeightM: 1 };
const LARGE: VentOpening = { openAreaM2: 2, stackHeightM: 4 };
const flow = (windSpeedMPerS: number, insideC: number, vent = SMALL): number =>
  ventFlowM3PerS(vent, { insideAirTempK: celsiusToKelvin(insideC), outsideAirTempK: celsiusToKelvin(15), windSpeedMPerS, windEffectiveness: 0.55 });

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'ch. 16 eq. 37-39: opening of 1 m2, 2 m/s, 5 K, 1 m', unit: 'm3/s', tolerance: 5e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: [
      { name: 'wind alone', expected: 1.1, model: () => flow(2, 15) },
      { name: 'stack alone', expected: 0.2444, model: () => flow(0, 20) },
      { name: 'both', expected: 1.1268, model: () => flow(2, 20) },
    ],
  },
  {
    // Wind 0.55 x 2 x 2; stack 0.4225 x 2 x sqrt(2 x 9.80665 x 4 x 5 / 293.15).
    source, title: 'ch. 16 eq. 37-39: opening of 2 m2, 2 m/s, 5 K, 4 m', unit: 'm3/s', tolerance: 5e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: [
      { name: 'wind alone', expected: 2.2, model: () => flow(2, 15, LARGE) },
      { name: 'stack alone', expected: 0.9775, model: () => flow(0, 20, LARGE) },
      { name: 'both', expected: 2.4074, model: () => flow(2, 20, LARGE) },
    ],
  },
];
