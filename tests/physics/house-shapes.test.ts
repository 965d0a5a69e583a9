import { describe, expect, it } from 'vitest';
import { houseGeometry, type HouseShape } from '../../engine/cover/shape.js';
import { profileOf, SHAPES } from '../../engine/cover/profile.js';
import { OutOfRangeError } from '../../engine/errors.js';

const EAST_RAD = Math.PI / 2;
/** A ridge that runs north: its right side looks east. */
const shape = (parts: Partial<HouseShape>): HouseShape => ({ kind: 'gable', widthM: 4, lengthM: 10, heightM: 3, sideHeightM: 1.5, ridgeAzimuthRad: 0, ...parts });
const towards = (azimuthRad: number, otherRad: number): number => Math.cos(azimuthRad - otherRad);

describe('a gable of 4 x 10 m, 1.5 m to the eaves, 3 m to the ridge', () => {
  it('has slopes of 2.5 m, 9 m2 in each end, and all that follows', () => {
    const house = houseGeometry(shape({}));
    expect(house.floorAreaM2).toBeCloseTo(40, 12);
    expect(house.perimeterM).toBeCloseTo(28, 12);
    expect(house.volumeM3).toBeCloseTo(90, 9);
    expect(house.coverAreaM2).toBeCloseTo(50 + 30 + 18, 9);
    expect(house.solidWall).toBeNull();
  });

  it('has two slopes of 3 up on 4 across, and four upright faces', () => {
    const tilts = houseGeometry(shape({})).facets.map(({ tiltRad }) => tiltRad).toSorted((one, other) => one - other);
    expect(tilts.slice(0, 2).map(Math.tan)).toEqual([expect.closeTo(0.75, 9), expect.closeTo(0.75, 9)]);
    expect(tilts.slice(2)).toEqual(Array.from({ length: 4 }, () => expect.closeTo(Math.PI / 2, 9) as number));
  });

  it('without side walls has none', () => {
    expect(profileOf(shape({ sideHeightM: 0 }), 1).strips.map(({ side }) => side)).toEqual([1, -1]);
    expect(houseGeometry(shape({ sideHeightM: 0 })).facets.map(({ areaM2 }) => areaM2 > 0)).toEqual([true, true, true, true]);
  });
});

