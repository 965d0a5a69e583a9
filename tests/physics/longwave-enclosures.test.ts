import { describe, expect, it } from 'vitest';
import type { LongwaveOptics } from '../../engine/cover/film-optics.js';
import type { LongwaveEnclosure } from '../../engine/cover/longwave-enclosure.js';
import { longwaveExchange, MOST_FILMS } from '../../engine/cover/longwave-exchange.js';

/** Closed forms of Incropera2007 ch. 13 (from memory) for grey bodies that enclose each other, and balances that hold for all of them. */
const BLACK: LongwaveOptics = { transmittance: 0, emissivity: 1 };
const opaque = (emissivity: number): LongwaveOptics => ({ transmittance: 0, emissivity });
const FLOOR_M2 = 10;
const bare = (emissivity: number, areaM2 = FLOOR_M2) => ({ areaM2, emissivity, covers: [] });
const WALL = { areaM2: 6, emissivity: 1, openingAreaM2: 14 };
const house = (parts: Partial<LongwaveEnclosure>): LongwaveEnclosure => ({ coverAreaM2: 20, films: [BLACK], patches: [bare(1)], ...parts });

function areas(enclosure: LongwaveEnclosure) {
  const { plane, areasM2 } = longwaveExchange(enclosure);
  return { plane, between: (n: number, m: number): number => areasM2[n * plane.count + m]! };
}

describe('floor and cover', () => {
  it('exchange as a body and the one around it: A1 / (1/e1 + A1/A2 (1/e2 - 1))', () => {
    for (const [floor, film] of [[1, 1], [1, 0.4], [0.7, 1], [0.7, 0.4]] as const) {
      const { plane, between } = areas(house({ patches: [bare(floor)], films: [opaque(film)] }));
      expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(FLOOR_M2 / (1 / floor + (FLOOR_M2 / 20) * (1 / film - 1)), 9);
      expect(between(plane.film(0), plane.surroundings)).toBeCloseTo(20 * film, 9);
      expect(between(plane.floor(0), plane.surroundings)).toBe(0);
    }
  });

  it('share what a film lets through: t A to the surroundings, e A to the film', () => {
    const { plane, between } = areas(house({ coverAreaM2: FLOOR_M2, films: [{ transmittance: 0.5, emissivity: 0.3 }] }));
    expect(between(plane.floor(0), plane.surroundings)).toBeCloseTo(0.5 * FLOOR_M2, 9);
    expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(0.3 * FLOOR_M2, 9);
    expect(between(plane.film(0), plane.surroundings)).toBeCloseTo(0.3 * FLOOR_M2, 9);
  });

  it('are parted by a stack of equal mirrors and windows as series says: t^2 / (1 - r^2)', () => {
    const film = { transmittance: 0.6, emissivity: 0.1 };
    const { plane, between } = areas(house({ coverAreaM2: FLOOR_M2, films: [film, film] }));
    expect(between(plane.floor(0), plane.surroundings)).toBeCloseTo((0.36 / (1 - 0.09)) * FLOOR_M2, 9);
  });
});

describe('snow on the outer film', () => {
  it('adds its own black area to what that film sends out, and to no other', () => {
    const films = [opaque(0.3), opaque(0.5)];
    const [clear, snowy] = [areas(house({ films })), areas(house({ films, snow: { share: 0.6, emissivity: 0.98 } }))];
    const outer = clear.plane.film(1);
    expect(snowy.between(outer, snowy.plane.surroundings) - clear.between(outer, clear.plane.surroundings)).toBeCloseTo(20 * 0.6 * 0.98, 9);
    expect(snowy.between(snowy.plane.film(0), snowy.plane.surroundings)).toBeCloseTo(clear.between(clear.plane.film(0), clear.plane.surroundings), 12);
  });
});

