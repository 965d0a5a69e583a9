import { describe, expect, it } from 'vitest';
import { edgeLossWPerMK } from '../../engine/cover/edge-loss.js';
import { blendOptics, longwaveReflectance, wetFraction } from '../../engine/cover/film-optics.js';
import { beamTransmittance, diffuseTransmittance, POLYETHYLENE_SHEET, stackDiffuseTransmittance, stackTransmittance } from '../../engine/cover/shortwave-transmittance.js';
import { houseAirConvectionWPerM2K, naturalConvectionWPerM2K } from '../../engine/cover/convection.js';
import { snowConductanceWPerM2K, snowHoldingShare, sunThroughSnow } from '../../engine/cover/snow-layer.js';
import { OutOfRangeError } from '../../engine/errors.js';
import { degreesToRadians } from '../../engine/units.js';

describe('edge of the house', () => {
  const bare = (): number => edgeLossWPerMK(null);

  // ASHRAE-90-1 table A6.3, unheated slab (from memory): F 0.73 bare; R-10 to 2 ft 0.54, to 4 ft 0.48.
  it('loses in the proportions of the table', () => {
    expect(edgeLossWPerMK({ depthM: 0.6, thicknessM: 0.05 }) / bare()).toBeCloseTo(0.54 / 0.73, 2);
    expect(edgeLossWPerMK({ depthM: 1.2, thicknessM: 0.05 }) / bare()).toBeCloseTo(0.48 / 0.73, 2);
  });

  it('goes straight between the rows, and on from the last as it stood there', () => {
    const at = (depthM: number): number => edgeLossWPerMK({ depthM, thicknessM: 0.05 });
    expect(at(0)).toBeCloseTo(bare(), 12);
    expect(at(0.3)).toBeCloseTo((bare() + at(0.6)) / 2, 12);
    expect(at(0.9)).toBeCloseTo((at(0.6) + at(1.2)) / 2, 12);
    expect(at(2)).toBeCloseTo(at(1.2), 12);
  });

  it('saves half with half the foam, and no more with twice', () => {
    const saved = (thicknessM: number): number => bare() - edgeLossWPerMK({ depthM: 0.6, thicknessM });
    expect(saved(0)).toBeCloseTo(0, 12);
    expect(saved(0.025)).toBeCloseTo(saved(0.05) / 2, 12);
    expect(saved(0.1)).toBeCloseTo(saved(0.05), 12);
  });
});

describe('water on a film', () => {
  const dry = { transmittance: 0.7, emissivity: 0.2 };
  const wet = { transmittance: 0.2, emissivity: 0.7 };

  it('makes it wet by degrees: none without water, all with much, half where it says so', () => {
    expect(wetFraction(0)).toBe(0);
    expect(wetFraction(-1)).toBe(0);
    expect(wetFraction(1000)).toBeCloseTo(1, 4);
    const amounts = [0, 0.001, 0.01, 0.02, 0.08].map(wetFraction);
    expect(amounts).toEqual(amounts.toSorted((one, other) => one - other));
    // A thin dropwise film: half-way to wet within the 80 g/m2 that stay on it at most.
    expect(wetFraction(0.08)).toBeGreaterThan(0.5);
    expect(wetFraction(0.001)).toBeLessThan(0.5);
  });

  it('brings the film from dry to wet on a straight line, and keeps its three shares at one', () => {
    expect(blendOptics(dry, wet, 0)).toEqual(dry);
    const half = blendOptics(dry, wet, 0.02);
    expect((half.transmittance - 0.7) / (0.2 - 0.7)).toBeCloseTo(wetFraction(0.02), 2);
    expect((half.emissivity - 0.2) / (0.7 - 0.2)).toBeCloseTo(wetFraction(0.02), 2);
    expect(half.transmittance + half.emissivity + longwaveReflectance(half)).toBeCloseTo(1, 12);
    expect(longwaveReflectance({ transmittance: 0.5, emissivity: 0.2 })).toBeCloseTo(0.3, 12);
  });
});

