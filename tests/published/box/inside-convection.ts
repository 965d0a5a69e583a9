import { naturalConvectionWPerM2K, VERTICAL_W_PER_M2K43 } from '../../../engine/cover/convection.js';
import type { Face } from './room.js';

// Walton1983 as in EnergyPlusEngRef, flat surfaces (cosine of the tilt 1): 9.482/(7.283 - 1) where warm air rises from or cold air falls off, 1.810/(1.382 + 1) where it lies still.
const FLAT_UNSTABLE_W_PER_M2K43 = 9.482 / (7.283 - 1);
const FLAT_STABLE_W_PER_M2K43 = 1.81 / (1.382 + 1);

/** Natural convection between a face of the room and its air, W/(m2 K). */
export function insideConvectionWPerM2K(face: Face, faceTempK: number, airTempK: number): number {
  const differenceK = faceTempK - airTempK;
  if (face !== 'roof' && face !== 'floor') return naturalConvectionWPerM2K(differenceK, VERTICAL_W_PER_M2K43);
  const unstable = face === 'floor' ? differenceK > 0 : differenceK < 0;
  return naturalConvectionWPerM2K(differenceK, unstable ? FLAT_UNSTABLE_W_PER_M2K43 : FLAT_STABLE_W_PER_M2K43);
}
