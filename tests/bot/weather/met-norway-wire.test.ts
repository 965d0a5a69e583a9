import { describe, expect, it } from 'vitest';
import { AnswerRefusedError } from '../../../bot/weather/open-meteo/errors.js';
import { metNorwayHours } from '../../../bot/weather/met-norway/to-hours.js';
import { readMetNorwayAnswer } from '../../../bot/weather/met-norway/wire.js';
import { eachInstant, metNorwayBody, type MetBody } from '../../fixtures/met-norway-answer.js';
import { forecastBody } from '../../fixtures/weather-answer.js';

const NOW_S = Date.parse('2026-11-23T21:20:30Z') / 1000;
const PLACE = { latitude: 44.26, longitude: -72.58, elevationM: 187 };

const body = (): MetBody => metNorwayBody(forecastBody({ nowS: NOW_S }), { nowS: NOW_S });
const changed = (change: (answer: MetBody) => unknown): MetBody => {
  const answer = body();
  change(answer);
  return answer;
};
const read = (answer: unknown): unknown => metNorwayHours(readMetNorwayAnswer(answer), { place: PLACE, nowS: NOW_S });
const withUnit = (name: string, unit: string): MetBody => changed(({ properties }) => (properties.meta.units[name] = unit));
const steps = (change: (timeseries: MetBody['properties']['timeseries']) => MetBody['properties']['timeseries']): MetBody => changed(({ properties }) => (properties.timeseries = change(properties.timeseries)));

type Make = () => unknown;
const REFUSED: readonly (readonly [string, Make, RegExp])[] = [
  ['temperature in Fahrenheit', () => withUnit('air_temperature', 'fahrenheit'), /unit of air_temperature: expected "celsius", got "fahrenheit"/],
  ['temperature in kelvin', () => withUnit('air_temperature', 'K'), /unit of air_temperature: expected "celsius", got "K"/],
  ['temperature without a unit', () => changed(({ properties }) => delete properties.meta.units['air_temperature']), /unit of air_temperature: expected "celsius", got "nothing"/],
  ['dew point in Fahrenheit', () => withUnit('dew_point_temperature', 'fahrenheit'), /unit of dew_point_temperature/],
  ['wind in km/h', () => withUnit('wind_speed', 'km/h'), /unit of wind_speed: expected "m\/s", got "km\/h"/],
  ['cloud in eighths', () => withUnit('cloud_area_fraction', 'okta'), /unit of cloud_area_fraction: expected "%", got "okta"/],
  ['pressure in Pa', () => withUnit('air_pressure_at_sea_level', 'Pa'), /unit of air_pressure_at_sea_level/],
  ['precipitation in inches', () => withUnit('precipitation_amount', 'inch'), /unit of precipitation_amount/],
  ['the low in Fahrenheit', () => withUnit('air_temperature_min', 'fahrenheit'), /unit of air_temperature_min/],
  ['the range in Fahrenheit', () => withUnit('air_temperature_percentile_10', 'fahrenheit'), /unit of air_temperature_percentile_10/],
  ['no steps', () => steps(() => []), /timeseries: expected the format of Locationforecast 2\.0/],
  ['a step without an instant', () => changed(({ properties }) => delete (properties.timeseries[2]?.data as { instant?: unknown }).instant), /timeseries\.2\.data\.instant/],
  ['local times', () => steps((all) => all.map((step) => ({ ...step, time: step.time.replace('Z', '+01:00') }))), /timeseries\.0\.time/],
  ['times off the hour', () => steps((all) => all.map((step) => ({ ...step, time: step.time.replace(':00:00Z', ':30:00Z') }))), /time of step 0: expected full hours in order/],
  ['steps out of order', () => steps((all) => [...all].reverse()), /time of step 1: expected full hours in order/],
  ['a step twice', () => steps((all) => all.flatMap((step) => [step, step])), /time of step 1/],
  ['the error of the first service', () => ({ error: true, reason: 'no' }), /Second weather answer, type: expected the format of Locationforecast 2\.0.*Check DUSKWARD_WEATHER2_URL/],
  ['the first service\'s answer', () => forecastBody({ nowS: NOW_S }), /Second weather answer, type/],
  ['a list of places', () => [body()], /Second weather answer: expected the format/],
  ['a text', () => 'fine weather', /Second weather answer: expected the format/],
  ['nothing', () => null, /Second weather answer: expected the format/],
  ['hours that end before the night does', () => steps((all) => all.slice(0, 18)), /reach ahead: expected at least 18 h .* got 17 h/],
  ['a hole in tonight', () => steps((all) => all.filter((_, i) => i < 4 || i > 12)), /reach ahead: expected at least 18 h .* got 3 h/],
  ['hours that are over', () => steps((all) => all.map((step) => ({ ...step, time: step.time.replace('2026-1', '2025-1') }))), /time span: expected hours around 2026-11-23T21:20Z/],
  ['a forecast of the day before yesterday', () => changed(({ properties }) => (properties.meta.updated_at = '2026-11-22T21:00:00Z')), /updated_at: expected a forecast made within 24 h, got 2026-11-22T21:00:00\.000Z/],
  ['no temperature', () => eachInstant(body(), 'air_temperature', () => undefined), /expected values at 2026-11-23T21:20Z, got a hole there/],
  ['absurd temperatures', () => eachInstant(body(), 'air_temperature', () => 273.4), /got a hole there/],
  ['temperatures that are texts', () => eachInstant(body(), 'air_temperature', () => '-3' as unknown as number), /got a hole there/],
  ['neither dew point nor humidity', () => eachInstant(eachInstant(body(), 'dew_point_temperature', () => undefined), 'relative_humidity', () => undefined), /got a hole there/],
  ['no wind', () => eachInstant(body(), 'wind_speed', () => undefined), /got a hole there/],
  ['no cloud', () => eachInstant(body(), 'cloud_area_fraction', () => undefined), /got a hole there/],
];

