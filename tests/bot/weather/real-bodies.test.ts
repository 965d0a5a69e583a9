import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readWireAnswer } from '../../../bot/weather/open-meteo/wire.js';

// Real answers of the service, read in place when present: ../shared/validation/open-meteo (origins in ../shared/validation/README.md).
const FOLDER = fileURLToPath(new URL('../../../../shared/validation/open-meteo/', import.meta.url));
const present = existsSync(FOLDER);
const ABSENT = present ? '' : ' (NOT RUN: ../shared/validation/open-meteo is absent; test fixtures of public repositories, see its README)';
const body = (name: string): unknown => JSON.parse(readFileSync(FOLDER + name, 'utf8'));

interface RealBody {
  latitude: number;
  utc_offset_seconds: number;
  hourly_units: Record<string, string>;
  hourly: Record<string, unknown[]>;
}

const REFUSALS: Readonly<Record<string, RegExp>> = {
  'archive-amsterdam-1h.json': /unit of hourly\.time: expected "unixtime" \(epoch seconds\), got "iso8601"/,
  'ensemble-21-members-2h.json': /got "iso8601"/,
  'ensemble-31-members-1h.json': /got "iso8601"/,
  'error-bodies.json': /expected a forecast answer with "hourly" and "hourly_units", got an object with origin, cases/,
  'forecast-berlin-2021-11-24-168h.json': /got "iso8601"/,
  'forecast-multi-model-suffixes-2023-11.json': /got "iso8601"|"hourly" and "hourly_units"/,
  'forecast-toronto-2026-03-imperial.json': /got "iso8601"/,
  'geocoding-hollywood.json': /"hourly" and "hourly_units", got an object with results/,
  'multi-location-array-2024-01.json': /expected one place \(a JSON object\), got an array of \d+ places/,
};

describe('real bodies of the service', () => {
  it.skipIf(!present)(`each is refused for the reason that it deserves: local times, several places, no weather${ABSENT}`, () => {
    for (const name of readdirSync(FOLDER)) {
      const reason = REFUSALS[name];
      expect(reason, `${name}: a new file, say what should become of it`).toBeDefined();
      if (reason !== undefined) expect(() => readWireAnswer(body(name)), name).toThrow(reason);
    }
  });

  it.skipIf(!present)(`every error body that the service is known to send is named by its reason${ABSENT}`, () => {
    const { cases } = body('error-bodies.json') as { cases: { body?: { reason: string } }[] };
    for (const { body: error } of cases) {
      if (error !== undefined) expect(() => readWireAnswer(error)).toThrow(`the service's error "${error.reason}"`);
    }
  });

  /** The same answer as it would have come with timeformat=unixtime: local labels less the offset. */
  const inUnixTime = (given: RealBody): RealBody => ({
    ...given,
    hourly_units: { ...given.hourly_units, time: 'unixtime' },
    hourly: { ...given.hourly, time: (given.hourly['time'] as string[]).map((label) => Date.parse(`${label}Z`) / 1000 - given.utc_offset_seconds) },
  });

  it.skipIf(!present)(`with their times as unix time the metric ones parse, columns and nulls and all, and the others are refused for their units${ABSENT}`, () => {
    const metric = ['archive-amsterdam-1h.json', 'ensemble-21-members-2h.json', 'ensemble-31-members-1h.json'];
    for (const name of metric) {
      const given = inUnixTime(body(name) as RealBody);
      const answer = readWireAnswer(given);
      expect(answer.models, name).toEqual(['']);
      expect(answer.columns.get('temperature_2m'), name).toEqual(given.hourly['temperature_2m']);
    }
    expect(() => readWireAnswer(inUnixTime(body('forecast-berlin-2021-11-24-168h.json') as RealBody))).toThrow(/hourly\.wind_speed_10m: expected "m\/s", got "km\/h"/);
    expect(() => readWireAnswer(inUnixTime(body('forecast-toronto-2026-03-imperial.json') as RealBody))).toThrow(/hourly\.temperature_2m: expected "°C", got "°F"/);
    for (const place of body('multi-location-array-2024-01.json') as RealBody[]) expect(readWireAnswer(inUnixTime(place)).latitude).toBe(place.latitude);
    const berlin = inUnixTime(body('forecast-berlin-2021-11-24-168h.json') as RealBody);
    berlin.hourly_units['wind_speed_10m'] = 'm/s';
    expect(readWireAnswer(berlin).timeS).toHaveLength(168);
  });
});
