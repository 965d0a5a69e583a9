import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { CallBudget } from '../../../bot/weather/open-meteo/call-budget.js';
import { hoursOfMembers, type EnsembleHour } from '../../../bot/weather/open-meteo/ensemble.js';
import { weatherHosts } from '../../../bot/weather/open-meteo/hosts.js';
import { ensembleRequest, forecastRequest, membersRequest, yearRequest } from '../../../bot/weather/open-meteo/request.js';
import { readWireAnswer } from '../../../bot/weather/open-meteo/wire.js';
import { isOn, readSettings, SETTINGS } from '../../../config/settings.js';
import { endsAfter, MEMBERS, membersBody, standsStill, withoutMember, withSuffix } from '../../fixtures/ensemble-members.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import type { WireBody } from '../../fixtures/weather-answer.js';
import { PLACE, START_S, startTestService, type TestService } from './service.js';

const ENSEMBLE = '/v1/ensemble';
const MODEL = 'ecmwf_ifs025_ensemble';
const SPAN = { pastHours: 12, aheadHours: 336 };
const HOUR_S = 3600;
const NOW_HOUR_S = Math.floor(START_S / HOUR_S) * HOUR_S;
const DAWN_S = NOW_HOUR_S + 14 * HOUR_S;

const answerWith = (correlation = 0.6): WireBody => membersBody({ nowS: START_S, ...SPAN }, { airTempSdK: 1.2, cloudSdPercent: 16, correlation });
const first = (count: number): readonly number[] => Array.from({ length: count }, (_, member) => member);

describe('members as they come on the wire', () => {
  const read = (answer: WireBody): ReturnType<typeof hoursOfMembers> => hoursOfMembers(readWireAnswer(answer));
  const atDawn = (answer: WireBody): EnsembleHour => {
    const hours = read(answer);
    if ('cause' in hours) throw new Error(hours.cause);
    expect(hours.notes).toEqual([]);
    return hours.byTimeS.get(DAWN_S)!;
  };
  /** To a tenth of a degree and a percent, as the service rounds. */
  const likeThem = (hour: EnsembleHour, correlation: number): void => {
    expect(hour.airTempSpreadK).toBeCloseTo(1.2, 1);
    expect(hour.cloudSpread).toBeCloseTo(0.16, 2);
    expect(hour.airTempCloudCorrelation).toBeCloseTo(correlation, 1);
  };

  it.each([-0.7, 0, 0.6])('tell the correlation of %f that they were made with', (correlation) => {
    likeThem(atDawn(answerWith(correlation)), correlation);
  });

  it('are read with the name of the model behind their number, and without their first run', () => {
    likeThem(atDawn(withSuffix(answerWith(), MODEL)), 0.6);
    likeThem(atDawn(withoutMember(withSuffix(answerWith(), MODEL), 0)), 0.6);
    likeThem(atDawn(withoutMember(answerWith(), 0)), 0.6);
  });

  it('count without the first where it was not renewed: it ends two days before the others', () => {
    const stale = answerWith();
    stale.hourly['temperature_2m'] = stale.hourly['temperature_2m']!.map((value) => value! - 40);
    // Left in, one run that is 40 K off would make the spread more than 5 K.
    likeThem(atDawn(endsAfter(stale, 0, 305, START_S)), 0.6);
  });

  it('reach as far as most of them do, and say nothing beyond', () => {
    const hours = read(first(MEMBERS).reduce((answer, member) => endsAfter(answer, member, 100, START_S), answerWith()));
    if ('cause' in hours) throw new Error(hours.cause);
    expect(hours.byTimeS.get(NOW_HOUR_S + 100 * HOUR_S)!.airTempSpreadK).toBeCloseTo(1.2, 1);
    expect(hours.byTimeS.get(NOW_HOUR_S + 102 * HOUR_S)).toEqual({ airTempSpreadK: null, cloudSpread: null, airTempCloudCorrelation: null });
  });

  it.each([
    ['standing still', (answer: WireBody, member: number) => standsStill(answer, member)],
    ['ending early', (answer: WireBody, member: number) => endsAfter(answer, member, 60, START_S)],
    ['missing', (answer: WireBody, member: number) => withoutMember(answer, member)],
  ] as const)('are enough with ten of 51 %s, and not with eleven', (_name, spoil) => {
    const spoilt = (count: number): WireBody => first(count).reduce(spoil, answerWith());
    expect(read(spoilt(10))).toHaveProperty('byTimeS');
    expect(read(spoilt(11))).toEqual({ cause: '40 of 51 runs can be used' });
  });

  it('are refused in another unit, whichever of them has it', () => {
    const imperial = answerWith();
    imperial.hourly_units['temperature_2m_member17'] = '°F';
    expect(() => readWireAnswer(imperial)).toThrow(/hourly\.temperature_2m_member17: expected "°C", got "°F"/u);
    const named = withSuffix(answerWith(), MODEL);
    named.hourly_units[`cloud_cover_member03_${MODEL}`] = '1';
    expect(() => readWireAnswer(withoutMember(named, 0))).toThrow(/cloud_cover_member03_ecmwf_ifs025_ensemble: expected "%"/u);
  });
});