describe('two patches of floor', () => {
  it('do not see each other under a black cover, and share it by area and emissivity', () => {
    const { plane, between } = areas(house({ patches: [bare(0.9, 4), bare(0.5, 6)] }));
    expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(0.9 * 4, 9);
    expect(between(plane.floor(1), plane.film(0))).toBeCloseTo(0.5 * 6, 9);
    expect(between(plane.floor(0), plane.floor(1))).toBeCloseTo(0, 12);
  });

  it('have each its own row covers, the lowest first', () => {
    const fleece = { transmittance: 0.5, emissivity: 0.4 };
    const { plane, between } = areas(house({ coverAreaM2: FLOOR_M2, patches: [{ areaM2: 3, emissivity: 1, covers: [fleece, BLACK] }, { areaM2: 5, emissivity: 1, covers: [fleece] }, bare(1, 2)] }));
    expect(between(plane.floor(0), plane.rowCover(0, 0))).toBeCloseTo(0.4 * 3, 9);
    expect(between(plane.floor(0), plane.rowCover(0, 1))).toBeCloseTo(0.5 * 3, 9);
    expect(between(plane.rowCover(0, 0), plane.rowCover(0, 1))).toBeCloseTo(0.4 * 3, 9);
    expect(between(plane.rowCover(0, 1), plane.film(0))).toBeCloseTo(3, 9);
    expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(0, 12);
    expect(between(plane.floor(1), plane.film(0))).toBeCloseTo(0.5 * 5, 9);
    expect(between(plane.rowCover(1, 0), plane.film(0))).toBeCloseTo(0.4 * 5, 9);
    expect(between(plane.floor(2), plane.film(0))).toBeCloseTo(2, 9);
  });
});

describe('a curtain over the floor', () => {
  it('that is opaque exchanges with the floor like parallel plates, A / (1/e1 + 1/e2 - 1), and hides it', () => {
    const { plane, between } = areas(house({ patches: [bare(0.8)], curtain: opaque(0.3) }));
    expect(between(plane.floor(0), plane.curtain)).toBeCloseTo(FLOOR_M2 / (1 / 0.8 + 1 / 0.3 - 1), 9);
    expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(0, 12);
    expect(between(plane.curtain, plane.film(0))).toBeCloseTo(0.3 * FLOOR_M2, 9);
  });

  it('that is open as air changes nothing', () => {
    const parts = { patches: [bare(0.8, 4), bare(0.6, 6)], films: [{ transmittance: 0.3, emissivity: 0.4 }], wall: { ...WALL, emissivity: 0.7 } };
    const open = areas(house({ ...parts, curtain: { transmittance: 1, emissivity: 0 } }));
    const none = areas(house(parts));
    const planes = ({ plane }: typeof open): number[] => [plane.floor(0), plane.floor(1), plane.wall, plane.film(0), plane.surroundings];
    planes(open).forEach((n, i) => planes(open).forEach((m, j) => expect(open.between(n, m)).toBeCloseTo(none.between(planes(none)[i]!, planes(none)[j]!), 9)));
  });

  it('is seen by all patches as one plane', () => {
    const { plane, between } = areas(house({ patches: [bare(1, 4), bare(0.5, 6)], curtain: BLACK }));
    expect(between(plane.floor(0), plane.curtain)).toBeCloseTo(4, 9);
    expect(between(plane.floor(1), plane.curtain)).toBeCloseTo(3, 9);
  });
});

describe('an opaque wall', () => {
  it('and the floor send through their opening what a black body of its size would', () => {
    const { plane, between } = areas(house({ wall: WALL }));
    expect(between(plane.floor(0), plane.film(0)) + between(plane.wall, plane.film(0))).toBeCloseTo(14, 9);
    expect(between(plane.floor(0), plane.film(0)) / between(plane.wall, plane.film(0))).toBeCloseTo(10 / 6, 9);
    expect(between(plane.wall, plane.surroundings)).toBe(0);
  });

  // Of 16 m2 of floor and wall, 2 m2 less than the opening are seen by themselves; in proportion to their areas.
  it('and the floor see each other with what the opening leaves', () => {
    const { plane, between } = areas(house({ wall: WALL }));
    expect(between(plane.floor(0), plane.wall)).toBeCloseTo((16 - 14) * (10 / 16) * (6 / 16), 9);
  });

  it('as grey as the floor makes one cavity with it: three resistances in series', () => {
    for (const [inner, film] of [[0.7, 0.4], [0.5, 1]] as const) {
      const { plane, between } = areas(house({ patches: [bare(inner)], films: [opaque(film)], wall: { ...WALL, emissivity: inner } }));
      expect(between(plane.floor(0), plane.film(0)) + between(plane.wall, plane.film(0))).toBeCloseTo(1 / ((1 - inner) / (inner * 16) + 1 / 14 + (1 - film) / (film * 20)), 9);
    }
  });

  it('that mirrors takes nothing', () => {
    const { plane, between } = areas(house({ wall: { ...WALL, emissivity: 0 } }));
    expect(between(plane.wall, plane.film(0))).toBe(0);
    expect(between(plane.floor(0), plane.wall)).toBe(0);
  });

  it('stands over a curtain drawn under it', () => {
    const { plane, between } = areas(house({ wall: WALL, curtain: BLACK }));
    expect(between(plane.floor(0), plane.curtain)).toBeCloseTo(FLOOR_M2, 9);
    expect(between(plane.floor(0), plane.wall)).toBeCloseTo(0, 12);
    expect(between(plane.curtain, plane.film(0)) + between(plane.wall, plane.film(0))).toBeCloseTo(14, 9);
  });
});