const USED: readonly (readonly [string, Make])[] = [
  ['100.3 % of cloud and humidity', () => eachInstant(eachInstant(body(), 'cloud_area_fraction', () => 100.3), 'relative_humidity', () => 100.3)],
  ['values that we do not know', () => eachInstant(body(), 'snow_of_the_moon', () => 3)],
  ['units that we do not know', () => withUnit('snow_of_the_moon', 'cubits')],
];

describe('an answer of the second service', () => {
  it('in the shape that the service documents is read', () => {
    // Shape as documented; values made up. Only some units are told here, and no period but the next hour.
    const sample = {
      type: 'Feature',
      geometry: { type: 'Point', coordinates: [-72.5754, 44.26, 187] },
      properties: {
        meta: { updated_at: '2026-11-23T21:12:08Z', units: { air_temperature: 'celsius', wind_speed: 'm/s' } },
        timeseries: [
          {
            time: '2026-11-23T22:00:00Z',
            data: {
              instant: { details: { air_temperature: -3.0, dew_point_temperature: -6.1, relative_humidity: 79.3, cloud_area_fraction: 10.2, cloud_area_fraction_low: 0.0, wind_speed: 1.7, air_pressure_at_sea_level: 1019.4 } },
              next_1_hours: { summary: { symbol_code: 'clearsky_night' }, details: { precipitation_amount: 0.0 } },
            },
          },
        ],
      },
    };
    const answer = readMetNorwayAnswer(sample);
    expect(answer).toMatchObject({ latitude: 44.26, longitude: -72.5754, altitudeM: 187, updatedAtS: Date.parse('2026-11-23T21:12:08Z') / 1000 });
    expect(answer.steps[0]).toMatchObject({ timeS: Date.parse('2026-11-23T22:00:00Z') / 1000, instant: { air_temperature: -3, air_temperature_percentile_10: null }, nextHour: { precipitation_amount: 0 }, nextSixHours: { air_temperature_min: null } });
  });

  it.each(REFUSED)('with %s is refused, with what came and what was expected', (_, make, message) => {
    expect(() => read(make())).toThrow(message);
    expect(() => read(make())).toThrow(AnswerRefusedError);
  });

  it.each(USED)('with %s is used', (_, make) => {
    expect(() => read(make())).not.toThrow();
  });
});
