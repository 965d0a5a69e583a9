import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { issueAdvisory } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { BARE_TUNNEL, DOUBLE_WITH_HEAT, GABLE_WITH_DRUMS } from '../../fixtures/greenhouse-files.js';
import { STAND_IN_ABSENT, STAND_IN_PRESENT, startStandIn, type StandIn } from '../../fixtures/weather-stand-in.js';
import { startTestService, type TestService } from '../weather/service.js';

const CLIMATES = [
  { name: 'Denver, dry and high', file: '725650TYCST.csv', place: { latitude: 39.83, longitude: -104.65, elevation: 1650 }, zone: 'America/Denver', now: '2026-01-14T21:30:00Z' },
  { name: 'Boston, cloudy coast', file: 'boston-tmy3-oct-apr.csv', place: { latitude: 42.37, longitude: -71.02, elevation: 6 }, zone: 'America/New_York', now: '2026-01-20T19:30:00Z' },
] as const;

for (const climate of CLIMATES) {
  describe.skipIf(!STAND_IN_PRESENT)(`tonight over HTTP, ${climate.name}${STAND_IN_ABSENT}`, () => {
    let standIn: StandIn;
    let service: TestService;
    beforeAll(async () => {
      standIn = await startStandIn(climate.file, climate.now);
      service = startTestService(standIn.url, { startS: Date.parse(climate.now) / 1000, budgetMs: 40_000, answerMs: 20_000 });
    });
    afterAll(async () => {
      await service.close();
      await standIn.stop();
    });
    const advise = async (file: Omit<GreenhouseFile, 'place'>): Promise<Advisory> => {
      const check = checkGreenhouse({ ...file, place: { ...climate.place } });
      if (!check.ok) throw new Error(JSON.stringify(check.faults));
      return (await issueAdvisory({ greenhouseId: 'test', greenhouse: check.greenhouse, zone: climate.zone }, { clock: service.clock, weather: service.source, store: null, workOut: workOutHere })).advisory;
    };

    it.each([['bare tunnel', BARE_TUNNEL], ['double film with heat', DOUBLE_WITH_HEAT], ['gable with drums', GABLE_WITH_DRUMS]] as const)('%s: every field is there and makes sense', async (_, file) => {
      const advisory = await advise(file);
      expect(advisory.night).toBe(climate.now.slice(0, 10));
      expect(advisory.issuedAt).toMatch(/T\d\d:\d\d:\d\d-0[57]:00$/u);
      expect(advisory.weather).toMatchObject({ source: 'open-meteo', stale: false });
      for (const { lowC, lowAt } of advisory.places) {
        expect(lowC.q10).toBeLessThan(lowC.q50);
        expect(lowC.q50).toBeLessThan(lowC.q90);
        expect(lowAt).toMatch(/[+-]\d\d:\d\d$/u);
      }
      // Design section 5: before there are readings the half-width of the 80 % range of the inside low is 2 to 3.5 K.
      // (A thermostat narrows it, so it is taken where nothing is done; lower end widened by 0.3 K for cloudy nights.)
      const inside = advisory.alternatives.find(({ actions }) => actions.length === 0)!.places.find(({ place }) => place === 'inside')!.lowC;
      expect((inside.q90 - inside.q10) / 2).toBeGreaterThan(1.7);
      expect((inside.q90 - inside.q10) / 2).toBeLessThan(3.6);
      expect(advisory.crops).toHaveLength(file.beds.flatMap(({ crops }) => crops).length);
      for (const crop of advisory.crops) {
        expect(crop.damageProbability).toBeGreaterThanOrEqual(crop.lossProbability);
        expect(['safe', 'watch', 'at-risk', 'likely-lost']).toContain(crop.verdict);
        expect(crop.hardening).toBeGreaterThanOrEqual(0);
      }
      const plans = advisory.alternatives.map(({ actions }) => JSON.stringify(actions));
      expect(plans).toContain('[]');
      expect(plans).toContain(JSON.stringify(advisory.plan.actions));
      const least = Math.min(...advisory.alternatives.map(({ expectedLoss }) => expectedLoss));
      const chosen = advisory.alternatives.find(({ actions }) => JSON.stringify(actions) === JSON.stringify(advisory.plan.actions))!;
      expect(chosen.expectedLoss).toBeLessThan(least + Math.max(1.5, 0.2 * least));
      expect(advisory.reasons.length).toBeGreaterThan(0);
      expect(advisory.cautions.map(({ code }) => code)).toContain('not-a-promise');
      expect(advisory.text).toContain('How cold');
    });

    it('says the same bytes twice for the same inputs', async () => {
      expect(await advise(BARE_TUNNEL)).toEqual(await advise(BARE_TUNNEL));
    });

    it('knows the unknown crop by its class and says so', async () => {
      const advisory = await advise(GABLE_WITH_DRUMS);
      expect(advisory.crops.find(({ asked }) => asked === 'minutina')).toMatchObject({ isClassFallback: true, crop: 'class_half_hardy' });
      expect(advisory.text).toContain('I do not know minutina');
    });
  });
}
