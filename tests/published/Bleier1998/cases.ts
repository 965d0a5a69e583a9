import type { Fan } from '../../../engine/greenhouse/house.js';
import { fanShare } from '../../../engine/night/conditions.js';
import { NO_TROUBLES } from '../../../engine/night/controls.js';
import type { PublishedTable } from '../published-table.js';

/** Fan laws (textbook, e.g. Bleier 1998, from memory): flow with the speed, power with its cube. A fan on a matched solar panel then moves (G/1000)^(1/3) of its rating. Without a battery it stalls in little light, so the printed 0.464 at 100 W/m2 is not met but zero. */
export const source = 'Bleier1998';

const SUN_FAN: Fan = { airflowM3PerS: 0.04, powerW: 20, supply: 'sun', batteryS: null };

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'flow of a sun-driven fan', unit: 'share of its rating', tolerance: 1e-3, toleranceReason: 'rounded to 0.001', origin: 'closed form',
    rows: ([[1000, 1], [500, 0.794], [300, 0.669], [200, 0.585], [0, 0]] as const).map(([sunWPerM2, expected]) => ({ name: `${sunWPerM2} W/m2`, expected, model: () => fanShare(SUN_FAN, { on: true, sunWPerM2, troubles: NO_TROUBLES }) })),
  },
];