describe('a service that is asked for members', () => {
  let service: TestService;
  let weather: hostile.HostileWeather;
  beforeEach(async () => {
    weather = await hostile.startHostileWeather({ nowS: () => service.clock.nowS() });
    service = startTestService(weather.url, { wantsMembers: true, answerMs: 5_000 });
  });
  afterEach(async () => {
    await service.close();
    await weather.close();
  });
  const good = hostile.good(() => service.clock.nowS());
  const modelsAsked = (): readonly (string | null)[] => weather.seen.filter(({ path }) => path === ENSEMBLE).map(({ query }) => query.get('models'));

  it('is asked once, for what is used, so far ahead that a run which lags shows it', async () => {
    const { hours, notes } = await service.source.weatherAt(PLACE);
    expect(notes).toEqual([]);
    expect(modelsAsked()).toEqual([MODEL]);
    const { query } = weather.seen.find(({ path }) => path === ENSEMBLE)!;
    expect(Object.fromEntries(query)).toMatchObject({ hourly: 'temperature_2m,cloud_cover', past_hours: '12', forecast_hours: '336', timeformat: 'unixtime', latitude: '44.260' });
    const dawn = hours.timeS.indexOf(DAWN_S);
    expect(hours.airTempCloudCorrelation[dawn]).toBeCloseTo(0.5, 1);
    expect(hours.cloudSpread[dawn]).toBeCloseTo(0.15, 2);
    expect(hours.airTempSpreadK[dawn]).toBeCloseTo(0.8, 1);
  });

  it('is remembered with what they said', async () => {
    const asked = await service.source.weatherAt(PLACE);
    service.clock.set(START_S + 600);
    expect(await service.source.weatherAt(PLACE)).toEqual(asked);
    expect(modelsAsked()).toEqual([MODEL]);
  });

  it.each([
    ['too few can be used', hostile.good(() => START_S, (answer) => first(20).reduce(withoutMember, answer)), '31 of 51 runs can be used'],
    ['the plan does not hold them', hostile.error(403, 'This model needs another plan'), 'This model needs another plan'],
    ['the answer is none', hostile.json(200, { hourly: 1 }), 'expected a forecast answer'],
    ['the answer breaks off', hostile.truncated, 'expected whole JSON'],
  ] as const)('is asked for mean and spread where %s, and that is noted and logged', async (_name, reaction, cause) => {
    const spoilt: hostile.Reaction = (response, request) => (request.query.get('models') === MODEL ? reaction : good)(response, request);
    weather.script(ENSEMBLE, spoilt);
    const { hours, notes } = await service.source.weatherAt(PLACE);
    expect(notes).toEqual([{ code: 'no-members', cause: expect.stringContaining(cause) as string }]);
    expect(service.warnings).toEqual(['weather-members-not-used']);
    expect(modelsAsked().at(-1)).toBe('ecmwf_ifs025_ensemble_mean');
    expect(hours.airTempSpreadK[hours.timeS.indexOf(DAWN_S)]).toBeCloseTo(0.8, 9);
    expect(hours.airTempCloudCorrelation.every((value) => value === null)).toBe(true);
  });

  it('is not asked again at once where it is down', async () => {
    weather.script(ENSEMBLE, hostile.text(503, 'text/html', 'down'));
    const { notes } = await service.source.weatherAt(PLACE);
    expect(notes).toEqual([{ code: 'no-ensemble', cause: expect.stringMatching(/ensemble.*503/u) as string }]);
    expect(new Set(modelsAsked())).toEqual(new Set([MODEL]));
  });

  it('says nothing of members where nobody asked for them', async () => {
    await service.close();
    service = startTestService(weather.url, { answerMs: 5_000 });
    const { notes, hours } = await service.source.weatherAt(PLACE);
    expect(notes).toEqual([]);
    expect(modelsAsked()).toEqual(['ecmwf_ifs025_ensemble_mean']);
    expect([...hours.cloudSpread, ...hours.airTempCloudCorrelation].every((value) => value === null)).toBe(true);
  });

  it('is asked for members by so many places in a minute only that half of what is free is left, and again in the next', async () => {
    const places = first(25).map((n) => ({ ...PLACE, longitude: -72 - n / 50 }));
    const answers = [];
    for (const place of places) answers.push(await service.source.weatherAt(place));
    const noted = answers.map(({ notes }) => notes.some(({ code }) => code === 'no-members'));
    // Each place costs 3.4 for the forecast, 10.2 for members and 2.6 for the past year, of half of 600: room for 18.
    expect(noted).toEqual(places.map((_, n) => n >= 18));
    service.clock.set(START_S + 60);
    expect((await service.source.weatherAt({ ...PLACE, longitude: -73 })).notes).toEqual([]);
  });
});