describe('bodies that stand on the floor', () => {
  // Two halves of 3 m2 each: one to the cover, one to the floor, whose view of the cover shrinks by as much.
  it('show the cover as much of themselves as they hide of the floor', () => {
    const { plane, between } = areas(house({ bodies: [{ shownM2: 3, emissivity: 1 }] }));
    expect(between(plane.body(0), plane.film(0))).toBeCloseTo(3, 9);
    expect(between(plane.body(0), plane.floor(0))).toBeCloseTo(3, 9);
    expect(between(plane.floor(0), plane.film(0))).toBeCloseTo(FLOOR_M2 - 3, 9);
  });

  it('as grey as the floor send more through the same opening, and never more than a black floor would', () => {
    const toFilm = (parts: Partial<LongwaveEnclosure>): number => {
      const { plane, between } = areas(house({ patches: [bare(0.5)], ...parts }));
      return [plane.floor(0), ...(parts.bodies ?? []).map((_, b) => plane.body(b))].reduce((sum, n) => sum + between(n, plane.film(0)), 0);
    };
    expect(toFilm({ bodies: [{ shownM2: 4, emissivity: 0.5 }] })).toBeGreaterThan(toFilm({}));
    expect(toFilm({ bodies: [{ shownM2: 4, emissivity: 0.5 }] })).toBeLessThan(FLOOR_M2);
  });

  it('stand under a curtain that is drawn over them, and beside the row cover of a bed', () => {
    const under = areas(house({ bodies: [{ shownM2: 3, emissivity: 1 }], curtain: BLACK }));
    expect(under.between(under.plane.body(0), under.plane.curtain)).toBeCloseTo(3, 9);
    expect(under.between(under.plane.body(0), under.plane.film(0))).toBeCloseTo(0, 12);
    const beside = areas(house({ bodies: [{ shownM2: 3, emissivity: 1 }], patches: [{ areaM2: FLOOR_M2, emissivity: 1, covers: [BLACK] }] }));
    expect(beside.between(beside.plane.floor(0), beside.plane.rowCover(0, 0))).toBeCloseTo(FLOOR_M2, 9);
    expect(beside.between(beside.plane.body(0), beside.plane.rowCover(0, 0))).toBeCloseTo(3, 9);
    expect(beside.between(beside.plane.body(0), beside.plane.floor(0))).toBeCloseTo(0, 12);
  });

  it('see two beds in proportion to their areas, and each other hardly', () => {
    const { plane, between } = areas(house({ patches: [bare(1, 4), bare(1, 6)], bodies: [{ shownM2: 2, emissivity: 1 }, { shownM2: 1, emissivity: 1 }] }));
    expect(between(plane.body(0), plane.floor(0))).toBeCloseTo(2 * 0.4, 9);
    expect(between(plane.body(0), plane.floor(1))).toBeCloseTo(2 * 0.6, 9);
    expect(between(plane.body(0), plane.body(1))).toBeCloseTo(0, 12);
  });

  it('that show nothing change nothing', () => {
    const parts = { patches: [bare(0.8, 4), bare(0.6, 6)], films: [{ transmittance: 0.3, emissivity: 0.4 }], wall: { ...WALL, emissivity: 0.7 } };
    const [none, without] = [areas(house({ ...parts, bodies: [{ shownM2: 0, emissivity: 0.9 }] })), areas(house(parts))];
    const planes = ({ plane }: typeof none): number[] => [plane.floor(0), plane.floor(1), plane.wall, plane.film(0), plane.surroundings];
    planes(none).forEach((n, i) => planes(none).forEach((m, j) => expect(none.between(n, m)).toBeCloseTo(without.between(planes(without)[i]!, planes(without)[j]!), 9)));
  });

  it('cannot hide more floor than there is', () => {
    expect(() => areas(house({ bodies: [{ shownM2: 6, emissivity: 1 }, { shownM2: 4.1, emissivity: 1 }] }))).toThrow(RangeError);
    expect(() => areas(house({ bodies: [{ shownM2: 6, emissivity: 1 }, { shownM2: 4, emissivity: 1 }] }))).not.toThrow();
  });
});

