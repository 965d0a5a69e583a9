import { HEATER_KINDS, type HeaterKind } from '../../../engine/data/heater-kinds.js';
import { JOULES_PER_KWH, LITRES_PER_US_GALLON, SECONDS_PER_HOUR, WATTS_PER_BTU_PER_HOUR } from '../../../engine/units.js';
import type { PublishedTable } from '../published-table.js';

/**
 * What an unvented flame brings into a house. Water by stoichiometry of propane, butane and kerosene; Bartok's "up to 5 gal an hour" from
 * 400 000 Btu/h. Pages of UMass Extension on unvented heaters give the heating values.
 */
export const source = 'UMass-UnventedHeaters';

const kilowattNightJ = 12 * JOULES_PER_KWH;
const vapourKg = (kind: HeaterKind, joules: number): number => HEATER_KINDS[kind].vapourKgPerJ * joules;
const BIG_HEATER_J_PER_HOUR = 400_000 * WATTS_PER_BTU_PER_HOUR * SECONDS_PER_HOUR;
const TEA_LIGHT_KG = 0.013;

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'propane, 1 kW through 12 h', unit: 'kg', tolerance: 0.01, toleranceReason: 'rounded to 0.01 kg', origin: 'closed form',
    rows: [
      { name: 'fuel', expected: 0.858, model: () => kilowattNightJ / HEATER_KINDS['unvented-propane'].energyPerUnitJ },
      { name: 'water', expected: 1.4, model: () => vapourKg('unvented-propane', kilowattNightJ) },
    ],
  },
  {
    source, title: 'water from burning, 400 000 Btu/h', unit: 'kg/h', tolerance: 0.15, toleranceReason: 'rounded to 0.1 kg', origin: 'closed form',
    rows: [{ name: 'propane', expected: 13.7, model: () => vapourKg('unvented-propane', BIG_HEATER_J_PER_HOUR) }, { name: 'natural gas', expected: 17.1, model: () => vapourKg('unvented-gas', BIG_HEATER_J_PER_HOUR) }],
  },
  {
    source, title: 'the same as Bartok prints it: up to 5 gal an hour', unit: 'gal/h', tolerance: 0.6, toleranceReason: '"up to"', origin: 'published',
    rows: [{ name: 'natural gas, the wetter fuel', expected: 5, model: () => vapourKg('unvented-gas', BIG_HEATER_J_PER_HOUR) / LITRES_PER_US_GALLON }],
  },
  {
    source, title: 'tea light of 13 g in 4 h', unit: 'W', tolerance: 3, toleranceReason: 'wax of 43 to 46 MJ/kg', origin: 'closed form',
    rows: [{ name: 'warmth', expected: 39, model: () => (TEA_LIGHT_KG * HEATER_KINDS.candles.energyPerUnitJ * HEATER_KINDS.candles.deliveredShare) / (HEATER_KINDS.candles.burnHours * SECONDS_PER_HOUR) }],
  },
];
