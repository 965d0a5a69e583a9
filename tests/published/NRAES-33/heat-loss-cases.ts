import { leakageM3PerS } from '../../../engine/airflow/infiltration.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../../../engine/constants.js';
import { houseGeometry } from '../../../engine/cover/shape.js';
import { METRES_PER_FOOT, WATTS_PER_BTU_PER_HOUR } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';

/**
 * Heat-loss worksheet of NRAES-33 (Aldrich and Bartok; its worked pages were not obtained): cover area x U, air changes x 0.018 Btu/(ft3 °F), edge
 * x F, with recalled coefficients, evaluated apart from this code. The engine gives areas, volume and airflow; the coefficients are the printed ones.
 */
export const source = 'NRAES-33';

/** 0.33 Wh/(m3 K) of air near 20 °C, as the worksheet has it. */
const WORKSHEET_AIR_KG_PER_M3 = (0.33 * 3600) / DRY_AIR_HEAT_CAPACITY_J_PER_KGK;

interface Worksheet {
  readonly name: string;
  readonly sizeM: readonly [width: number, length: number, height: number];
  readonly uWPerM2K: number;
  readonly airChanges: number;
  readonly edgeWPerMK: number;
  readonly differenceK: number;
}

/** Sides and ends have an edge on the ground. */
function parts({ sizeM: [widthM, lengthM, heightM], uWPerM2K, airChanges, edgeWPerMK, differenceK }: Worksheet): { cover: number; air: number; edge: number } {
  const { coverAreaM2, volumeM3, perimeterM } = houseGeometry({ kind: 'half-round', widthM, lengthM, heightM, sideHeightM: 0, ridgeAzimuthRad: 0 });
  const airW = leakageM3PerS({ stillAirChangesPerHour: airChanges, perWindAirChangesPerHour: 0 }, volumeM3, 0) * WORKSHEET_AIR_KG_PER_M3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * differenceK;
  return { cover: uWPerM2K * coverAreaM2 * differenceK, air: airW, edge: edgeWPerMK * perimeterM * differenceK };
}

const rows = (sheet: Worksheet, printed: { cover: number; air: number; edge: number; total: number }): PublishedRow[] => {
  const row = (what: string, expected: number, model: () => number): PublishedRow => ({ name: `${sheet.name}: ${what}`, expected, model });
  return [
    row('cover', printed.cover, () => parts(sheet).cover),
    row('air', printed.air, () => parts(sheet).air),
    row('edge', printed.edge, () => parts(sheet).edge),
    row('total', printed.total, () => ((loss) => loss.cover + loss.air + loss.edge)(parts(sheet))),
  ];
};

const SMALL: Worksheet = { name: 'A, 4 x 8 x 2.4 m, double film', sizeM: [4, 8, 2.4], uWPerM2K: 4, airChanges: 0.75, edgeWPerMK: 1.4, differenceK: 15 };
const FEET_30_96: Worksheet['sizeM'] = [30 * METRES_PER_FOOT, 96 * METRES_PER_FOOT, 15 * METRES_PER_FOOT];
const LARGE: Worksheet = { name: 'B, 30 x 96 ft, double film', sizeM: FEET_30_96, uWPerM2K: 4, airChanges: 0.75, edgeWPerMK: 1.4, differenceK: 60 / 1.8 };
const SQUARE_FOOT_U_W_PER_M2K = (WATTS_PER_BTU_PER_HOUR / METRES_PER_FOOT ** 2) * 1.8;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'heat-loss worksheet', unit: 'W', tolerance: 5e-3, relative: true, toleranceReason: 'areas rounded to 0.1 m2', origin: 'from memory',
    rows: [
      ...rows(SMALL, { cover: 4230, air: 224, edge: 504, total: 4958 }),
      ...rows(LARGE, { cover: 64_793, air: 7926, edge: 3584, total: 76_304 }),
      ...rows({ ...SMALL, name: 'C, as A, single film', uWPerM2K: 6.8, airChanges: 1 }, { cover: 7191, air: 298, edge: 504, total: 7993 }),
    ],
  },
  {
    source, title: 'the worksheet in Btu/h', unit: 'Btu/h', tolerance: 6e-3, relative: true, toleranceReason: 'coefficients 0.70 and 0.018 rounded to two digits', origin: 'closed form',
    rows: [
      { name: 'D, film of B alone, 0.70 Btu/(h ft2 °F), 60 °F', expected: 219_692, model: () => parts({ ...LARGE, uWPerM2K: 0.7 * SQUARE_FOOT_U_W_PER_M2K }).cover / WATTS_PER_BTU_PER_HOUR },
      { name: 'air of 12 000 ft3, one change an hour, 60 °F', expected: 12_960, model: () => (leakageM3PerS({ stillAirChangesPerHour: 1, perWindAirChangesPerHour: 0 }, 12_000 * METRES_PER_FOOT ** 3, 0) * 1.2 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * (60 / 1.8)) / WATTS_PER_BTU_PER_HOUR },
    ],
  },
  {
    source, title: 'infiltration at 20 °C: 60.3 m3, half a change an hour, 15 K', unit: 'W', tolerance: 0.1, toleranceReason: 'rounded to 0.1 W', origin: 'closed form',
    rows: [{ name: 'heat', expected: 149.2, model: () => leakageM3PerS({ stillAirChangesPerHour: 0.5, perWindAirChangesPerHour: 0 }, 60.3, 0) * WORKSHEET_AIR_KG_PER_M3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * 15 }],
  },
];
