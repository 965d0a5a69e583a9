import { beforeAll, describe, expect, it } from 'vitest';
import { issueAdvisory } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { checkGreenhouse } from '../../../engine/index.js';
import { BARE_TUNNEL } from '../../fixtures/greenhouse-files.js';
import * as hostile from '../../fixtures/hostile-weather.js';
import { withoutMember } from '../../fixtures/ensemble-members.js';
import { PLACE, START_S, startTestService } from '../weather/service.js';

const checked = checkGreenhouse({ ...BARE_TUNNEL, place: { latitude: PLACE.latitude, longitude: PLACE.longitude, elevation: PLACE.elevationM } });
if (!checked.ok) throw new Error(JSON.stringify(checked.faults));
const { greenhouse } = checked;

/** One whole evening over HTTP, from a service whose ensemble answers so. */
async function evening(wantsMembers: boolean, ensemble: hostile.Reaction): Promise<Advisory> {
  const weather = await hostile.startHostileWeather({ nowS: () => START_S });
  weather.script('/v1/ensemble', ensemble);
  const service = startTestService(weather.url, { wantsMembers, answerMs: 5_000 });
  try {
    return (await issueAdvisory({ greenhouseId: 'test', greenhouse, zone: 'America/New_York' }, { clock: service.clock, weather: service.source, store: null, workOut: workOutHere })).advisory;
  } finally {
    await service.close();
    await weather.close();
  }
}

const good = hostile.good(() => START_S);
const withCorrelation = (correlation: number): hostile.Reaction => hostile.good(() => START_S, (body) => body, { airTempSdK: 0.8, cloudSdPercent: 15, correlation });
const widthInside = ({ places }: Advisory): number => {
  const { q10, q90 } = places.find(({ place }) => place === 'inside')!.lowC;
  return q90 - q10;
};

describe('an evening with the members of the ensemble', () => {
  let opposed: Advisory, apart: Advisory, together: Advisory, fewer: Advisory, spread: Advisory;
  beforeAll(async () => {
    [opposed, apart, together] = [await evening(true, withCorrelation(-0.8)), await evening(true, withCorrelation(0)), await evening(true, withCorrelation(0.8))];
    fewer = await evening(true, (response, request) => (request.query.get('models')!.endsWith('_mean') ? good : hostile.good(() => START_S, (body) => [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11].reduce(withoutMember, body)))(response, request));
    spread = await evening(false, good);
  });

  it('has a wider range where warm and cloudy go together, for both warm the house, and a narrower one where they do not', () => {
    expect(widthInside(opposed)).toBeLessThan(widthInside(apart) - 0.2);
    expect(widthInside(together)).toBeGreaterThan(widthInside(apart) + 0.2);
    for (const { weather, reasons } of [opposed, apart, together]) {
      expect(weather).toMatchObject({ source: 'open-meteo', stale: false });
      expect(reasons.map(({ code }) => code)).not.toContain('weather-note');
    }
  });

  it('is one of mean and spread where too few can be used, of which growers hear nothing', () => {
    expect(fewer.reasons).toContainEqual({ code: 'weather-note', note: 'no-members', detail: '40 of 51 runs can be used' });
    expect(fewer.text).not.toMatch(/ensemble|members|runs/u);
    expect(fewer.places).toEqual(spread.places);
  });
});
