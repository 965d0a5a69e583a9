import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { OutOfRangeError } from '../../../engine/errors.js';
import { cylinderNusselt, sphereNusselt, sunlitThermometerTempK, thermometerToAirWPerM2K, type SunnyPlace, type Thermometer } from '../../../engine/sun/sunlit-thermometer.js';

const PROBE: Thermometer = { shape: 'cylinder', diameterM: 0.008, absorptance: 0.6, emissivity: 0.9 };
const DARK: SunnyPlace = { airTempK: 280, radiantTempK: 280, airSpeedMPerS: 0.2, beamNormalWPerM2: 0, diffuseWPerM2: 0, reflectedWPerM2: 0 };
const shown = (place: Partial<SunnyPlace>, thermometer: Partial<Thermometer> = {}): number => sunlitThermometerTempK({ ...PROBE, ...thermometer }, { ...DARK, ...place });

describe('heat transfer to the air', () => {
  // Incropera2007 examples 7.4 (cylinder of 12.7 mm at 10 m/s: Re 6071, Nu 40.6) and 7.6 (sphere of 10 mm: Re 6510, Nu 47.4), from memory.
  it('is that of the worked examples of a cylinder and a sphere', () => {
    expect(cylinderNusselt(6071) / 40.6).toBeCloseTo(1, 1);
    expect(sphereNusselt(6510) / 47.4).toBeCloseTo(1, 1);
  });

  it('tends to conduction alone around a sphere in still air', () => {
    expect(sphereNusselt(0)).toBe(2);
  });

  it('refuses what it is not for', () => {
    expect(() => thermometerToAirWPerM2K({ shape: 'sphere', diameterM: 0.5 }, 1)).toThrow(OutOfRangeError);
    expect(() => thermometerToAirWPerM2K({ shape: 'sphere', diameterM: 0.01 }, 0)).toThrow(OutOfRangeError);
    expect(() => shown({ beamNormalWPerM2: 1500 })).toThrow(OutOfRangeError);
  });
});

describe('what a thermometer in the sun shows', () => {
  it('is the air, in the dark among things as warm as the air', () => {
    expect(shown({})).toBe(280);
  });

  it('closes its balance', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1000, noNaN: true }), fc.double({ min: 0.05, max: 5, noNaN: true }), fc.constantFrom('sphere', 'cylinder'), (beamNormalWPerM2, airSpeedMPerS, shape) => {
        const tempK = shown({ beamNormalWPerM2, airSpeedMPerS, diffuseWPerM2: 80, radiantTempK: 270 }, { shape });
        const absorbed = 0.6 * ((shape === 'sphere' ? 1 / 4 : 1 / Math.PI) * beamNormalWPerM2 + 40);
        const lost = thermometerToAirWPerM2K({ shape, diameterM: 0.008 }, airSpeedMPerS) * (tempK - 280) + 0.9 * STEFAN_BOLTZMANN_W_PER_M2K4 * (tempK ** 4 - 270 ** 4);
        expect(lost).toBeCloseTo(absorbed, 3);
      }),
    );
  });

  it('is nearer to the air the thinner, the paler and the better aired it is', () => {
    const sunny = { beamNormalWPerM2: 500 };
    expect(shown(sunny, { diameterM: 0.004 })).toBeLessThan(shown(sunny));
    expect(shown(sunny, { absorptance: 0.3 })).toBeLessThan(shown(sunny));
    expect(shown({ ...sunny, airSpeedMPerS: 2 })).toBeLessThan(shown(sunny));
  });

  it('lies below the air under a cold roof by night, further below the less air moves past it', () => {
    const night = { radiantTempK: 265 };
    expect(shown(night)).toBeLessThan(280);
    expect(shown({ ...night, airSpeedMPerS: 0.05 })).toBeLessThan(shown(night));
  });
});
