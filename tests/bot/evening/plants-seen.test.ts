import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import { issueAdvisory, type EveningSubject } from '../../../bot/features/evening/issue-advisory.js';
import { plantsSeen } from '../../../bot/features/evening/plants-seen.js';
import { logOutcome } from '../../../bot/features/outcome/log-outcome.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import type { Store, StoredOutcome } from '../../../bot/ports.js';
import { openSqliteStore } from '../../../bot/store/sqlite-store.js';
import { DEMO_PLACE, demoSource } from '../../../bot/weather/demo.js';
import { checkGreenhouse, kelvinToCelsius } from '../../../engine/index.js';

const EVENING_S = Date.parse('2026-11-25T20:00:00Z') / 1000;
const MORNING_S = EVENING_S + 16 * 3600;
const NIGHT = '2026-11-25';
const clock = { nowS: (): number => EVENING_S };
const check = checkGreenhouse({ place: { latitude: DEMO_PLACE.latitude, longitude: DEMO_PLACE.longitude, elevation: 180 }, size: { width: 4, length: 8, height: 2.4 }, layers: [{ film: 'standard' }], beds: [{ name: 'the bed', area: 16, crops: ['lettuce'] }] });
if (!check.ok) throw new Error(JSON.stringify(check.faults));
const subject: EveningSubject = { greenhouseId: 'h', greenhouse: check.greenhouse, zone: 'America/Toronto' };
const told = (state: StoredOutcome['state'], more: Partial<StoredOutcome> = {}): Omit<StoredOutcome, 'id'> => ({ greenhouseId: 'h', receivedAtS: MORNING_S, night: NIGHT, crop: 'lettuce', bed: null, state, text: state, ...more });

let store: Store;
let first: Advisory;
const evening = async (): Promise<Advisory> => (await issueAdvisory(subject, { clock, weather: demoSource(clock), store, workOut: workOutHere })).advisory;
const lettuce = ({ crops }: Advisory): Advisory['crops'][number] => crops[0]!;

beforeAll(async () => {
  store = await openSqliteStore({ path: ':memory:' });
  first = await evening();
});
afterAll(() => store.close());

describe('how a crop came through', () => {
  it('is set beside what was said of its plants, corrected by the low that was read', async () => {
    await store.addOutcome(told('fine'));
    const nights = (await store.learnedFrom('h')).outcomes;
    const [seen] = plantsSeen(nights, [], subject);
    expect(seen).toMatchObject({ cropId: lettuce(first).crop, state: 'fine' });
    expect(kelvinToCelsius(seen!.lowK)).toBeCloseTo(lettuce(first).judgedLowC, 6);
    const reading = await store.addReading({ greenhouseId: 'h', receivedAtS: MORNING_S, validAtS: MORNING_S, place: 'inside', statistic: 'low', tempC: first.places.find(({ place }) => place === 'inside')!.lowC.q50 - 2, text: '', judged: 'open' });
    const [read] = plantsSeen(nights, [{ ...reading, judged: 'good' }], subject);
    expect(read!.lowK).toBeCloseTo(seen!.lowK - 2, 6);
    expect(read!.lowSdK).toBeLessThan(seen!.lowSdK);
    // One that is still asked about corrects nothing.
    expect(plantsSeen(nights, [reading], subject)[0]!.lowK).toBeCloseTo(seen!.lowK, 6);
  });

  it('is left out for another crop, another bed, and a night of which nothing was said', async () => {
    const row = { ...told('dead'), id: 1 };
    const advisory = JSON.stringify(first);
    expect(plantsSeen([{ outcome: { ...row, crop: 'kale' }, advisory }, { outcome: { ...row, bed: 'elsewhere' }, advisory }], [], subject)).toEqual([]);
    await store.addOutcome(told('dead', { night: '2026-01-01' }));
    expect(plantsSeen((await store.learnedFrom('h')).outcomes, [], subject).map(({ state }) => state)).toEqual(['fine']);
  });

  it('is said to count where something was said of the crop for its night, and not else', async () => {
    const says = (crop: string, more: { night?: string; bed?: string } = {}): Promise<string> => logOutcome({ kind: 'outcome', crop, state: 'fine', night: NIGHT, ...more }, { ...subject, receivedAtS: MORNING_S, text: '' }, store);
    expect(await says('lettuce')).toContain('I count it when I judge that crop again.');
    for (const answer of [await says('kale'), await says('lettuce', { night: '2026-01-01' }), await says('lettuce', { bed: 'elsewhere' })]) expect(answer).not.toContain('I count it');
  });

  it('goes into the next evening: harm begins colder for plants that stood it, warmer for plants that did not', async () => {
    const stood = lettuce(await evening()).damageBeginsC;
    for (let more = 0; more < 4; more += 1) await store.addOutcome(told('dead'));
    const lost = lettuce(await evening()).damageBeginsC;
    expect(stood).toBeLessThanOrEqual(lettuce(first).damageBeginsC);
    expect(lost).toBeGreaterThan(stood);
  });
});
