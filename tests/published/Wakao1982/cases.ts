import { STONES } from '../../../engine/data/stones.js';
import { packedBedNusselt, packedBedWPerM3K } from '../../../engine/mass/packed-bed.js';
import { stoneLumps } from '../../../engine/mass/stone-store.js';
import { JOULES_PER_KWH } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/** Wakao and Kagei 1982, air through a bed of stones of 5 cm, void 0.4, as evaluated by the ht library (1.0.6); beside it the older law of Dunkle and Loef (650 (G/D)^0.7, from memory). And a slab of concrete. */
export const source = 'Wakao1982';

const STONE_M = 0.05;
const BED = [[0.05, 21.07, 758.5, 650], [0.1, 30.9, 1112.5, 1055.9]] as const;
/** Air of the library run, 300 K (Incropera2007 table A.4). */
const VISCOSITY_PA_S = 1.846e-5;

/** Both lumps of 1 m2 of slab, its faces free. */
const slabKWh = (thicknessM: number, dropK: number): number => {
  const { skinJPerK, coreJPerK } = stoneLumps(STONES.concrete, { volumeM3: thicknessM, exposedM2: 1, deepestM: thicknessM });
  return ((skinJPerK + coreJPerK) * dropK) / JOULES_PER_KWH;
};

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'Nusselt number of the bed', unit: '1', tolerance: 0.03, relative: true, toleranceReason: 'properties of air at another temperature', origin: 'library run',
    rows: BED.map(([fluxKgPerM2S, nusselt]) => ({ name: `${fluxKgPerM2S} kg/(m2 s)`, expected: nusselt, model: () => packedBedNusselt((fluxKgPerM2S * STONE_M) / VISCOSITY_PA_S) })),
  },
  {
    source, title: 'heat transfer of the bed', unit: 'W/(m3 K)', tolerance: 0.05, relative: true, toleranceReason: 'properties of air at another temperature', origin: 'library run',
    rows: BED.map(([fluxKgPerM2S, , perM3]) => ({ name: `${fluxKgPerM2S} kg/(m2 s)`, expected: perM3, model: () => packedBedWPerM3K(fluxKgPerM2S, STONE_M) })),
  },
  {
    source, title: 'the same beside Dunkle and Loef', unit: 'W/(m3 K)', tolerance: 0.2, relative: true, toleranceReason: 'two laws of rock beds', origin: 'from memory',
    rows: BED.map(([fluxKgPerM2S, , , older]) => ({ name: `${fluxKgPerM2S} kg/(m2 s)`, expected: older, model: () => packedBedWPerM3K(fluxKgPerM2S, STONE_M) })),
  },
  { source, title: 'slab of concrete, 10 cm, over 10 K', unit: 'kWh/m2', tolerance: 0.02, toleranceReason: 'concrete of 2.0 to 2.1 MJ/(m3 K)', origin: 'closed form', rows: [{ name: 'heat', expected: 0.56, model: () => slabKWh(0.1, 10) }] },
];