describe('any enclosure of one temperature', () => {
  const grey = { transmittance: 0.3, emissivity: 0.5 };
  const ANY: readonly LongwaveEnclosure[] = [
    house({}),
    house({ patches: [bare(0.9, 4), { areaM2: 6, emissivity: 0.8, covers: [grey, grey] }], films: [grey, opaque(0.2)] }),
    house({ patches: [bare(0.9, 4), { areaM2: 6, emissivity: 0.8, covers: [grey] }], films: [grey, grey], curtain: grey, wall: { ...WALL, emissivity: 0.6 } }),
    house({ patches: [bare(0.9, 4), { areaM2: 6, emissivity: 0.8, covers: [grey] }], bodies: [{ shownM2: 2, emissivity: 0.9 }, { shownM2: 1, emissivity: 0.5 }], films: [grey], wall: { ...WALL, emissivity: 0.6 } }),
  ];

  it.each(ANY.map((enclosure, i) => [i + 1, enclosure] as const))('surrounds a leaf with its own temperature, and has an index for each plane: %i', (_, enclosure) => {
    const { plane, fromAbove, fromBelow } = longwaveExchange(enclosure);
    enclosure.patches.forEach((__, p) => {
      for (const shares of [fromAbove, fromBelow]) expect(shares.subarray(p * plane.count, (p + 1) * plane.count).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    });
    const all = [
      ...enclosure.patches.map((__, p) => plane.floor(p)),
      ...enclosure.patches.flatMap(({ covers }, p) => covers.map((__, k) => plane.rowCover(p, k))),
      ...(enclosure.bodies ?? []).map((__, b) => plane.body(b)),
      ...(enclosure.curtain ? [plane.curtain] : []),
      ...(enclosure.wall ? [plane.wall] : []),
      ...enclosure.films.map((__, f) => plane.film(f)),
      plane.surroundings,
    ];
    expect(all).toEqual(Array.from({ length: plane.count }, (__, n) => n));
    if (!enclosure.curtain) expect(all).not.toContain(plane.curtain);
    if (!enclosure.wall) expect(all).not.toContain(plane.wall);
    // A plane exchanges nothing with itself.
    const { between } = areas(enclosure);
    for (const n of all) expect(between(n, n)).toBe(0);
  });

  it('shows a leaf the black floor under it and the black cover over it', () => {
    const { plane, fromAbove, fromBelow } = longwaveExchange(house({}));
    expect(fromBelow[plane.floor(0)]).toBeCloseTo(1, 12);
    expect(fromAbove[plane.film(0)]).toBeCloseTo(1, 12);
  });
});

describe('enclosures that cannot be', () => {
  it('have a cover smaller than what it covers', () => {
    expect(() => areas(house({ coverAreaM2: 9.9 }))).toThrow(RangeError);
    expect(() => areas(house({ coverAreaM2: 13.9, wall: WALL }))).toThrow(RangeError);
    expect(() => areas(house({ coverAreaM2: 10 }))).not.toThrow();
    expect(() => areas(house({ coverAreaM2: 14, wall: WALL }))).not.toThrow();
    // The last bit of a sum of areas is no reason to stop.
    expect(() => areas(house({ coverAreaM2: 10 * (1 - 1e-12) }))).not.toThrow();
  });

  it('have no film, or too many', () => {
    const films = (count: number) => house({ films: Array.from({ length: count }, () => BLACK) });
    for (const count of [0, MOST_FILMS + 1]) expect(() => areas(films(count))).toThrow(RangeError);
    for (const count of [1, MOST_FILMS]) expect(() => areas(films(count))).not.toThrow();
  });
});
