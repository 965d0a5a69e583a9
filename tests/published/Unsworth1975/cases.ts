import { cloudySkyEmissivity } from '../../../engine/sky/downwelling-longwave.js';
import type { PublishedTable } from '../published-table.js';

/** Unsworth and Monteith 1975: linear cloud rule with weight 0.84 (from memory). */
export const source = 'Unsworth1975';

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'cloud rule: emissivity from a clear 0.75', unit: '1', tolerance: 1e-9, toleranceReason: 'exact arithmetic', origin: 'from memory',
    rows: ([[0, 0.75], [0.5, 0.855], [1, 0.96]] as const).map(([cloudFraction, expected]) => ({ name: `cloud ${cloudFraction}`, expected, model: () => cloudySkyEmissivity({ clearSkyEmissivity: 0.75, cloudFraction, cloudWeight: 0.84 }) })),
  },
];
