import { readFile } from 'node:fs/promises';
import { NoWeatherError, type Place, type WeatherAnswer, type WeatherNote, type WeatherSource } from '../ports.js';
import { degreesApart } from './distance.js';
import { AnswerRefusedError } from './open-meteo/errors.js';
import { toHours } from './open-meteo/to-hours.js';
import { readWireAnswer } from './open-meteo/wire.js';
import { spanNotes } from './span.js';

const HOW_TO_SAVE = 'A saved answer is one place, hourly, with timeformat=unixtime and wind_speed_unit=ms, no other unit parameters.';
// A saved answer may be for a neighbouring village; half a degree away it is other weather.
const NEAR_DEGREES = 0.5;

/** Weather from a saved answer of the service, read anew each time, as it was issued at atS. */
export function savedFileSource(file: { readonly path: string; readonly atS: number }): WeatherSource {
  return {
    async weatherAt(place) {
      let text: string;
      try {
        text = await readFile(file.path, 'utf8');
      } catch (cause) {
        throw new NoWeatherError(`Weather file ${file.path}: expected a readable file, got ${cause instanceof Error ? cause.message : String(cause)}. Check the path.`, { cause });
      }
      let body: unknown;
      try {
        body = JSON.parse(text);
      } catch (cause) {
        throw new NoWeatherError(`Weather file ${file.path}: expected JSON, got "${text.slice(0, 60)}". ${HOW_TO_SAVE}`, { cause });
      }
      try {
        return savedAnswer(body, { place, atS: file.atS });
      } catch (cause) {
        if (cause instanceof NoWeatherError) throw new NoWeatherError(`Weather file ${file.path}: ${cause.message}`, { cause });
        throw cause;
      }
    },
  };
}

/** A saved answer (parsed JSON) as weather for the place; throws NoWeatherError with what is wrong. */
export function savedAnswer(body: unknown, context: { readonly place: Place; readonly atS: number }): WeatherAnswer {
  const { place, atS } = context;
  try {
    const wire = readWireAnswer(body);
    const { hours, ground, notes } = toHours(wire, { place, nowS: atS, modelsAsked: 1, ensemble: 'inside', yearlyMeanAirTempK: null });
    const elsewhere: readonly WeatherNote[] =
      degreesApart(wire, place) <= NEAR_DEGREES
        ? []
        : [{ code: 'missing-variable', variable: 'weather at the greenhouse', instead: `the saved answer is for ${wire.latitude}, ${wire.longitude}` }];
    return { hours, ground, source: 'file', issuedAtS: atS, stale: false, notes: [...elsewhere, ...notes, ...spanNotes(hours, atS)] };
  } catch (cause) {
    if (cause instanceof AnswerRefusedError) throw new NoWeatherError(`${cause.message} ${HOW_TO_SAVE}`, { cause });
    throw cause;
  }
}
