import { JOULES_PER_KWH } from '../units.js';

export interface HeaterKindRow {
  /** Share of the energy bought that warms the house. */
  readonly deliveredShare: number;
  /** Energy in one unit sold, J. */
  readonly energyPerUnitJ: number;
  readonly unitSold: 'kWh' | 'kg' | 'litre';
  /** A flame in or at the house: the safety words apply. */
  readonly combustion: 'none' | 'vented' | 'unvented';
  /** Price of one unit sold when the grower gives none: a placeholder of this project, to be replaced. */
  readonly defaultPricePerUnit: number;
  readonly source: string;
}

const MEGAJOULE = 1e6;

export const HEATER_KINDS = {
  electric: { deliveredShare: 1, energyPerUnitJ: JOULES_PER_KWH, unitSold: 'kWh', combustion: 'none', defaultPricePerUnit: 0.2, source: 'definition; price: project estimate' },
  'vented-propane': { deliveredShare: 0.8, energyPerUnitJ: 50.35 * MEGAJOULE, unitSold: 'kg', combustion: 'vented', defaultPricePerUnit: 2.2, source: 'UMass-UnventedHeaters for the heating value; efficiency 0.78-0.82 of vented unit heaters (from memory); price: project estimate' },
  'unvented-propane': { deliveredShare: 0.95, energyPerUnitJ: 50.35 * MEGAJOULE, unitSold: 'kg', combustion: 'unvented', defaultPricePerUnit: 2.2, source: 'IowaState2021 (92.4-100.9 % of direct-fired heaters); price: project estimate' },
  'vented-kerosene': { deliveredShare: 0.8, energyPerUnitJ: 10.45 * JOULES_PER_KWH, unitSold: 'litre', combustion: 'vented', defaultPricePerUnit: 1.6, source: '135 000 Btu/gal (Wisconsin-GreenhouseEnergy); efficiency from memory; price: project estimate' },
  'unvented-kerosene': { deliveredShare: 0.95, energyPerUnitJ: 10.45 * JOULES_PER_KWH, unitSold: 'litre', combustion: 'unvented', defaultPricePerUnit: 1.6, source: '135 000 Btu/gal (Wisconsin-GreenhouseEnergy); IowaState2021; price: project estimate' },
} as const satisfies Record<string, HeaterKindRow>;

export type HeaterKind = keyof typeof HEATER_KINDS;
export const HEATER_KIND_NAMES = Object.keys(HEATER_KINDS) as readonly HeaterKind[];