describe('sunlight through sheets', () => {
  const glass = { refractiveIndex: 1.526, absorbedShare: 0 };
  const at = (degrees: number, count: number, sheet = glass): number => stackTransmittance(degreesToRadians(degrees), Array.from({ length: count }, () => sheet));

  // Duffie2013 examples 5.1.1 and 5.1.2 (from memory): r 0.0434 straight on, 0.185 and 0.001 at 60 degrees; two sheets 0.76.
  it('agrees with the worked examples', () => {
    expect(at(0, 1)).toBeCloseTo((1 - 0.0434) / (1 + 0.0434), 3);
    expect(at(0, 2)).toBeCloseTo((1 - 0.0434) / (1 + 3 * 0.0434), 3);
    expect(at(60, 1)).toBeCloseTo(0.843, 2);
    expect(at(60, 2)).toBeCloseTo(0.76, 2);
  });

  it('does not jump close to straight on', () => {
    expect(at(0.01, 2)).toBeCloseTo(at(0, 2), 6);
  });

  it('is nothing at grazing light, and less at more slant past the angle of Brewster', () => {
    expect(at(90, 1)).toBe(0);
    const falling = [57, 65, 75, 85, 89.9].map((degrees) => at(degrees, 1));
    expect(falling).toEqual(falling.toSorted((one, other) => other - one));
    expect(at(89.9, 1)).toBeLessThan(0.05);
  });

  it('swallows its share on the straight way, and more on the slant one by 1/cos of the refracted angle', () => {
    const tinted = { ...glass, absorbedShare: 0.1 };
    expect(at(0, 1, tinted) / at(0, 1)).toBeCloseTo(0.9, 9);
    expect(at(0, 2, tinted) / at(0, 2)).toBeCloseTo(0.81, 9);
    const refractedRad = Math.asin(Math.sin(degreesToRadians(60)) / 1.526);
    expect(at(60, 1, tinted) / at(60, 1)).toBeCloseTo(0.9 ** (1 / Math.cos(refractedRad)), 9);
  });

  it('is the same for sheets of air, which are none', () => {
    expect(at(40, 3, { refractiveIndex: 1, absorbedShare: 0 })).toBeCloseTo(1, 12);
  });

  it('counts films of polyethylene, and diffuse light as beam at 60 degrees', () => {
    expect(beamTransmittance(0.3, 2)).toBeCloseTo(stackTransmittance(0.3, [POLYETHYLENE_SHEET, POLYETHYLENE_SHEET]), 12);
    expect(diffuseTransmittance(2)).toBeCloseTo(beamTransmittance(degreesToRadians(60), 2), 12);
    expect(stackDiffuseTransmittance([POLYETHYLENE_SHEET])).toBeCloseTo(diffuseTransmittance(1), 12);
    // One clean film of polyethylene passes near 90 % (from memory).
    expect(beamTransmittance(0, 1)).toBeGreaterThan(0.87);
    expect(beamTransmittance(0, 1)).toBeLessThan(0.93);
  });

  it('refuses light from behind, no sheet, and too many', () => {
    for (const incidence of [-0.01, 1.6]) expect(() => stackTransmittance(incidence, [glass])).toThrow(OutOfRangeError);
    for (const count of [0, 9]) expect(() => at(10, count)).toThrow(OutOfRangeError);
    for (const count of [0, 5]) expect(() => beamTransmittance(0.3, count)).toThrow(OutOfRangeError);
    expect(at(10, 8)).toBeGreaterThan(0);
    expect(beamTransmittance(Math.PI / 2, 4)).toBeCloseTo(0, 9);
  });
});

describe('convection in a house', () => {
  const coefficients = { mixing: 1.6, layered: 1.1 };

  it('is the cube root law of either side away from the turn', () => {
    for (const differenceK of [2, 8, 27]) {
      expect(houseAirConvectionWPerM2K(differenceK, coefficients) / naturalConvectionWPerM2K(differenceK, 1.6)).toBeCloseTo(1, 2);
      expect(houseAirConvectionWPerM2K(-differenceK, coefficients) / naturalConvectionWPerM2K(differenceK, 1.1)).toBeCloseTo(1, 2);
    }
    expect(naturalConvectionWPerM2K(-8, 1.5)).toBeCloseTo(3, 12);
  });

  it('passes the turn half way between the two, as air that is never still, without a jump', () => {
    const atTurn = houseAirConvectionWPerM2K(0, coefficients);
    expect(atTurn).toBeCloseTo(1.35 * Math.cbrt(0.1), 9);
    for (const side of [1, -1]) expect(Math.abs(houseAirConvectionWPerM2K(side * 1e-6, coefficients) - atTurn)).toBeLessThan(1e-4);
  });
});

describe('snow on the cover', () => {
  it('stays where the film is flatter than 55 degrees', () => {
    const facet = (degrees: number, areaM2: number) => ({ areaM2, tiltRad: degreesToRadians(degrees), azimuthRad: 0 });
    expect(snowHoldingShare([facet(20, 30), facet(54, 50), facet(56, 5), facet(90, 15)])).toBeCloseTo(0.8, 12);
  });

  it('passes heat as a slab of 0.1 to 0.2 W/(m K) does: in inverse proportion to its depth', () => {
    expect(snowConductanceWPerM2K(0.1, 1) / snowConductanceWPerM2K(0.2, 1)).toBeCloseTo(2, 12);
    expect(snowConductanceWPerM2K(0.1, 1)).toBeGreaterThanOrEqual(1);
    expect(snowConductanceWPerM2K(0.1, 1)).toBeLessThanOrEqual(2);
  });

  it('passes heat on the share that it lies on: the bare rest meets the wind by itself', () => {
    expect(snowConductanceWPerM2K(0.1, 0.25)).toBeCloseTo(0.25 * snowConductanceWPerM2K(0.1, 1), 12);
    expect(snowConductanceWPerM2K(0.1, 0)).toBeGreaterThan(snowConductanceWPerM2K(0.1, 1));
  });

  it('is not felt where there is none or next to none', () => {
    expect(snowConductanceWPerM2K(0, 1)).toBeGreaterThan(100);
    expect(snowConductanceWPerM2K(0, 0)).toBe(snowConductanceWPerM2K(0, 1));
    expect(snowConductanceWPerM2K(1e-9, 1)).toBe(snowConductanceWPerM2K(0, 1));
    expect(() => snowConductanceWPerM2K(-0.01, 1)).toThrow(OutOfRangeError);
    expect(() => snowConductanceWPerM2K(3.1, 1)).toThrow(OutOfRangeError);
  });

  it('passes light layer by layer, and all of it beside', () => {
    expect(sunThroughSnow(0, 1)).toBe(1);
    expect(sunThroughSnow(0.1, 0)).toBe(1);
    expect(sunThroughSnow(0.08, 1)).toBeCloseTo(sunThroughSnow(0.04, 1) ** 2, 12);
    expect(sunThroughSnow(5, 0.7)).toBeCloseTo(0.3, 12);
    // Extinction of 20 to 40 per m (from memory).
    expect(sunThroughSnow(0.03, 1)).toBeGreaterThan(Math.exp(-1.2));
    expect(sunThroughSnow(0.03, 1)).toBeLessThan(Math.exp(-0.6));
  });
});
