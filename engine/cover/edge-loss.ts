/** Heat loss of an edge in contact with the ground outside, for each metre of wall, without insulation. */
export const BARE_EDGE_W_PER_MK = 1.2; // ASHRAE-90-1 table A6.3, unheated slab: F 0.73 Btu/(h ft F) = 1.26 (from memory)

/** Same table with foam of 50 mm reaching down 0.6 m: F 0.54; 1.2 m: F 0.48, in W/(m K) (from memory). */
const FOAM_60_CM_SHARE = 0.74;
const FOAM_120_CM_SHARE = 0.66;
const TABLE_FOAM_M = 0.05;

/**
 * Edge loss with foam let into the ground along the walls.
 * Units: m; W/(m K).
 * Valid: depth 0 to 2 m, foam 0 to 0.3 m.
 * Outside: deeper or thicker than the table counts as its last row.
 * Source: ASHRAE-90-1 table A6.3 (from memory), straight between its rows; thinner foam in proportion to its resistance.
 */
export function edgeLossWPerMK(foam: { depthM: number; thicknessM: number } | null): number {
  if (!foam) return BARE_EDGE_W_PER_MK;
  const atDepth = foam.depthM <= 0.6 ? 1 - (1 - FOAM_60_CM_SHARE) * (foam.depthM / 0.6) : FOAM_60_CM_SHARE - (FOAM_60_CM_SHARE - FOAM_120_CM_SHARE) * Math.min(1, (foam.depthM - 0.6) / 0.6);
  return BARE_EDGE_W_PER_MK * (1 - (1 - atDepth) * Math.min(1, foam.thicknessM / TABLE_FOAM_M));
}
