import { undisturbedGroundTempK } from '../../../engine/ground/undisturbed-kusuda.js';
import { celsiusToKelvin, kelvinToCelsius, SECONDS_PER_DAY } from '../../../engine/units.js';
import { absentUnlessClosedForms, closedForms } from '../closed-form-set.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/** Kusuda and Achenbach 1965, undisturbed ground: mean 8, surface amplitude 14, coldest day 35, 0.05 m2/day; evaluated apart from this code. */
export const source = 'Kusuda1965';

const GROUND = { yearlyMeanK: celsiusToKelvin(8), surfaceAmplitudeK: 14, coldestDay: 35, diffusivityM2PerS: 0.05 / SECONDS_PER_DAY };
const rows = (day: number, values: readonly (readonly [number, number])[]): PublishedRow[] =>
  values.map(([depthM, expected]) => ({ name: `day ${day}, ${depthM} m`, expected, model: () => kelvinToCelsius(undisturbedGroundTempK(GROUND, depthM, day)) }));

/** Half the yearly swing at a depth, by searching the days. */
function amplitudeK(depthM: number, diffusivityM2PerS: number): number {
  const year = Array.from({ length: 3650 }, (_, i) => undisturbedGroundTempK({ yearlyMeanK: 280, surfaceAmplitudeK: 1, coldestDay: 0, diffusivityM2PerS }, depthM, i / 10));
  return (Math.max(...year) - Math.min(...year)) / 2;
}

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'undisturbed ground', unit: '°C', tolerance: 0.001, toleranceReason: 'rounded to 0.001 K', origin: 'closed form',
    rows: [
      ...rows(35, [[0, -6], [0.3, -4.266], [0.6, -2.578], [1, -0.461], [2, 3.878], [3, 6.708]]),
      ...rows(75, [[0, -2.81], [0.3, -2.446], [0.6, -1.877], [1, -0.902], [2, 1.955], [3, 4.575]]),
    ],
  },
  {
    source, title: 'closed-form set: yearly damping', unit: '1', tolerance: 1e-4, toleranceReason: 'days searched by tenths', origin: 'closed form', ...absentUnlessClosedForms,
    rows: (closedForms?.periodic_ground_annual.points ?? []).map(({ z_m, amplitude_ratio }) => ({ name: `${z_m} m`, expected: amplitude_ratio, model: () => amplitudeK(z_m, closedForms!.periodic_ground_annual.alpha) })),
  },
];
