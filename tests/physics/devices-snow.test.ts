import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import type { House } from '../../engine/greenhouse/house.js';
import { NO_TROUBLES, type Controls } from '../../engine/night/controls.js';
import { celsiusToKelvin, SECONDS_PER_HOUR } from '../../engine/units.js';
import { CLEAR_COLD_NIGHT, hourOfLastNightS, INSIDE, OUTSIDE, referenceHouse, runInventedNight, type InventedWeather } from '../fixtures/houses.js';

const EVENING_S = hourOfLastNightS(CLEAR_COLD_NIGHT, -8);
const DRY: GreenhouseFile['soil'] = { kind: 'loam', moisture: 'dry', pathMoisture: 'dry' };

/** Dawn low with snow on the roof from the evening of a clear night on. */
const lowWithSnowK = (changes: Partial<GreenhouseFile>, depthM: number): number =>
  runInventedNight(referenceHouse({ ...changes, now: { snowOnRoof: Math.max(depthM, 0.01) } }), CLEAR_COLD_NIGHT, { controls: (timeS) => (timeS > EVENING_S ? { troubles: { ...NO_TROUBLES, roofSnowM: depthM } } : {}) }).lowK(INSIDE);

const SHAPES = [['half-round', {}], ['gable', { shape: 'gable', sideHeight: 1.2 }]] as const;
const COVERS = [['two films', [{ film: 'standard' }, { film: 'standard' }]], ['one film', [{ film: 'standard' }]], ['infrared film', [{ film: 'ir-barrier' }]], ['panels', [{ film: 'twin-wall' }]]] as const;
const SOILS = [['moist soil', {}], ['dry soil', { soil: DRY }]] as const;

const withLayers = (changes: Partial<GreenhouseFile>, layers: readonly GreenhouseFile['layers'][number][]): Partial<GreenhouseFile> => ({ ...changes, layers: [...layers] });

describe('snow on the roof through a clear night', () => {
  it.each(SHAPES.flatMap(([shape, shaped]) => COVERS.flatMap(([cover, layers]) => SOILS.map(([ground, soil]) => [shape, cover, ground, withLayers({ ...shaped, ...soil }, layers)] as const))))('never leaves the house colder from 2 cm on, and never colder the deeper it lies: %s, %s, %s', (_shape, _cover, _ground, changes) => {
    const lows = [0, 0.02, 0.05, 0.1, 0.3, 1].map((depthM) => lowWithSnowK(changes, depthM));
    lows.slice(1).forEach((low, i) => expect(low).toBeGreaterThan(lows[i]!));
  });

  it('is not felt while none lies there, though its plane is carried', () => {
    expect(lowWithSnowK({}, 0)).toBeCloseTo(runInventedNight(referenceHouse(), CLEAR_COLD_NIGHT).lowK(INSIDE), 5);
  });
});

/**
 * Univ. of Manitoba (press report, Q. Zhang): at -16 °C outside a solar house under a night blanket stood at +9, 25 K above. Its blanket has
 * the resistance of 20 cm of settled snow (1.3 m2 K/W) and lies on the film as that does; house, weather and sun as in devices-measured-houses, the
 * ends insulated and left out.
 */
describe('solar house of 30 x 7 m under a night blanket', () => {
  const WINTER: InventedWeather = { ...CLEAR_COLD_NIGHT, sunnyDays: 15, dayHighK: celsiusToKelvin(-10), nightLowK: celsiusToKelvin(-16), lastLowK: celsiusToKelvin(-16), peakSunWPerM2: 440 };
  const BLANKET_AS_SNOW_M = 0.2;
  const isDark = (timeS: number): boolean => {
    const hour = (((timeS - hourOfLastNightS(WINTER, 0)) / SECONDS_PER_HOUR) % 24 + 24) % 24;
    return hour > 16 || hour < 8.5;
  };
  const withoutEnds = (house: House): House => {
    const facets = house.geometry.facets.slice(0, -2);
    return { ...house, geometry: { ...house.geometry, facets, coverAreaM2: facets.reduce((sum, { areaM2 }) => sum + areaM2, 0) } };
  };
  const aboveOutsideK = (layers: GreenhouseFile['layers'], curtain: boolean): number => {
    const house = withoutEnds(referenceHouse({ place: { latitude: 42, longitude: -72.2, elevation: 250 }, shape: 'lean-to', size: { width: 7, length: 30, height: 3.2 }, sideHeight: 0.8, layers, leakage: 'tight', beds: [{ name: 'north', area: 75, crops: ['kale'] }, { name: 'south', area: 75, crops: ['kale'] }], solidWall: { masonry: 0.3, foam: 0.1, stone: 'earth', blackened: true }, edgeInsulation: { depth: 0.6 }, vents: { area: 4 }, now: { snowOnRoof: BLANKET_AS_SNOW_M }, ...(curtain ? { curtain: { kind: 'foil' } } : {}) }));
    const controls = (timeS: number): Partial<Controls> => ({ curtainDrawn: curtain && isDark(timeS), troubles: { ...NO_TROUBLES, roofSnowM: isDark(timeS) ? BLANKET_AS_SNOW_M : 0 } });
    const night = runInventedNight(house, WINTER, { controls });
    return night.lowK(INSIDE) - night.lowK(OUTSIDE);
  };

  it.each([['two films', [{ film: 'standard' }, { film: 'standard' }], false], ['one film and a curtain', [{ film: 'standard' }], true]] as const)('stands 20 to 35 K above the outside air: %s', (_name, layers, curtain) => {
    const gainK = aboveOutsideK([...layers], curtain);
    expect(gainK).toBeGreaterThan(20);
    expect(gainK).toBeLessThan(35);
  });
});
