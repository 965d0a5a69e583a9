import { describe, expect, it } from 'vitest';
import { meanOver } from '../../../engine/chance/mixture.js';
import { damageAt, normalMean } from './worked-night.js';

/**
 * Mean damage under a normal low, worked out apart from this code: exact, and by 51 equal-weight mid-quantiles. The engine's nodes are
 * of Student's t; with this many degrees of freedom they are normal to 2e-4.
 */
const NEARLY_NORMAL = 2001;
const PRINTED = 0.00006;
const MID_QUANTILE_TOLERANCE = 0.0003;

describe('mean damage', () => {
  it.each([
    [0, 1.2, -1, -3, 0.0837, 0.0834],
    [-1, 1.2, -1, -3, 0.2438, 0.2438],
    [1.5, 1.2, -1, -3, 0.0088, 0.0074],
    [2, 2, -1, -3, 0.0323, 0.0321],
    [2, 2, 0, -1.5, 0.0944, 0.0944],
    [-5, 1.5, -6, -10, 0.0859, 0.0853],
  ])('low %f C, sd %f K, T10 %f, T90 %f: exact %f, 51 nodes %f', (meanC, sdK, t10C, t90C, exact, nodes) => {
    const damage = damageAt(t10C, t90C);
    expect(Math.abs(normalMean(meanC, sdK, damage) - exact)).toBeLessThan(PRINTED);
    const mixture = { valuesK: [meanC], weights: [1], scaleK: sdK, degreesOfFreedom: NEARLY_NORMAL };
    expect(Math.abs(meanOver(mixture, damage) - nodes)).toBeLessThan(MID_QUANTILE_TOLERANCE);
  });
});
