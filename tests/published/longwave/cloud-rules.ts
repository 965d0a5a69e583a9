import { cloudySkyEmissivity } from '../../../engine/sky/downwelling-longwave.js';

/** Emissivity of a sky with cloud from that of the clear sky. */
export type CloudRule = (clearSkyEmissivity: number, cloudFraction: number) => number;

const TENTHS = 10;
const linear = (cloudWeight: number): CloudRule => (clearSkyEmissivity, cloudFraction) => cloudySkyEmissivity({ clearSkyEmissivity, cloudFraction, cloudWeight });

/** Rules that were tried on measured longwave, coefficients from memory but for the polynomial (EnergyPlusEngRef). The engine uses the linear one. */
export const CLOUD_RULES = {
  linear: linear(1),
  'linear, weight 0.84': linear(0.84),
  'Walton polynomial': (clear, cloud) => clear * (1 + 0.0224 * TENTHS * cloud - 0.0035 * (TENTHS * cloud) ** 2 + 0.00028 * (TENTHS * cloud) ** 3),
  '1 + 0.22 c^2.75': (clear, cloud) => clear * (1 + 0.22 * cloud ** 2.75),
  '1 + 0.17 c^2': (clear, cloud) => clear * (1 + 0.17 * cloud ** 2),
  none: (clear) => clear,
} as const satisfies Record<string, CloudRule>;
