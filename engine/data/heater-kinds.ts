import { JOULES_PER_KWH } from '../units.js';

export interface HeaterKindRow {
  /** Share of the energy bought that stays in the house, with the heat of the water vapour that a flame without a flue gives off. */
  readonly deliveredShare: number;
  /** Water vapour given off into the house for each joule bought. */
  readonly vapourKgPerJ: number;
  /** Does not run without mains current: an element, a fan or an igniter. */
  readonly needsMains: boolean;
  /** How long one filling burns; null for what burns on by itself. */
  readonly burnHours: number | null;
  /** Energy in one unit sold, J. */
  readonly energyPerUnitJ: number;
  readonly unitSold: 'kWh' | 'kg' | 'litre' | 'm3';
  /** A flame in or at the house: the safety words apply. */
  readonly combustion: 'none' | 'vented' | 'unvented';
  /** Price of one unit sold when the grower gives none: a placeholder of this project, to be replaced. */
  readonly defaultPricePerUnit: number;
  readonly source: string;
}

const MEGAJOULE = 1e6;

/** Water from burning a fuel for each kWh of its heating value (stoichiometry): propane, kerosene, natural gas, paraffin. */
const PROPANE_VAPOUR = 0.117 / JOULES_PER_KWH;
const KEROSENE_VAPOUR = 0.107 / JOULES_PER_KWH;
const GAS_VAPOUR = 0.146 / JOULES_PER_KWH;
const PARAFFIN_VAPOUR = 1.33 / (46 * MEGAJOULE);

const PROPANE = { energyPerUnitJ: 50.35 * MEGAJOULE, unitSold: 'kg', defaultPricePerUnit: 2.2 } as const;
const KEROSENE = { energyPerUnitJ: 10.45 * JOULES_PER_KWH, unitSold: 'litre', defaultPricePerUnit: 1.6 } as const;
const GAS = { energyPerUnitJ: 10.35 * JOULES_PER_KWH, unitSold: 'm3', defaultPricePerUnit: 1 } as const;
/** Vented unit heaters bring 0.78 to 0.82 (from memory) and need current for fan and igniter; direct-fired ones 0.92 to 1.01. */
const VENTED = { deliveredShare: 0.8, vapourKgPerJ: 0, needsMains: true, burnHours: null, combustion: 'vented' } as const;
const UNVENTED = { deliveredShare: 0.95, needsMains: false, burnHours: null, combustion: 'unvented' } as const;

export const HEATER_KINDS = {
  electric: { deliveredShare: 1, vapourKgPerJ: 0, needsMains: true, burnHours: null, energyPerUnitJ: JOULES_PER_KWH, unitSold: 'kWh', combustion: 'none', defaultPricePerUnit: 0.2, source: 'definition; price: project estimate' },
  'vented-propane': { ...PROPANE, ...VENTED, source: 'UMass-UnventedHeaters for the heating value; price: project estimate' },
  'unvented-propane': { ...PROPANE, ...UNVENTED, vapourKgPerJ: PROPANE_VAPOUR, source: 'IowaState2021 (92.4-100.9 % of direct-fired heaters); price: project estimate' },
  'vented-kerosene': { ...KEROSENE, ...VENTED, source: '135 000 Btu/gal (Wisconsin-GreenhouseEnergy); price: project estimate' },
  'unvented-kerosene': { ...KEROSENE, ...UNVENTED, vapourKgPerJ: KEROSENE_VAPOUR, source: '135 000 Btu/gal (Wisconsin-GreenhouseEnergy); IowaState2021; price: project estimate' },
  'vented-gas': { ...GAS, ...VENTED, source: '1000 Btu/ft3 natural gas (UMass-UnventedHeaters); price: project estimate' },
  'unvented-gas': { ...GAS, ...UNVENTED, vapourKgPerJ: GAS_VAPOUR, source: '1000 Btu/ft3 natural gas (UMass-UnventedHeaters); IowaState2021; price: project estimate' },
  'wood-stove': { deliveredShare: 0.65, vapourKgPerJ: 0, needsMains: false, burnHours: 5, energyPerUnitJ: 4.15 * JOULES_PER_KWH, unitSold: 'kg', combustion: 'vented', defaultPricePerUnit: 0.25, source: 'wood at 20 % moisture 4.0-4.3 kWh/kg, stove 0.55-0.75 (from memory); one filling and price: project estimate' },
  candles: { deliveredShare: 1, vapourKgPerJ: PARAFFIN_VAPOUR, needsMains: false, burnHours: 4, energyPerUnitJ: 46 * MEGAJOULE, unitSold: 'kg', combustion: 'unvented', defaultPricePerUnit: 6, source: 'paraffin 46 MJ/kg; a 13 g tea light burns 4 h: 39 W, whatever pot stands over it; price: project estimate' },
} as const satisfies Record<string, HeaterKindRow>;

export type HeaterKind = keyof typeof HEATER_KINDS;
export const HEATER_KIND_NAMES = Object.keys(HEATER_KINDS) as readonly HeaterKind[];
