import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { houseGeometry, type HouseGeometry, type HouseShape } from '../../../engine/cover/shape.js';
import { SHAPES, type ShapeKind } from '../../../engine/cover/profile.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { degreesToRadians } from '../../../engine/units.js';

const LENGTH_M = 8;
const shape = (kind: ShapeKind, changes: Partial<HouseShape> = {}): HouseGeometry =>
  houseGeometry({ kind, widthM: 4, lengthM: LENGTH_M, heightM: 3, sideHeightM: 1.2, ridgeAzimuthRad: Math.PI / 2, solidWall: null, ...changes });
const RIDGE_SLOPE = Math.tan(degreesToRadians(25));

describe('gothic', () => {
  /** Half of the section is what lies under the chord from eaves to ridge, and a parabolic segment over it: two thirds of its triangle (Archimedes). */
  const endM2 = (width: number, height: number, side: number): number => {
    const half = width / 2;
    const shoulder = height - RIDGE_SLOPE * half;
    return width * ((side + height) / 2 + ((2 / 3) * (shoulder - side)) / 2);
  };

  it.each([[4, 3, 1.2], [4, 2.4, 0.5], [6, 4, 0], [3, 3, 1.9]])('of %f m width, %f m height, %f m side has the volume of chord and parabolic segment', (widthM, heightM, sideHeightM) => {
    expect(shape('gothic', { widthM, heightM, sideHeightM }).volumeM3).toBeCloseTo(LENGTH_M * endM2(widthM, heightM, sideHeightM), 9);
  });

  it('has a roof between the chord and the lines to its shoulder, as long as the curve measured in fine steps', () => {
    const roofM2 = shape('gothic').facets.slice(0, -2).reduce((sum, { areaM2 }) => sum + areaM2, 0) - 2 * 1.2 * LENGTH_M;
    const shoulderM = 3 - RIDGE_SLOPE * 2;
    expect(roofM2).toBeGreaterThan(2 * LENGTH_M * Math.hypot(2, 3 - 1.2));
    expect(roofM2).toBeLessThan(2 * LENGTH_M * (shoulderM - 1.2 + Math.hypot(2, 3 - shoulderM)));
    let runM = 0;
    const steps = 20_000;
    const at = (t: number): readonly [number, number] => [2 * (1 - t * t), (1 - t) ** 2 * 1.2 + 2 * t * (1 - t) * shoulderM + t * t * 3];
    for (let i = 0; i < steps; i += 1) {
      const [[x0, z0], [x1, z1]] = [at(i / steps), at((i + 1) / steps)];
      runM += Math.hypot(x1 - x0, z1 - z0);
    }
    expect(roofM2 / (2 * LENGTH_M * runM)).toBeCloseTo(1, 4);
  });

  it('that is too flat for its ridge is a gable', () => {
    expect(shape('gothic', { heightM: 2, sideHeightM: 1.2 })).toEqual(shape('gable', { heightM: 2, sideHeightM: 1.2 }));
  });
});

describe('lean-to', () => {
  const leanTo = shape('lean-to', { heightM: 3, sideHeightM: 1.5, solidWall: { heightM: 3, facesAzimuthRad: 0 } });

  it('is a trapezium: 4 x (1.5 + 3)/2 x 8 m', () => {
    expect(leanTo.volumeM3).toBeCloseTo(72, 9);
  });

  it('is glazed on its slope, its front and its two ends; the back is wall', () => {
    expect(leanTo.coverAreaM2).toBeCloseTo(8 * Math.hypot(4, 1.5) + 8 * 1.5 + 2 * 9, 9);
    expect(leanTo.solidWall!.areaM2).toBeCloseTo(24, 9);
    expect(leanTo.solidWall!.openingAreaM2).toBeCloseTo(8 * 5, 9);
  });

  it('with its back to the north looks south, whichever way its ridge is named', () => {
    for (const ridgeAzimuthRad of [Math.PI / 2, -Math.PI / 2, (3 * Math.PI) / 2]) {
      const { solidWall } = shape('lean-to', { ridgeAzimuthRad, solidWall: { heightM: 3, facesAzimuthRad: 0 } });
      expect(Math.cos(solidWall!.inwardAzimuthRad)).toBeCloseTo(-1, 9);
    }
  });

  it('slopes down to the side away from its wall', () => {
    const [slope] = leanTo.facets;
    expect(Math.cos(slope!.azimuthRad - leanTo.solidWall!.inwardAzimuthRad)).toBeCloseTo(1, 9);
  });
});

