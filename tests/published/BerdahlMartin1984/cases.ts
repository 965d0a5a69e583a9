import { cloudySkyEmissivity } from '../../../engine/sky/downwelling-longwave.js';
import { CLEAR_SKY_FORMULAS } from '../longwave/clear-sky-formulas.js';
import { CLEAR_SKY_TOLERANCE, clearSkyRows } from '../longwave/clear-sky-rows.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Berdahl and Martin 1984 (from memory), evaluated apart from this code: a rival of the engine's clear sky, fitted to monthly means. Its
 * cloud works like the engine's linear rule with a weight that falls with the height of the cloud's base.
 */
export const source = 'BerdahlMartin1984';

const CLEAR = 0.711;
const BASE_KM = 2;
const SCALE_KM = 8.2;
const CLOUD_EMISSIVITY = 0.9;

export const tables: readonly PublishedTable[] = [
  { source, title: 'clear sky: downwelling longwave', ...CLEAR_SKY_TOLERANCE, rows: clearSkyRows(CLEAR_SKY_FORMULAS['Berdahl-Martin84'], [324.25, 270.02, 241.32, 216.17, 194.17, 174.95, 143.6]) },
  {
    source, title: 'cloud with its base at 2 km, through the linear rule of the engine', unit: '1', tolerance: 1e-4, toleranceReason: 'rounded to four digits', origin: 'closed form',
    rows: ([[0, 0.711], [0.25, 0.762], [0.5, 0.8129], [0.75, 0.8639], [1, 0.9148]] as const).map(([cloudFraction, expected]) => ({
      name: `cloud ${cloudFraction}`, expected, model: () => cloudySkyEmissivity({ clearSkyEmissivity: CLEAR, cloudFraction, cloudWeight: CLOUD_EMISSIVITY * Math.exp(-BASE_KM / SCALE_KM) }),
    })),
  },
];
