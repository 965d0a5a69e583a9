/**
 * INVENTED weather for the demo, in the format of the service: no forecast of any real place or time.
 * The story: a mixed fortnight with two frosts, then a sunny day and a clear calm night down to about -9 °C outside
 * on whatever evening the demo is started, then a mixed week with a little snow.
 */
import { SECONDS_PER_DAY, SECONDS_PER_HOUR, celsiusToKelvin, standardPressurePa, vapourPressureFromDewPointOverWaterPa } from '../../engine/index.js';
import type { Clock, Place, WeatherSource } from '../ports.js';
import { demoHour } from './demo-story.js';
import { toHours } from './open-meteo/to-hours.js';
import { readWireAnswer } from './open-meteo/wire.js';
import { clearSkyWPerM2, diffuseWPerM2, throughClouds } from './sunlight.js';
import { spanNotes } from './span.js';

/** Where the demo greenhouse stands: hills with cold winters; its weather is made up. */
export const DEMO_PLACE = { latitude: 45.1, longitude: -72.2, elevationM: 180 } as const satisfies Place;
export const DEMO_ZONE = 'America/Toronto';

// Before this local solar hour, "tonight" is the night that still runs.
const NIGHT_OVER_HOUR = 9;
const PAST_HOURS = 16 * 24;
const AHEAD_HOURS = 8 * 24;
const DEGREES_PER_HOUR = 15;
const PERCENT = 100;
const PA_PER_HPA = 100;
// The story is one of late autumn: in a higher season the sun is dimmed to what it gives at noon then.
const BRIGHTEST_NOON_W_PER_M2 = 420;
const YEARLY_MEAN_C = 6;
const INVENTED = 'INVENTED demo weather, made up by Duskward: not a forecast of any real place or time.';

/** The invented weather around nowS in the format of the service, its clear cold night on the evening of storyS; the same for the same place and hours. */
export function demoAnswerBody(place: Place, nowS: number, storyS = nowS): unknown {
  const elevationM = place.elevationM ?? DEMO_PLACE.elevationM;
  const hourNowS = Math.floor(nowS / SECONDS_PER_HOUR) * SECONDS_PER_HOUR;
  const zoneS = Math.round(place.longitude / DEGREES_PER_HOUR) * SECONDS_PER_HOUR;
  const storyStartS = Math.floor((storyS + zoneS - NIGHT_OVER_HOUR * SECONDS_PER_HOUR) / SECONDS_PER_DAY) * SECONDS_PER_DAY - zoneS;
  const time = Array.from({ length: PAST_HOURS + AHEAD_HOURS }, (_, i) => hourNowS + (i - PAST_HOURS) * SECONDS_PER_HOUR);
  const noonS = storyStartS + SECONDS_PER_DAY / 2;
  const dimming = Math.min(1, BRIGHTEST_NOON_W_PER_M2 / Math.max(clearSkyWPerM2(place, noonS), clearSkyWPerM2(place, noonS + SECONDS_PER_HOUR)));
  const rows = time.map((t) => {
    const hour = demoHour((t - storyStartS) / SECONDS_PER_HOUR);
    const undimmedWPerM2 = clearSkyWPerM2(place, t) * throughClouds(hour.cloudFraction);
    const globalWPerM2 = undimmedWPerM2 * dimming;
    const diffuse = diffuseWPerM2(place, t, undimmedWPerM2) * dimming;
    const daysFromNow = (t - nowS) / SECONDS_PER_DAY;
    const daysIntoStory = (t - storyS) / SECONDS_PER_DAY;
    // Layers that overlap at random make up the total.
    const layerPercent = (share: number): number => PERCENT * (1 - (1 - Math.min(0.99, hour.cloudFraction)) ** share);
    return {
      temperature_2m: rounded(hour.airTempC, 1),
      dew_point_2m: rounded(hour.dewPointC, 1),
      relative_humidity_2m: rounded(PERCENT * (vapourPa(hour.dewPointC) / vapourPa(hour.airTempC)), 0),
      wind_speed_10m: rounded(hour.windSpeed10mMPerS, 2),
      wind_gusts_10m: rounded(hour.windSpeed10mMPerS * 1.6 + 1, 2),
      cloud_cover: rounded(PERCENT * hour.cloudFraction, 0),
      cloud_cover_low: rounded(layerPercent(0.4), 0),
      cloud_cover_mid: rounded(layerPercent(0.3), 0),
      cloud_cover_high: rounded(layerPercent(0.3), 0),
      shortwave_radiation: rounded(globalWPerM2, 1),
      direct_radiation: rounded(globalWPerM2 - diffuse, 1),
      diffuse_radiation: rounded(diffuse, 1),
      surface_pressure: rounded(standardPressurePa(elevationM) / PA_PER_HPA + 6 * (1 - hour.cloudFraction), 1),
      precipitation: rounded(hour.precipitationMm, 2),
      snowfall: rounded(hour.snowfallCm, 2),
      soil_temperature_18cm: rounded(5.5 - 0.06 * daysIntoStory, 1),
      soil_temperature_54cm: rounded(7.5 - 0.05 * daysIntoStory, 1),
      temperature_2m_spread: rounded(0.4 + 0.25 * Math.max(0, daysFromNow), 1),
    };
  });
  const names = Object.keys(UNITS) as (keyof typeof UNITS)[];
  return {
    note: INVENTED,
    latitude: place.latitude, longitude: place.longitude, elevation: elevationM,
    generationtime_ms: 0, utc_offset_seconds: 0, timezone: 'GMT', timezone_abbreviation: 'GMT',
    hourly_units: { time: 'unixtime', ...UNITS },
    hourly: { time, ...Object.fromEntries(names.map((name) => [name, rows.map((row) => row[name])])) },
  };
}

const UNITS = {
  temperature_2m: '°C', dew_point_2m: '°C', relative_humidity_2m: '%', wind_speed_10m: 'm/s', wind_gusts_10m: 'm/s',
  cloud_cover: '%', cloud_cover_low: '%', cloud_cover_mid: '%', cloud_cover_high: '%',
  shortwave_radiation: 'W/m²', direct_radiation: 'W/m²', diffuse_radiation: 'W/m²', surface_pressure: 'hPa',
  precipitation: 'mm', snowfall: 'cm', soil_temperature_18cm: '°C', soil_temperature_54cm: '°C', temperature_2m_spread: '°C',
} as const;

const vapourPa = (tempC: number): number => vapourPressureFromDewPointOverWaterPa(celsiusToKelvin(tempC));
/** With the decimals that the service prints; plus zero, so that no -0 appears. */
const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** The invented weather for any place, marked as invented. Its clear cold night comes every evening anew, or with storyS on that evening alone, and the days after follow the story. */
export function demoSource(clock: Clock, storyS?: number): WeatherSource {
  return {
    weatherAt(place) {
      const nowS = clock.nowS();
      const context = { place, nowS, modelsAsked: 1, ensemble: 'inside', yearlyMeanAirTempK: celsiusToKelvin(YEARLY_MEAN_C) } as const;
      const { hours, ground, notes } = toHours(readWireAnswer(demoAnswerBody(place, nowS, storyS)), context);
      return Promise.resolve({ hours, ground, source: 'demo', issuedAtS: nowS, stale: false, notes: [{ code: 'invented-demo' }, ...notes, ...spanNotes(hours, nowS)] });
    },
  };
}
