import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { sunPosition } from '../../../engine/sun/position.js';
import { degreesToRadians } from '../../../engine/units.js';
import { measuredSky, type MeasuredSky } from '../longwave/measured-sky.js';
import { enginesSky, scoreSky } from '../longwave/sky-score.js';
import type { PublishedTable } from '../published-table.js';

/**
 * SURFRAD station San Luis Valley, Colorado, 2317 m, 1 January 2016, every ten minutes, as carried by pvlib-python: a clear day over snow,
 * down to -22.9 °C. Assumed: no cloud; the one short cloudy spell of the night (emissivity above 0.8) is left out.
 */
export const source = 'SURFRAD-SanLuisValley';

const PLACE = { latitude: 37.7, longitude: -105.92 };
const NIGHT_BELOW_RAD = degreesToRadians(-6);
const CLOUDY_ABOVE = 0.8;

const all = measuredSky('surfrad-san-luis-valley-co-2016-01-01-10min.csv');
const isClearNight = (sky: MeasuredSky): boolean => sunPosition(sky.timeS, PLACE).altitudeRad < NIGHT_BELOW_RAD && sky.longwaveWPerM2 / (STEFAN_BOLTZMANN_W_PER_M2K4 * sky.airTempK ** 4) < CLOUDY_ABOVE;
const clearNight = (all ?? []).filter(isClearNight).map((sky) => ({ ...sky, cloudFraction: 0 }));

export const tables: readonly PublishedTable[] = [
  {
    source, title: "the engine's own sky, clear night at 2317 m", unit: 'W/m2', tolerance: 10, toleranceReason: 'high sites: formulas of the clear sky read 5 to 15 W/m2 off', origin: 'measured',
    ...(all ? {} : { absent: 'pvlib/pvlib-python, tests/data (NOAA SURFRAD)' }),
    rows: all ? [{ name: `bias of ${clearNight.length} readings`, expected: 0, model: () => scoreSky(enginesSky, clearNight).bias }] : [],
  },
];
