import { describe, expect, it } from 'vitest';
import { earthTubeEffectiveness, RING_COUNT, ringMiddleRadiusM, ringOuterRadiusM, tubeWallWPerM2K } from '../../engine/ground/earth-tube.js';

const RADIUS_M = 0.05;
const RINGS = Array.from({ length: RING_COUNT }, (_, ring) => ring);

describe('rings of soil around a tube', () => {
  it('begin at the tube and widen outwards by one factor', () => {
    expect(ringOuterRadiusM(RADIUS_M, -1)).toBeCloseTo(RADIUS_M, 12);
    const growth = ringOuterRadiusM(RADIUS_M, 0) / RADIUS_M;
    expect(growth).toBeGreaterThan(1);
    for (const ring of RINGS) expect(ringOuterRadiusM(RADIUS_M, ring) / ringOuterRadiusM(RADIUS_M, ring - 1)).toBeCloseTo(growth, 12);
  });

  it('have their temperature where half of ln(outer/inner) lies on either side', () => {
    for (const ring of RINGS) {
      const middleM = ringMiddleRadiusM(RADIUS_M, ring);
      expect(Math.log(middleM / ringOuterRadiusM(RADIUS_M, ring - 1))).toBeCloseTo(Math.log(ringOuterRadiusM(RADIUS_M, ring) / middleM), 12);
    }
  });

  it('are as wide for a wide tube as it is wide itself', () => {
    expect(ringOuterRadiusM(3 * RADIUS_M, 2) / ringOuterRadiusM(RADIUS_M, 2)).toBeCloseTo(3, 12);
    expect(ringMiddleRadiusM(3 * RADIUS_M, 2) / ringMiddleRadiusM(RADIUS_M, 2)).toBeCloseTo(3, 12);
  });
});

describe('wall of the tube', () => {
  const DIAMETER_M = 0.1;
  /** Air at 281 K, Incropera2007 table A.4. */
  const VISCOSITY_M2_PER_S = 1.42e-5;
  const CONDUCTIVITY_W_PER_MK = 0.0248;
  const nusselt = (reynolds: number): number => (tubeWallWPerM2K((reynolds * VISCOSITY_M2_PER_S * Math.PI * DIAMETER_M) / 4, DIAMETER_M) * DIAMETER_M) / CONDUCTIVITY_W_PER_MK;

  it('has Nu 3.66 in laminar flow, at any speed', () => {
    for (const reynolds of [100, 1000, 2300]) expect(nusselt(reynolds)).toBeCloseTo(3.66, 9);
  });

  // Gnielinski by hand at Re 4000: f = (0.79 ln 4000 - 1.64)^-2 = 0.04144; (f/8) x 3000 x 0.71 = 11.034; denominator 0.8134.
  it('has Nu 13.57 where turbulence is full', () => {
    expect(nusselt(4000)).toBeCloseTo(13.57, 1);
  });

  it('goes straight between the two', () => {
    for (const share of [0.25, 0.5, 0.9]) expect(nusselt(2300 + share * 1700)).toBeCloseTo(3.66 + share * (nusselt(4000) - 3.66), 9);
  });
});

describe('soil beside the wall of a tube', () => {
  const TUBE = { airflowM3PerS: 0.03, diameterM: 2 * RADIUS_M, lengthM: 12, airDensityKgPerM3: 1.25 };
  const AIR_J_PER_KGK = 1006;
  /** Resistance of 1 m of tube, got back from 1 - exp(-NTU). */
  const resistanceMKPerW = (soilConductivityWPerMK: number): number =>
    TUBE.lengthM / (-Math.log(1 - earthTubeEffectiveness({ ...TUBE, soilConductivityWPerMK })) * TUBE.airflowM3PerS * TUBE.airDensityKgPerM3 * AIR_J_PER_KGK);

  it('resists like half a ring, ln(middle/inner)/(2 pi k), in series with the wall', () => {
    const halfRing = Math.log(ringMiddleRadiusM(RADIUS_M, 0) / RADIUS_M) / (2 * Math.PI);
    expect(resistanceMKPerW(0.5) - resistanceMKPerW(2)).toBeCloseTo(halfRing * (1 / 0.5 - 1 / 2), 9);
    expect(resistanceMKPerW(1e9)).toBeCloseTo(1 / (tubeWallWPerM2K(TUBE.airflowM3PerS, TUBE.diameterM) * Math.PI * TUBE.diameterM), 6);
  });
});
