import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { issueAdvisory, type EveningSubject } from '../../../bot/features/evening/issue-advisory.js';
import type { KeptLearning } from '../../../bot/features/evening/learned-evening.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { NewReading, Store } from '../../../bot/ports.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { DEMO_PLACE, demoSource } from '../../../bot/weather/demo.js';
import { checkGreenhouse, kelvinToCelsius } from '../../../engine/index.js';

const DAY_S = 86_400;
const EVENING_S = Date.parse('2026-11-25T20:00:00Z') / 1000;
const MORNINGS = [4, 3, 2, 1, 0].map((days) => Date.parse('2026-11-25T12:30:00Z') / 1000 - days * DAY_S);
const COLDER_C = 2;

let nowS = EVENING_S;
const clock = { nowS: (): number => nowS };
const weather = demoSource({ nowS: () => EVENING_S });
const check = checkGreenhouse({ place: { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevation: 180 }, size: { width: 4, length: 8, height: 2.4 }, layers: [{ film: 'standard' }], beds: [{ name: 'the bed', area: 16, crops: [] }] });
if (!check.ok) throw new Error(JSON.stringify(check.faults));
const subject: EveningSubject = { greenhouseId: 'learned', greenhouse: check.greenhouse, zone: 'America/Toronto' };
const reading = (validAtS: number, tempC: number): NewReading => ({ greenhouseId: 'learned', receivedAtS: validAtS, validAtS, place: 'inside', statistic: 'low', tempC, text: String(tempC), judged: 'good' });

let store: Store;
const evening = async (remembered: boolean): Promise<Advisory> => (await issueAdvisory(subject, { clock, weather, store: remembered ? store : null, workOut: workOutHere })).advisory;
const inside = ({ places }: Advisory): Advisory['places'][number]['lowC'] => places.find(({ place }) => place === 'inside')!.lowC;
const learnedNights = ({ reasons }: Advisory): number | null => reasons.flatMap((reason) => (reason.code === 'learned' ? [reason.nights] : []))[0] ?? null;
const kept = async (): Promise<KeptLearning> => JSON.parse((await store.learning('learned'))!.body) as KeptLearning;

describe('an evening after mornings 2 C colder than forecast', () => {
  let unlearned: Advisory;
  let learned: Advisory;
  beforeAll(async () => {
    store = await openSqliteStore({ path: ':memory:' });
    unlearned = await evening(true);
    for (const morningS of MORNINGS) await store.addReading(reading(morningS, 0));
    await evening(true);
    // What the house of the priors had in those nights: the readings are put 2 C below it.
    const { rows } = (await kept()).house;
    for (const { id, validAtS } of await store.readings('learned', MORNINGS.length)) {
      const forecastC = kelvinToCelsius(rows.find(({ timeS }) => timeS === validAtS)!.atPriorK);
      await store.replaceReading(id, reading(validAtS, Math.round((forecastC - COLDER_C) * 10) / 10));
    }
    learned = await evening(true);
  });
  afterAll(() => store.close());

  it('says that no reading has gone in before there was one, and how many nights have since', () => {
    expect(learnedNights(unlearned)).toBeNull();
    expect(unlearned.text).toContain('No reading of yours has gone into this yet');
    expect(learnedNights(learned)).toBe(MORNINGS.length);
    expect(learned.text).toContain('Your readings of 5 nights have gone into this.');
    expect(learned.text).not.toContain('No reading of yours');
  });

  it('has a colder low inside, by no more than the readings were, and a narrower range', () => {
    const [before, after] = [inside(unlearned), inside(learned)];
    expect(after.mean).toBeLessThan(before.mean - COLDER_C / 4);
    expect(after.mean).toBeGreaterThan(before.mean - 2 * COLDER_C);
    expect(after.q90 - after.q10).toBeLessThan(before.q90 - before.q10);
  });

  it('forgets a reading that was taken back, and takes one that comes after its evening', async () => {
    const [newest] = await store.readings('learned', 1);
    await store.withdrawReading(newest!.id, EVENING_S);
    expect(learnedNights(await evening(true))).toBe(MORNINGS.length - 1);
    nowS = EVENING_S + DAY_S;
    const before = (await kept()).house.stateAtS;
    expect(learnedNights(await evening(true))).toBe(MORNINGS.length - 1);
    const after = await kept();
    expect(after.house.stateAtS).toBe(before + DAY_S);
    expect(after.misses).toHaveLength(1);
    await store.addReading({ ...reading(newest!.validAtS, newest!.tempC), receivedAtS: nowS });
    expect(learnedNights(await evening(true))).toBe(MORNINGS.length);
  });
});
