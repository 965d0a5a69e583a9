import { houseGeometry } from '../../../engine/cover/shape.js';
import { METRES_PER_FOOT } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Geometry of hooped houses as needed for the heat-loss worksheet of NRAES-33 (Aldrich and Bartok): arc of a half ellipse by Ramanujan's
 * formula, semicircle for the 30 x 96 ft house; evaluated apart from this code.
 */
export const source = 'NRAES-33';

const hooped = (sizeM: readonly [width: number, length: number, height: number]) =>
  houseGeometry({ kind: 'half-round', widthM: sizeM[0], lengthM: sizeM[1], heightM: sizeM[2], sideHeightM: 0, ridgeAzimuthRad: 0 });

const rows = (name: string, sizeM: readonly [number, number, number], printed: { arcM?: number; coverM2: number; floorM2?: number; volumeM3: number; ratio?: number }): PublishedRow[] => {
  const { coverAreaM2, floorAreaM2, volumeM3, facets } = hooped(sizeM);
  const endsM2 = facets.slice(-2).reduce((sum, facet) => sum + facet.areaM2, 0);
  const row = (what: string, expected: number | undefined, model: () => number): PublishedRow[] => (expected === undefined ? [] : [{ name: `${name}: ${what}`, expected, model }]);
  return [
    ...row('arc, m', printed.arcM, () => (coverAreaM2 - endsM2) / sizeM[1]),
    ...row('cover, m2', printed.coverM2, () => coverAreaM2),
    ...row('floor, m2', printed.floorM2, () => floorAreaM2),
    ...row('volume, m3', printed.volumeM3, () => volumeM3),
    ...row('cover to floor', printed.ratio, () => coverAreaM2 / floorAreaM2),
  ];
};

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'hooped houses', unit: 'as named', tolerance: 3e-3, relative: true, toleranceReason: 'rounded to three or four digits', origin: 'closed form',
    rows: [
      ...rows('4 x 8 x 2.4 m', [4, 8, 2.4], { arcM: 6.926, coverM2: 70.49, floorM2: 32, volumeM3: 60.32, ratio: 2.2 }),
      ...rows('6.1 x 14.6 x 3.2 m', [6.1, 14.6, 3.2], { arcM: 9.819, coverM2: 174, floorM2: 89.1, volumeM3: 223.8, ratio: 1.95 }),
      ...rows('9.14 x 29.3 x 4.57 m', [9.14, 29.3, 4.57], { arcM: 14.357, coverM2: 486.3, floorM2: 267.8, volumeM3: 961.2, ratio: 1.82 }),
      ...rows('30 x 96 ft semicircle', [30 * METRES_PER_FOOT, 96 * METRES_PER_FOOT, 15 * METRES_PER_FOOT], { coverM2: 486, volumeM3: 960.8 }),
    ],
  },
];