describe('the setting', () => {
  const wanted = (value?: string): boolean => isOn(readSettings(value === undefined ? {} : { DUSKWARD_WEATHER_MEMBERS: value }), 'DUSKWARD_WEATHER_MEMBERS');
  it('is off unless it is on, and nothing else', () => {
    expect([wanted(), wanted('off'), wanted('on')]).toEqual([false, false, true]);
    expect(() => wanted('yes')).toThrow('DUSKWARD_WEATHER_MEMBERS: expected "on" or "off", got "yes"');
  });
});

describe('what requests weigh', () => {
  const hosts = weatherHosts({ baseUrl: null, withKey: false });
  const weight = 10.2;

  it('is what the service bills: columns of all models over ten, members each, more than a fortnight in proportion, one at least', () => {
    expect(forecastRequest(hosts, PLACE, SPAN).weight).toBeCloseTo((17 * 2) / 10, 12);
    expect(membersRequest(hosts, PLACE).weight).toBeCloseTo((2 * 51) / 10, 12);
    expect(ensembleRequest(hosts, PLACE, SPAN).weight).toBe(1);
    expect(yearRequest(hosts, PLACE, START_S).weight).toBeCloseTo(365 / 14 / 10, 12);
  });

  it('is what the operator is told of members: 5.1 for each of two variables, instead of the least', () => {
    expect(SETTINGS.DUSKWARD_WEATHER_MEMBERS.doc).toContain('5.1 weighted calls a variable, 10.2 in all instead of 1 each time');
    expect(membersRequest(hosts, PLACE).weight).toBeCloseTo(2 * 5.1, 12);
  });

  it('leaves half of each free limit to what cannot be left out: by the minute, the hour and the day', () => {
    const budget = new CallBudget(true);
    const midnightS = Date.parse('2026-01-14T00:00:00Z') / 1000;
    let [taken, minutes] = [0, 0];
    for (let nowS = midnightS; nowS < midnightS + 86_400; nowS += 60) {
      minutes += 1;
      for (; budget.hasRoomFor({ weight }, nowS); taken += 1) budget.spend({ weight }, nowS);
      if (minutes === 1) expect(taken).toBe(Math.floor(300 / weight));
      if (minutes === 60) expect(taken).toBe(Math.floor(2_500 / weight));
    }
    expect(taken).toBe(Math.floor(5_000 / weight));
    expect(budget.hasRoomFor({ weight }, midnightS + 86_400)).toBe(true);
  });

  it('is not counted against a plan that is paid for', () => {
    const budget = new CallBudget(false);
    for (const _ of first(1_000)) budget.spend({ weight }, START_S);
    expect(budget.hasRoomFor({ weight }, START_S)).toBe(true);
  });
});
