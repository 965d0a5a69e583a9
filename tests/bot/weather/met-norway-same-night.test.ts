import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { issueAdvisory } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { WeatherAnswer } from '../../../bot/ports.js';
import { DEMO_PLACE, DEMO_ZONE, demoAnswerBody } from '../../../bot/weather/demo.js';
import { checkGreenhouse, type Greenhouse, type WeatherHours } from '../../../engine/index.js';
import { bothServices, type BothServices } from '../../fixtures/both-weather-services.js';
import { BARE_TUNNEL } from '../../fixtures/greenhouse-files.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { metNorwayBody } from '../../fixtures/met-norway-answer.js';
import { startMetNorway, type MetNorwayStandIn } from '../../fixtures/met-norway-stand-in.js';
import type { WireBody } from '../../fixtures/weather-answer.js';

// One made weather, the demo's clear calm night, through both services; the second begins at the hour of now and stands on the stored past.
const START_S = Date.parse('2026-11-25T18:00:00Z') / 1000;
const HOUR_S = 3600;
const NOW_S = START_S + 2 * HOUR_S;
const SNOW_FROM_S = NOW_S + 4 * HOUR_S;
const FORECAST = '/v1/forecast';

let first: hostile.HostileWeather;
let second: MetNorwayStandIn;
let service: BothServices;
/** The demo's weather, and five hours of snow in the night. */
const made = (): WireBody => {
  const body = demoAnswerBody(DEMO_PLACE, service.clock.nowS()) as WireBody;
  for (const [i, t] of (body.hourly['time'] ?? []).entries()) {
    if ((t ?? 0) <= SNOW_FROM_S || (t ?? 0) > SNOW_FROM_S + 5 * HOUR_S) continue;
    for (const [name, value] of [['precipitation', 2], ['snowfall', 1.4]] as const) (body.hourly[name] ?? [])[i] = value;
  }
  return body;
};
let fromFirst: WeatherAnswer;
let fromSecond: WeatherAnswer;

const greenhouse = (): Greenhouse => {
  const check = checkGreenhouse({ ...BARE_TUNNEL, place: { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevation: DEMO_PLACE.elevationM } });
  if (!check.ok) throw new Error(JSON.stringify(check.faults));
  return check.greenhouse;
};

beforeAll(async () => {
  first = await hostile.startHostileWeather({ nowS: () => service.clock.nowS() });
  second = await startMetNorway({ nowS: () => service.clock.nowS(), body: () => metNorwayBody(made(), { nowS: service.clock.nowS() }) });
  const whole: hostile.Reaction = (response, request) => hostile.json(200, made())(response, request);
  service = bothServices({ startS: START_S, firstUrl: first.url, secondUrl: second.url });
  first.script(FORECAST, whole);
  await service.source.weatherAt(DEMO_PLACE);
  service.clock.set(NOW_S);
  first.script(FORECAST, hostile.text(200, 'text/html', 'down'));
  fromSecond = await service.source.weatherAt(DEMO_PLACE);
  first.script(FORECAST, whole);
  fromFirst = await service.source.weatherAt(DEMO_PLACE);
});
afterAll(async () => {
  await service.close();
  await first.close();
  await second.close();
});

/** Values of both at the same hours from now to two days ahead, where both services go hour by hour. */
function pairs(column: (hours: WeatherHours) => readonly number[]): (readonly [number, number])[] {
  const [a, b] = [fromFirst.hours, fromSecond.hours];
  return a.timeS.flatMap((t, i): (readonly [number, number])[] => {
    const k = b.timeS.indexOf(t);
    return t >= NOW_S && t <= NOW_S + 48 * HOUR_S && k >= 0 ? [[column(a)[i] ?? Number.NaN, column(b)[k] ?? Number.NaN]] : [];
  });
}

describe('the same night through both services', () => {
  it('comes from one and from the other', () => {
    expect([fromFirst.source, fromSecond.source]).toEqual(['open-meteo', 'met-norway']);
    expect(pairs(({ timeS }) => timeS)).toHaveLength(49);
  });

  it.each([
    // Half of the last printed digit of each, added: 0.1 degrees C, 0.1 and 0.01 m/s, 0.1 and 1 %, 0.1 hPa.
    ['air temperature', (hours: WeatherHours) => hours.airTempK, 0.1],
    ['wind', (hours: WeatherHours) => hours.windSpeed10mMPerS, 0.055],
    ['cloud', (hours: WeatherHours) => hours.cloudFraction, 0.0055],
    ['pressure', (hours: WeatherHours) => hours.surfacePressurePa, 10],
    // 0.1 K of dew point is at most 0.9 % of vapour pressure down to -25 degrees C.
    ['vapour pressure', (hours: WeatherHours) => hours.vapourPressurePa, 6],
  ] as const)('has the same %s within what is printed', (_, column, tolerance) => {
    for (const [a, b] of pairs(column)) expect(Math.abs(a - b)).toBeLessThanOrEqual(tolerance + 1e-9);
  });

  it('has the same snow, in the same hours', () => {
    const snow = pairs(({ snowfallM }) => snowfallM);
    expect(snow.filter(([a]) => a > 0)).toHaveLength(5);
    for (const [a, b] of snow) expect(b).toBeCloseTo(a, 9);
  });

  it('has the same spread where both tell one', () => {
    const told = fromSecond.hours.airTempSpreadK.filter((spread) => spread !== null);
    expect(told.length).toBeGreaterThan(48);
    expect(Math.min(...told)).toBeGreaterThan(0.3);
  });

  it('leaves the house as cold, whichever service it came from, and says which', async () => {
    const clock = { nowS: () => NOW_S };
    const subject = { greenhouseId: 'test', greenhouse: greenhouse(), zone: DEMO_ZONE };
    const advise = async (answer: WeatherAnswer) => (await issueAdvisory(subject, { clock, weather: { weatherAt: () => Promise.resolve(answer) }, store: null, workOut: workOutHere })).advisory;
    const [a, b] = [await advise(fromFirst), await advise(fromSecond)];
    const low = ({ places }: typeof a, place: string): number => places.find((found) => found.place === place)?.lowC.q50 ?? Number.NaN;
    expect(Math.abs(low(a, 'outside') - low(b, 'outside'))).toBeLessThanOrEqual(0.1 + 1e-9);
    expect(Math.abs(low(a, 'inside') - low(b, 'inside'))).toBeLessThanOrEqual(0.3);
    expect(b.weather).toMatchObject({ source: 'met-norway', stale: false });
    expect(b.reasons).toContainEqual({ code: 'second-weather', failure: 'not-json', cause: expect.stringContaining('text/html') as string });
    expect(b.text).toContain('The first weather service sent a web page instead of weather; this stands on the second one');
    expect(b.text).toContain('MET Norway (met.no), CC BY 4.0');
    expect(a.text).not.toContain('MET Norway');
  });
});
