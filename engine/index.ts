/**
 * The table of contents of the engine: all that the bot may use. Read it top to bottom as the story of one night.
 */

// Units and errors
export * from './units.js';
export { OutOfRangeError } from './errors.js';

// Weather outside, as the engine reads it
export type { GroundOutside, WeatherHours } from './night/weather.js';

// Moist air
export {
  dewPointOverWaterK,
  frostPointK,
  saturationVapourPressureOverWaterPa,
  vapourPressureFromDewPointOverWaterPa,
} from './air/saturation-magnus.js';
export { standardPressurePa } from './air/moist-air.js';
