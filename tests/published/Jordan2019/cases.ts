import { crpsMixtureK } from '../../../engine/score/crps-mixture.js';
import { crpsStudentTK } from '../../../engine/score/crps-student-t.js';
import type { PublishedTable } from '../published-table.js';

/** Jordan, Krueger and Lerch 2019 give closed forms of the CRPS. Expected values here are the integral of its definition by SciPy 1.17 (quad), apart from this code: single Student t, and mixtures as the engine forecasts with. */
export const source = 'Jordan2019';

const SINGLE = [
  [2, 0, 0.3034928278], [2, -2, 1.3387690082], [3, 0.5, 0.3651206352], [6, 0, 0.2527819015], [6, 0.5, 0.346223248], [6, -2, 1.4055151154], [9, 4, 3.3751846585], [30, 0, 0.2372482011],
] as const;
const MIXTURES = [
  { values: [-3, -1, 1], weights: [1 / 6, 2 / 3, 1 / 6], scale: 1.2, freedom: 6, observed: -2, expected: 0.6377103890 },
  { values: [-3, -1, 1], weights: [1 / 6, 2 / 3, 1 / 6], scale: 1.2, freedom: 6, observed: 2.5, expected: 2.5198544631 },
  { values: [-5, 5], weights: [0.5, 0.5], scale: 0.2, freedom: 6, observed: 0, expected: 2.4334225920 },
  { values: [-8, -2, 0, 3], weights: [0.1, 0.4, 0.3, 0.2], scale: 0.7, freedom: 4, observed: -6, expected: 3.7158526601 },
] as const;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'CRPS of a Student t', unit: 'K', tolerance: 1e-8, toleranceReason: 'rounded to ten digits', origin: 'library run',
    rows: SINGLE.map(([degreesOfFreedom, observed, expected]) => ({ name: `${degreesOfFreedom} degrees of freedom, reading ${observed}`, expected, model: () => crpsStudentTK({ centreK: 0, scaleK: 1, degreesOfFreedom }, observed) })),
  },
  {
    source, title: 'CRPS of a mixture of Student t', unit: 'K', tolerance: 1e-5, toleranceReason: 'quadrature of the engine: a hundredth of a millikelvin', origin: 'library run',
    rows: MIXTURES.map(({ values, weights, scale, freedom, observed, expected }) => ({ name: `${values.length} parts, scale ${scale}, reading ${observed}`, expected, model: () => crpsMixtureK({ valuesK: values, weights, scaleK: scale, degreesOfFreedom: freedom }, observed) })),
  },
];
