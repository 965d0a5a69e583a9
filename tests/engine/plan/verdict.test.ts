import { describe, expect, it } from 'vitest';
import { RESIDUAL_PRIOR } from '../../../engine/learn/calibrate.js';
import { placeOfNode, residualFor, PRIOR_RESIDUAL, verdictFor } from '../../../engine/plan/outlook.js';

describe('verdict from the chances of damage and of loss', () => {
  it.each([
    [0, 0, 'safe'], [0.0499, 0, 'safe'], [0.0499, 0.0999, 'safe'],
    [0.05, 0, 'watch'], [0.2, 0.0999, 'watch'], [0.3499, 0, 'watch'],
    [0.35, 0, 'at-risk'], [1, 0, 'at-risk'], [0.04, 0.1, 'at-risk'], [0.2, 0.1, 'at-risk'], [0.9, 0.4999, 'at-risk'],
    [0.5, 0.5, 'likely-lost'], [1, 1, 'likely-lost'], [0.04, 0.5, 'likely-lost'],
  ] as const)('damage %f, loss %f: %s', (damage, loss, verdict) => {
    expect(verdictFor(damage, loss)).toBe(verdict);
  });
});

describe('place that a crop is judged at', () => {
  it('is the air under the cover while the cover lies on its bed', () => {
    expect(placeOfNode('air-at-plant', 'north', ['north'])).toEqual({ place: 'cover', bed: 'north' });
    expect(placeOfNode('air-at-plant', 'north', ['south'])).toEqual({ place: 'inside' });
    expect(placeOfNode('leaf', 'north', ['north'])).toEqual({ place: 'leaf', bed: 'north' });
    expect(placeOfNode('soil', 'north', [])).toEqual({ place: 'soil', bed: 'north' });
  });
});

describe('residual error', () => {
  it('is the prior after a full fortnight of history and wider before', () => {
    expect(residualFor(15 * 24)).toEqual(PRIOR_RESIDUAL);
    expect(residualFor(400)).toEqual(PRIOR_RESIDUAL);
    expect(residualFor(0).scaleK).toBeGreaterThan(residualFor(100).scaleK);
    expect(residualFor(100).scaleK).toBeGreaterThan(PRIOR_RESIDUAL.scaleK);
  });

  // Nine sensitivities of the physics reference, K for each spread of its prior, and what is left when all are right.
  it('before any reading holds what is not known of the house beside what no reading can tell', () => {
    expect(PRIOR_RESIDUAL.scaleK).toBeCloseTo(Math.hypot(0.43, 0.4, 0.38, 0.37, 0.24, 0.23, 0.2, 0.18, 0.12, RESIDUAL_PRIOR.scaleK), 1);
  });
});