describe('other cross-sections', () => {
  it('a half-round as high as half its width is half a cylinder', () => {
    const house = houseGeometry(shape({ kind: 'half-round', heightM: 2 }));
    expect(house.volumeM3).toBeCloseTo(10 * 2 * Math.PI, 9);
    expect(house.coverAreaM2 / (2 * Math.PI * 10 + 4 * Math.PI)).toBeCloseTo(1, 3);
  });

  it('a lean-to falls from its back wall in one slope', () => {
    const { strips, endAreaM2 } = profileOf(shape({ kind: 'lean-to', sideHeightM: 1.5 }), 1);
    expect(endAreaM2).toBeCloseTo(4 * (1.5 + 0.75), 12);
    const back = strips.filter(({ side }) => side === 1);
    expect(back).toEqual([expect.objectContaining({ runM: 3, bottomM: 0, topM: 3 })]);
    const front = strips.filter(({ side }) => side === -1).toSorted((one, other) => one.topM - other.topM);
    expect(front.map(({ runM }) => runM)).toEqual([expect.closeTo(1.5, 12), expect.closeTo(Math.hypot(4, 1.5), 12)]);
    expect(Math.tan(front[1]!.tiltRad)).toBeCloseTo(1.5 / 4, 12);
    expect(front.map(({ bottomM, topM }) => [bottomM, topM])).toEqual([[0, 1.5], [1.5, 3]]);
    expect(profileOf(shape({ kind: 'lean-to', sideHeightM: 0 }), -1).strips.map(({ side }) => side).toSorted((one, other) => one - other)).toEqual([-1, 1]);
  });

  // Archimedes: a parabola holds two thirds of the triangle of its tangents. Ridge tilt of 25 degrees.
  it('a pointed arch has the area that Archimedes gives it', () => {
    const { endAreaM2, strips } = profileOf(shape({ kind: 'gothic', sideHeightM: 1.2 }), 1);
    const shoulderM = 3 - 2 * Math.tan((25 * Math.PI) / 180);
    const underChord = 0.5 * 2 * 1.8;
    const overChord = (2 / 3) * 0.5 * 2 * (shoulderM - 1.2);
    expect(endAreaM2).toBeCloseTo(4 * 1.2 + 2 * (underChord + overChord), 9);
    const arc = strips.filter(({ bottomM, side }) => side === 1 && bottomM >= 1.2);
    expect(arc.reduce((sum, { runM, tiltRad }) => sum + runM * Math.cos(tiltRad), 0) / 2).toBeCloseTo(1, 2);
    expect(arc.reduce((sum, { runM, tiltRad }) => sum + runM * Math.sin(tiltRad), 0) / 1.8).toBeCloseTo(1, 2);
    expect(Math.max(...arc.map(({ tiltRad }) => tiltRad))).toBeGreaterThan((80 * Math.PI) / 180);
    const top = arc.find(({ topM }) => Math.abs(topM - 3) < 1e-9)!;
    expect(top.tiltRad).toBeGreaterThan((25 * Math.PI) / 180);
    expect(top.tiltRad).toBeLessThan((30 * Math.PI) / 180);
  });

  it('a pointed arch stands on side walls where it has some', () => {
    const upright = profileOf(shape({ kind: 'gothic', sideHeightM: 1 }), 1).strips.filter(({ topM }) => topM <= 1);
    expect(upright.map(({ runM, side, bottomM }) => [runM, side, bottomM])).toEqual([[1, 1, 0], [1, -1, 0]]);
    expect(profileOf(shape({ kind: 'gothic', sideHeightM: 0 }), 1).strips.every(({ runM }) => runM > 0)).toBe(true);
    expect(profileOf(shape({ kind: 'gothic', sideHeightM: 0 }), 1).endAreaM2).toBeGreaterThan(0.5 * 4 * 3);
  });

  it('a pointed arch too flat for its ridge is a gable', () => {
    expect(profileOf(shape({ kind: 'gothic', heightM: 2 }), 1)).toEqual(profileOf(shape({ heightM: 2 }), 1));
    const justTooFlat = { sideHeightM: 1, heightM: 1 + 2 * Math.tan((25 * Math.PI) / 180) };
    expect(profileOf(shape({ kind: 'gothic', ...justTooFlat }), 1)).toEqual(profileOf(shape(justTooFlat), 1));
  });
});

describe.each(SHAPES)('%s: a closed surface', (kind) => {
  // Worked out inside each test: what is worked out while tests are collected, no mutant changes.
  const built = () => {
    const house = houseGeometry(shape({ kind, ridgeAzimuthRad: 0.4, ...(kind === 'lean-to' ? { solidWall: { heightM: 3, facesAzimuthRad: 0.4 + EAST_RAD } } : {}) }));
    const wall = house.solidWall ? [{ areaM2: house.solidWall.areaM2, tiltRad: Math.PI / 2, azimuthRad: house.solidWall.inwardAzimuthRad + Math.PI }] : [];
    return { house, all: [...house.facets, ...wall] };
  };

  // The outward areas of a closed body sum to nothing: the cover's share upwards is the floor.
  it('looks up as much as its floor does down, and to no side more than to the other', () => {
    const { house, all } = built();
    expect(all.reduce((sum, { areaM2, tiltRad }) => sum + areaM2 * Math.cos(tiltRad), 0) / house.floorAreaM2).toBeCloseTo(1, 2);
    for (const direction of [0, 0.4, 1.2, 2.5]) {
      expect(Math.abs(all.reduce((sum, { areaM2, tiltRad, azimuthRad }) => sum + areaM2 * Math.sin(tiltRad) * towards(azimuthRad, direction), 0))).toBeLessThan(1e-6 * house.coverAreaM2);
    }
    expect(house.facets.reduce((sum, { areaM2 }) => sum + areaM2, 0)).toBeCloseTo(house.coverAreaM2, 9);
  });

  it('looks to both sides and both ends', () => {
    const { all } = built();
    for (const turn of [0, 0.5, 1, 1.5]) expect(all.some(({ tiltRad, azimuthRad }) => tiltRad > 0.5 && towards(azimuthRad, 0.4 + turn * Math.PI) > 0.999)).toBe(true);
  });
});

