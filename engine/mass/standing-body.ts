/** Radiation of a body near 277 K, W/(m2 K), and the emissivity that it goes with: paint, rust, plastic and stone alike (from memory: 0.9 to 0.95). */
const RADIATION_W_PER_M2K = 4.6;
export const BODY_EMISSIVITY = 0.95;
/** Of the heat that a free body gives, what its surface gives to the air by convection, and what its upper half gives to the cover by radiation (prior of this project). */
export const BODY_TO_AIR_SHARE = 0.4;
const BODY_TO_COVER_SHARE = 0.35;

/**
 * What bodies on the floor turn to the cover: as much as they hide of the floor.
 * Units: W/K of a body to all that is round it in; m2 out.
 * Valid: any conductance of a body whose surface gives 7.3 W/(m2 K).
 * Outside: not checked.
 * Source: 208 L drum, 0.572 m across and 0.876 m high: its top and half of its side are 1.04 m2, the share named above of its 12.6 W/K gives 0.96.
 */
export const shownM2 = (conductanceWPerK: number): number => (BODY_TO_COVER_SHARE * conductanceWPerK) / RADIATION_W_PER_M2K;
