import { snowConductanceWPerM2K } from '../../../engine/cover/snow-layer.js';
import type { PublishedTable } from '../published-table.js';

/** Moene and van Dam 2014 table 2.2: fresh snow conducts 0.1 W/(m K), old snow 1.7. Five centimetres of it on a cover of 4.0 W/(m2 K); the engine's snow has settled (0.15) and lies everywhere here. */
export const source = 'Moene2014';

const COVER_W_PER_M2K = 4;
const withSnow = (depthM: number): number => 1 / (1 / COVER_W_PER_M2K + 1 / snowConductanceWPerM2K(depthM, 1));

export const tables: readonly PublishedTable[] = [
  { source, title: 'cover of 4.0 W/(m2 K) under 5 cm of fresh snow', unit: 'W/(m2 K)', tolerance: 0.45, toleranceReason: 'settled snow conducts half as much again as fresh', origin: 'closed form', rows: [{ name: 'together', expected: 1.33, model: () => withSnow(0.05) }] },
];
