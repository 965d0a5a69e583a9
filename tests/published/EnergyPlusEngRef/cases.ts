import { leakageM3PerS } from '../../../engine/airflow/infiltration.js';
import { windShareAtHeight } from '../../../engine/airflow/wind-at-cover.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../../../engine/constants.js';
import { SECONDS_PER_HOUR } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/** EnergyPlus engineering reference: local wind speed, design infiltration (linear in wind), as quoted in the physics notes of this project. */
export const source = 'EnergyPlusEngRef';

const COLD_AIR_KG_PER_M3 = 1.29;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'wind at 2 m from 10 m', unit: '1', tolerance: 0.015, toleranceReason: 'typical factors printed to two digits', origin: 'published',
    rows: [
      { name: 'open', expected: 0.8, model: () => windShareAtHeight(2, 'open') },
      { name: 'wooded', expected: 0.5, model: () => windShareAtHeight(2, 'wooded') },
      { name: 'town', expected: 0.26, model: () => windShareAtHeight(2, 'town') },
    ],
  },
  {
    source, title: 'infiltration heat: 60.3 m3, 0.5 air changes an hour, 15 K', unit: 'W', tolerance: 0.2, toleranceReason: 'density rounded to 1.29 kg/m3', origin: 'closed form',
    rows: [{ name: 'at 0 °C', expected: 163, model: () => leakageM3PerS({ stillAirChangesPerHour: 0.5, perWindAirChangesPerHour: 0 }, 60.3, 0) * COLD_AIR_KG_PER_M3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * 15 }],
  },
  {
    source, title: 'DOE-2 infiltration: 0.224 air changes for each m/s', unit: '1/h', tolerance: 0.005, toleranceReason: 'printed to two digits', origin: 'published',
    rows: ([[3.35, 0.75], [6, 1.34], [4.47, 1]] as const).map(([windMPerS, expected]) => ({ name: `${windMPerS} m/s`, expected, model: () => leakageM3PerS({ stillAirChangesPerHour: 0, perWindAirChangesPerHour: 0.224 }, 1, windMPerS) * SECONDS_PER_HOUR })),
  },
];
