/** Thermal properties of a soil; frozen water content decides how much heat freezing gives back. */
export interface SoilRow {
  readonly thermalConductivityWPerMK: number;
  readonly volumetricHeatCapacityJPerM3K: number;
  readonly waterFraction: number;
  readonly source: string;
}

const MOENE = 'Moene2014 table 2.2 (after deVries1963)';

/** Printed rows: sand phi 0.4, clay phi 0.4, peat phi 0.9 by water content. Loam is the mean of sand and clay, compost-rich soil of clay and peat (project rule). */
export const SOILS = {
  sand: {
    dry: { thermalConductivityWPerMK: 0.24, volumetricHeatCapacityJPerM3K: 1.28e6, waterFraction: 0.03, source: MOENE },
    moist: { thermalConductivityWPerMK: 2.1, volumetricHeatCapacityJPerM3K: 2.12e6, waterFraction: 0.2, source: MOENE },
    wet: { thermalConductivityWPerMK: 2.5, volumetricHeatCapacityJPerM3K: 2.96e6, waterFraction: 0.4, source: MOENE },
  },
  loam: {
    dry: { thermalConductivityWPerMK: 0.2, volumetricHeatCapacityJPerM3K: 1.36e6, waterFraction: 0.05, source: `${MOENE}, mean of sand and clay` },
    moist: { thermalConductivityWPerMK: 1.2, volumetricHeatCapacityJPerM3K: 2.3e6, waterFraction: 0.25, source: `${MOENE}, between sand and clay at the same water; prior of this project` },
    wet: { thermalConductivityWPerMK: 1.8, volumetricHeatCapacityJPerM3K: 3.0e6, waterFraction: 0.4, source: `${MOENE}, mean of sand and clay, rounded` },
  },
  clay: {
    dry: { thermalConductivityWPerMK: 0.15, volumetricHeatCapacityJPerM3K: 1.43e6, waterFraction: 0.05, source: MOENE },
    moist: { thermalConductivityWPerMK: 0.9, volumetricHeatCapacityJPerM3K: 2.27e6, waterFraction: 0.2, source: MOENE },
    wet: { thermalConductivityWPerMK: 1.4, volumetricHeatCapacityJPerM3K: 3.1e6, waterFraction: 0.4, source: MOENE },
  },
  'compost-rich': {
    dry: { thermalConductivityWPerMK: 0.1, volumetricHeatCapacityJPerM3K: 0.84e6, waterFraction: 0.05, source: `${MOENE}, mean of clay and peat` },
    moist: { thermalConductivityWPerMK: 0.58, volumetricHeatCapacityJPerM3K: 2.2e6, waterFraction: 0.3, source: `${MOENE}, mean of clay 0.2 and peat 0.45` },
    wet: { thermalConductivityWPerMK: 0.95, volumetricHeatCapacityJPerM3K: 3.5e6, waterFraction: 0.6, source: `${MOENE}, mean of clay 0.4 and peat 0.9` },
  },
  peat: {
    dry: { thermalConductivityWPerMK: 0.04, volumetricHeatCapacityJPerM3K: 0.25e6, waterFraction: 0.05, source: MOENE },
    moist: { thermalConductivityWPerMK: 0.27, volumetricHeatCapacityJPerM3K: 2.13e6, waterFraction: 0.45, source: MOENE },
    wet: { thermalConductivityWPerMK: 0.5, volumetricHeatCapacityJPerM3K: 4.01e6, waterFraction: 0.9, source: MOENE },
  },
} as const satisfies Record<string, Record<'dry' | 'moist' | 'wet', SoilRow>>;

export type SoilKind = keyof typeof SOILS;
export type SoilMoisture = 'dry' | 'moist' | 'wet';
export const SOIL_KINDS = Object.keys(SOILS) as readonly SoilKind[];
