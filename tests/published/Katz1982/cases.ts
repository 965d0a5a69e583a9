import { meanOver } from '../../../engine/chance/mixture.js';
import { worthOfWaiting } from '../../../engine/plan/wait-or-decide.js';
import { damageAt } from '../../engine/plan/worked-night.js';
import type { PublishedTable } from '../published-table.js';

/**
 * Katz, Murphy and Winkler 1982 put logistic loss curves under a normal forecast of the low, and ask what the next forecast is worth. Rows of
 * the decision rule of this project in their form, worked out apart from this code by quadrature. The engine's nodes are of Student's t; with
 * 2001 degrees of freedom they are normal to 2e-4.
 */
export const source = 'Katz1982';

const NEARLY_NORMAL = 2001;
const WAITING = { thresholdK: 0, sdNowK: 1.5, sdLaterK: 1, cost: 10, loss: 100 };

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'mean damage under a normal low', unit: 'share', tolerance: 0.0017, toleranceReason: '51 equal-weight nodes; worst in the far tail, 0.0088 read as 0.0074', origin: 'worked example of this project',
    rows: ([[0, 1.2, -1, -3, 0.0837], [-1, 1.2, -1, -3, 0.2438], [1.5, 1.2, -1, -3, 0.0088], [2, 2, -1, -3, 0.0323], [2, 2, 0, -1.5, 0.0944], [-5, 1.5, -6, -10, 0.0859]] as const).map(([meanC, sdK, t10C, t90C, expected]) => ({
      name: `low ${meanC}, sd ${sdK}, T10 ${t10C}, T90 ${t90C}`, expected, model: () => meanOver({ valuesK: [meanC], weights: [1], scaleK: sdK, degreesOfFreedom: NEARLY_NORMAL }, damageAt(t10C, t90C)),
    })),
  },
  {
    source, title: 'worth of waiting for the next forecast', unit: 'money', tolerance: 0.01, toleranceReason: 'acceptance of the quadrature', origin: 'worked example of this project',
    rows: ([[0.5, 10, 8.5469, 1.4531], [1.5, 10, 5.816, 4.184], [1.92, 10, 4.4116, 5.5884], [3, 2.275, 1.4758, 0.7992], [5, 0.0429, 0.0398, 0.0031]] as const).flatMap(([meanK, now, later, worth]) => [
      { name: `mean ${meanK}: deciding now`, expected: now, model: () => worthOfWaiting({ ...WAITING, meanK }).lossNow },
      { name: `mean ${meanK}: deciding later`, expected: later, model: () => worthOfWaiting({ ...WAITING, meanK }).lossLater },
      { name: `mean ${meanK}: worth of waiting`, expected: worth, model: () => worthOfWaiting({ ...WAITING, meanK }).worth },
    ]),
  },
];