describe('every shape', () => {
  const anyHouse = fc
    .record({ kind: fc.constantFrom(...SHAPES), widthM: fc.double({ min: 2, max: 12, noNaN: true }), lengthM: fc.double({ min: 2, max: 40, noNaN: true }), heightM: fc.double({ min: 1.5, max: 6, noNaN: true }), side: fc.double({ min: 0, max: 0.9, noNaN: true }), ridgeAzimuthRad: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), wall: fc.option(fc.double({ min: 0.1, max: 1, noNaN: true })), facesAzimuthRad: fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }) })
    .map(({ side, wall, heightM, facesAzimuthRad, ...rest }): HouseShape => ({ ...rest, heightM, sideHeightM: side * (heightM - 0.1), solidWall: wall === null ? null : { heightM: wall * heightM, facesAzimuthRad } }));

  it('has facets that add up to its cover', () => {
    fc.assert(fc.property(anyHouse, (given) => {
      const { facets, coverAreaM2 } = houseGeometry(given);
      expect(facets.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(coverAreaM2, 6);
      for (const { areaM2 } of facets) expect(areaM2).toBeGreaterThan(0);
    }));
  });

  /** The outward areas of a closed body cancel; curves are cut into strips, which leaves a percent or two. */
  it('is closed: seen from above its cover is its floor, and from the sides it cancels, with the back wall of a lean-to', () => {
    const closed = anyHouse.map((given): HouseShape => ({ ...given, solidWall: given.kind === 'lean-to' ? { heightM: given.heightM, facesAzimuthRad: 0 } : null }));
    fc.assert(fc.property(closed, (given) => {
      const { facets, floorAreaM2, solidWall } = houseGeometry(given);
      const total = (of: (facet: (typeof facets)[number]) => number): number => facets.reduce((sum, facet) => sum + facet.areaM2 * of(facet), 0);
      expect(total(({ tiltRad }) => Math.cos(tiltRad)) / floorAreaM2).toBeCloseTo(1, 1);
      const outwardRad = (solidWall?.inwardAzimuthRad ?? 0) + Math.PI;
      for (const axis of [Math.cos, Math.sin]) {
        const sideways = total(({ tiltRad, azimuthRad }) => Math.sin(tiltRad) * axis(azimuthRad)) + (solidWall?.areaM2 ?? 0) * axis(outwardRad);
        expect(Math.abs(sideways)).toBeLessThan(0.02 * floorAreaM2);
      }
    }));
  });

  it('refuses a side as high as its ridge and a wall higher than the house', () => {
    expect(() => shape('gable', { sideHeightM: 3 })).toThrow(OutOfRangeError);
    expect(() => shape('gable', { solidWall: { heightM: 3.5, facesAzimuthRad: 0 } })).toThrow(OutOfRangeError);
  });
});

describe('a solid wall along one long side', () => {
  const wall = (heightM: number, facesAzimuthRad = 0): Partial<HouseShape> => ({ solidWall: { heightM, facesAzimuthRad } });

  it('as high as the side of a gable takes that side and nothing else', () => {
    expect(shape('gable').coverAreaM2 - shape('gable', wall(1.2)).coverAreaM2).toBeCloseTo(1.2 * LENGTH_M, 9);
  });

  it('half as high takes half of it; higher also takes its share of the roof on that side', () => {
    expect(shape('gable').coverAreaM2 - shape('gable', wall(0.6)).coverAreaM2).toBeCloseTo(0.6 * LENGTH_M, 9);
    const halfRoofM2 = (LENGTH_M * Math.hypot(2, 1.8)) / 2;
    expect(shape('gable').coverAreaM2 - shape('gable', wall(2.1)).coverAreaM2).toBeCloseTo(1.2 * LENGTH_M + halfRoofM2, 9);
  });

  it.each(SHAPES)('never adds cover and leaves volume and floor alone: %s', (kind) => {
    const areas = [0.3, 0.9, 1.5, 3].map((heightM) => shape(kind, wall(heightM)).coverAreaM2);
    areas.slice(1).forEach((areaM2, i) => expect(areaM2).toBeLessThanOrEqual(areas[i]! + 1e-9));
    expect(areas[0]!).toBeLessThanOrEqual(shape(kind).coverAreaM2 + 1e-9);
    expect(shape(kind, wall(1.5)).volumeM3).toBe(shape(kind).volumeM3);
  });

  it('stands on the side that it faces', () => {
    const north = shape('gable', wall(1.2, 0));
    const south = shape('gable', wall(1.2, Math.PI));
    expect(Math.cos(north.solidWall!.inwardAzimuthRad)).toBeCloseTo(-1, 9);
    expect(Math.cos(south.solidWall!.inwardAzimuthRad)).toBeCloseTo(1, 9);
  });

  it('and the floor turn a flat opening to the cover: the hypotenuse of the corner', () => {
    expect(shape('gable', wall(1.5)).solidWall!.openingAreaM2).toBeCloseTo(LENGTH_M * Math.hypot(4, 1.5), 9);
  });
});
