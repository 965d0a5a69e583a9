import { describe, expect, it } from 'vitest';
import { VAPORISATION_HEAT_J_PER_KG } from '../../../engine/constants.js';
import { HEATER_KIND_NAMES, HEATER_KINDS, type HeaterKind, type HeaterKindRow } from '../../../engine/data/heater-kinds.js';
import { houseWith } from '../greenhouse/files.js';

const row = (kind: HeaterKind): HeaterKindRow => HEATER_KINDS[kind];

/** Atomic masses (IUPAC, rounded): water of a fuel CxHy is y/2 molecules. */
const CARBON = 12.011;
const HYDROGEN = 1.008;
const WATER = 18.015;
const waterKgPerKg = (carbons: number, hydrogens: number): number => ((hydrogens / 2) * WATER) / (carbons * CARBON + hydrogens * HYDROGEN);

describe('fuels', () => {
  it.each([['unvented-propane', 3, 8, 50.35], ['unvented-gas', 1, 4, 55.5], ['unvented-kerosene', 12, 26, 46.2], ['candles', 25, 52, 46]] as const)('%s gives the water of its formula C%iH%i', (kind, carbons, hydrogens, megajoulesPerKg) => {
    expect(row(kind).vapourKgPerJ / (waterKgPerKg(carbons, hydrogens) / (megajoulesPerKg * 1e6))).toBeCloseTo(1, 1);
  });

  it('leave no more in the house than was bought, and water only from a flame without a flue', () => {
    for (const kind of HEATER_KIND_NAMES) {
      const { deliveredShare, vapourKgPerJ, combustion } = row(kind);
      expect(deliveredShare).toBeGreaterThan(0);
      expect(deliveredShare).toBeLessThanOrEqual(1);
      expect(vapourKgPerJ > 0).toBe(combustion === 'unvented');
    }
  });
});

describe('heater of a house', () => {
  it('is what was bought, less the flue and what its vapour carries', () => {
    for (const kind of HEATER_KIND_NAMES) {
      const heater = houseWith({ heater: { kind, power: 2000 } }).heater!;
      expect(heater.deliveredW + heater.vapourKgPerS * VAPORISATION_HEAT_J_PER_KG).toBeCloseTo(2000 * row(kind).deliveredShare, 6);
      expect(heater.needsMains).toBe(row(kind).needsMains);
    }
  });

  it('of candles gives 39 W a candle, in pots or not, and burns out', () => {
    for (const candles of [1, 10, 25]) {
      const heater = houseWith({ heater: { kind: 'candles', power: 39 * candles } }).heater!;
      expect((heater.deliveredW + heater.vapourKgPerS * VAPORISATION_HEAT_J_PER_KG) / candles).toBeCloseTo(39, 9);
      expect(heater.burnS).toBe(4 * 3600);
    }
  });

  it('that burns at one rate has no thermostat, whatever the file says', () => {
    for (const kind of ['candles', 'wood-stove'] as const) expect(houseWith({ heater: { kind, power: 2000, thermostat: true } }).heater!.thermostat).toBe(false);
    expect(houseWith({ heater: { kind: 'electric', power: 2000 } }).heater!.thermostat).toBe(true);
  });
});