describe('a solid wall along one side', () => {
  const withWall = (heightM: number, parts: Partial<HouseShape> = {}, facesAzimuthRad = EAST_RAD) => houseGeometry(shape({ ...parts, solidWall: { heightM, facesAzimuthRad } }));
  const lookingTo = (house: ReturnType<typeof houseGeometry>, azimuthRad: number): number =>
    house.facets.filter((facet) => towards(facet.azimuthRad, azimuthRad) > 0.999).reduce((sum, { areaM2 }) => sum + areaM2, 0);

  it('takes the place of what stood there', () => {
    expect(withWall(1).coverAreaM2).toBeCloseTo(98 - 10, 9);
    expect(withWall(1.5).coverAreaM2).toBeCloseTo(98 - 15, 9);
    // Half-way up the slope of 25 m2.
    expect(withWall(2.25).coverAreaM2).toBeCloseTo(98 - 15 - 12.5, 9);
    expect(withWall(3).coverAreaM2).toBeCloseTo(98 - 15 - 25, 9);
    expect(withWall(3).facets).toHaveLength(4);
    expect(withWall(1).volumeM3).toBeCloseTo(90, 9);
  });

  it('stands on the side that looks most where it is said to face', () => {
    const all = lookingTo(houseGeometry(shape({})), EAST_RAD);
    for (const faces of [EAST_RAD, EAST_RAD + 0.5, EAST_RAD - 0.5]) {
      const house = withWall(1, {}, faces);
      expect(lookingTo(house, EAST_RAD)).toBeCloseTo(all - 10, 9);
      expect(lookingTo(house, -EAST_RAD)).toBeCloseTo(all, 9);
      expect(towards(house.solidWall!.inwardAzimuthRad, -EAST_RAD)).toBeCloseTo(1, 9);
    }
    const west = withWall(1, {}, -EAST_RAD + 0.5);
    expect(lookingTo(west, EAST_RAD)).toBeCloseTo(all, 9);
    expect(lookingTo(west, -EAST_RAD)).toBeCloseTo(all - 10, 9);
    expect(towards(west.solidWall!.inwardAzimuthRad, EAST_RAD)).toBeCloseTo(1, 9);
  });

  it('has its area, and an opening that spans from its top to the other edge of the floor', () => {
    expect(withWall(3).solidWall!.areaM2).toBeCloseTo(30, 9);
    expect(withWall(3).solidWall!.openingAreaM2).toBeCloseTo(50, 9);
  });

  it('is the back of a lean-to', () => {
    const house = withWall(3, { kind: 'lean-to' });
    expect(house.coverAreaM2).toBeCloseTo(10 * (1.5 + Math.hypot(4, 1.5)) + 2 * 9, 9);
    expect(lookingTo(house, EAST_RAD)).toBe(0);
  });

  it('cuts an arch lower down the higher it stands, and leaves its other half alone', () => {
    const areas = [0.1, 0.5, 1, 2, 2.9].map((heightM) => lookingTo(withWall(heightM, { kind: 'half-round' }), EAST_RAD));
    expect(areas).toEqual(areas.toSorted((one, other) => other - one));
    expect(new Set(areas).size).toBe(areas.length);
    expect(areas[4]!).toBeGreaterThan(0);
    expect(lookingTo(withWall(2, { kind: 'half-round' }), -EAST_RAD)).toBeCloseTo(lookingTo(houseGeometry(shape({ kind: 'half-round' })), -EAST_RAD), 9);
  });
});

describe('houses outside the range', () => {
  it.each<Partial<HouseShape>>([
    { widthM: 0.9 }, { widthM: 61 }, { lengthM: 0.9 }, { lengthM: 61 }, { heightM: 0.7, sideHeightM: 0.1 }, { heightM: 13 }, { sideHeightM: 2.95 }, { sideHeightM: -0.1 },
    { solidWall: { heightM: 3.1, facesAzimuthRad: 0 } }, { solidWall: { heightM: 0, facesAzimuthRad: 0 } },
  ])('%o', (parts) => {
    expect(() => houseGeometry(shape(parts))).toThrow(OutOfRangeError);
  });

  it('a half-round has no side walls to be wrong', () => {
    expect(() => houseGeometry(shape({ kind: 'half-round', sideHeightM: 2.95 }))).not.toThrow();
  });
});
