/** Stone and masonry as a store of heat. */
export interface StoneRow {
  readonly volumetricHeatCapacityJPerM3K: number;
  readonly thermalConductivityWPerMK: number;
  /** Share of sunlight that its bare surface absorbs. */
  readonly bareAbsorptance: number;
  readonly densityKgPerM3: number;
  readonly source: string;
}

/** Share of sunlight that a flat black coat absorbs. */
export const BLACK_COAT = { absorptance: 0.96, source: 'Kutz2006 table 19, flat black lacquer' } as const;

// Heat capacity of the bulk, with the air between loose pieces (void 0.35-0.45: 1.2-1.4 MJ/(m3 K)); conductivities from memory.
export const STONES = {
  'pale gravel': { volumetricHeatCapacityJPerM3K: 1.3e6, thermalConductivityWPerMK: 0.5, bareAbsorptance: 0.29, densityKgPerM3: 1600, source: 'Kutz2006 table 19 (gravel 0.29); bulk capacity and conductivity from memory' },
  rock: { volumetricHeatCapacityJPerM3K: 1.3e6, thermalConductivityWPerMK: 0.5, bareAbsorptance: 0.6, densityKgPerM3: 1600, source: 'loose rock, void 0.4 (from memory); absorptance between pale gravel and dark rock: prior of this project' },
  brick: { volumetricHeatCapacityJPerM3K: 1.5e6, thermalConductivityWPerMK: 0.8, bareAbsorptance: 0.75, densityKgPerM3: 1800, source: 'Kutz2006 table 19 (red brick 0.75); capacity 1.4-1.6 and conductivity from memory' },
  concrete: { volumetricHeatCapacityJPerM3K: 2.05e6, thermalConductivityWPerMK: 1.4, bareAbsorptance: 0.6, densityKgPerM3: 2300, source: 'albedo 0.40 (from memory); capacity 2.0-2.1 and conductivity from memory' },
  earth: { volumetricHeatCapacityJPerM3K: 1.74e6, thermalConductivityWPerMK: 1, bareAbsorptance: 0.7, densityKgPerM3: 1900, source: 'compressed earth 1.74 MJ/(m3 K) and dry soil albedo 0.22-0.33 (from memory)' },
} as const satisfies Record<string, StoneRow>;

export type StoneKind = keyof typeof STONES;
export const STONE_KINDS = Object.keys(STONES) as readonly StoneKind[];
