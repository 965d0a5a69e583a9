import { describe, expect, it } from 'vitest';
import { FILMS } from '../../engine/data/films.js';
import { stackDiffuseTransmittance, stackTransmittance } from '../../engine/cover/shortwave-transmittance.js';
import { sunlitThermometerTempK, type Thermometer } from '../../engine/sun/sunlit-thermometer.js';
import { celsiusToKelvin, degreesToRadians } from '../../engine/units.js';
import { FORTY_FIVE_NORTH, FORTY_NORTH, sunnyWinterDay } from './sunny-winter-day.js';

/**
 * Common practice, no source: on a clear winter noon a shut house of two films stands 18 to 32 K above the outside air.
 * Input: 4 x 8 x 2.4 m half-round, two standard films, frame and dirt leave 0.85 of the light, moist beds, no vents; the days of sunny-winter-day.ts
 * (-5 °C at noon, 1.5 m/s at the cover, bare ground outside); 480 W/m2 on the flat at 40.1 N (sun 29.7 degrees high), 400 at 45.1 N (24.7).
 */
const noonGainK = (place: typeof FORTY_NORTH, ridgeRuns: 'east-west' | 'north-south', pathMoisture: 'dry' | 'moist'): number => {
  const { noon } = sunnyWinterDay({ place, ridgeRuns, soil: { kind: 'loam', moisture: 'moist', pathMoisture } }, { weather: { peakSunWPerM2: place === FORTY_NORTH ? 480 : 400 } });
  return noon.insideC - noon.outsideC;
};
const LEAST_K = 18;
const MOST_K = 32;

describe('shut house of two films on a clear winter noon at -5 °C', () => {
  it('has the sun and the cold that the input says', () => {
    const { noon } = sunnyWinterDay({});
    expect(noon.sunHighDegrees).toBeGreaterThan(25);
    expect(noon.sunHighDegrees).toBeLessThan(30);
    expect(noon.outsideC).toBeCloseTo(-5, 0);
    expect(noon.globalWPerM2).toBeCloseTo(480, -1);
  });

  it.each([['40.1 N, moist paths', FORTY_NORTH, 'moist'], ['40.1 N, dry paths', FORTY_NORTH, 'dry'], ['45.1 N, dry paths', FORTY_FIVE_NORTH, 'dry']] as const)('stands 18 to 32 K above the outside air, ridge east-west: %s', (_name, place, path) => {
    const gainK = noonGainK(place, 'east-west', path);
    expect(gainK).toBeGreaterThan(LEAST_K);
    expect(gainK).toBeLessThan(MOST_K);
  });

  it.each([['40.1 N', FORTY_NORTH], ['45.1 N', FORTY_FIVE_NORTH]] as const)('gains more with its ridge east-west than north-south, by more the lower the sun: %s', (_name, place) => {
    expect(noonGainK(place, 'east-west', 'moist') - noonGainK(place, 'north-south', 'moist')).toBeGreaterThan(1);
  });
});

/**
 * Common practice, no source: a small thermometer in that sun reads 2 to 10 K more than one in the shade.
 * Input: the noon above at 40.1 N inside the house (beam through two films at 60 degrees of incidence, frame and dirt 0.85, ground that throws back
 * a fifth), air of 15 °C that moves 0.1 to 0.2 m/s (a fan blows such a lead away), bulb or stem of 5 to 10 mm, glass with red spirit (0.6) or a light grey plastic probe (0.5).
 */
const NOON_ALTITUDE_RAD = degreesToRadians(29.7);
const CLEAN_SHARE = 0.85;
const GLOBAL_W_PER_M2 = 480;
const DIFFUSE_W_PER_M2 = 96;
const SHEETS = [FILMS.standard.sheet, FILMS.standard.sheet];
const beamNormalWPerM2 = ((GLOBAL_W_PER_M2 - DIFFUSE_W_PER_M2) / Math.sin(NOON_ALTITUDE_RAD)) * stackTransmittance(degreesToRadians(60), SHEETS) * CLEAN_SHARE;
const diffuseWPerM2 = DIFFUSE_W_PER_M2 * stackDiffuseTransmittance(SHEETS) * CLEAN_SHARE;
const reflectedWPerM2 = 0.2 * (beamNormalWPerM2 * Math.sin(NOON_ALTITUDE_RAD) + diffuseWPerM2);
const AIR_K = celsiusToKelvin(15);
const readsAboveAirK = (thermometer: Thermometer, airSpeedMPerS: number, sunny: boolean): number =>
  sunlitThermometerTempK(thermometer, { airTempK: AIR_K, radiantTempK: AIR_K, airSpeedMPerS, beamNormalWPerM2: sunny ? beamNormalWPerM2 : 0, diffuseWPerM2, reflectedWPerM2 }) - AIR_K;

describe('small thermometer in the sun of the house', () => {
  const KINDS: readonly (readonly [string, Thermometer])[] = [
    ['bulb of 5 mm, red spirit', { shape: 'sphere', diameterM: 0.005, absorptance: 0.6, emissivity: 0.9 }],
    ['bulb of 10 mm, red spirit', { shape: 'sphere', diameterM: 0.01, absorptance: 0.6, emissivity: 0.9 }],
    ['probe of 8 mm, light grey', { shape: 'cylinder', diameterM: 0.008, absorptance: 0.5, emissivity: 0.9 }],
  ];
  it.each(KINDS.flatMap(([name, thermometer]) => [0.1, 0.2].map((speed) => [name, speed, thermometer] as const)))('%s in air of %f m/s reads 2 to 10 K above one in the shade', (_name, speed, thermometer) => {
    const moreK = readsAboveAirK(thermometer, speed, true) - readsAboveAirK(thermometer, speed, false);
    expect(moreK).toBeGreaterThan(2);
    expect(moreK).toBeLessThan(10);
  });
});
