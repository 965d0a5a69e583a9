import { DateTime } from 'luxon';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { logDeeds } from '../../../bot/features/done/log-deeds.js';
import { answerRecord } from '../../../bot/features/record/answer-record.js';
import type { Deed } from '../../../bot/features/evening/deeds-tonight.js';
import { HOUSE } from '../reading/reading-rig.js';
import { keptNights, type KeptNights } from './kept-nights.js';

const NIGHT = '2026-07-10';
const LETTUCE = { crop: 'lettuce', asked: 'lettuce', bed: 'north', verdict: 'watch', damageProbability: 0.2, damageBeginsC: -3, judgedLowC: -1, judgedAt: 'leaf', pickedBefore: false } as const;

/** At noon of Greenwich the local day is the next one in the first two already, and in the third barely the same. */
describe.each([
  ['Pacific/Auckland', { latitude: -43.6, longitude: 172.1 }],
  ['Pacific/Kiritimati', { latitude: 1.9, longitude: -157.4 }],
  ['Pacific/Honolulu', { latitude: 19.7, longitude: -155.6 }],
])('a night in %s', (zone, place) => {
  const localS = (clock: string): number => DateTime.fromISO(`${NIGHT}T${clock}`, { zone }).toSeconds();
  let kept: KeptNights;
  beforeEach(async () => {
    kept = await keptNights({ ...HOUSE, place: { ...place, timeZone: zone } }, zone);
  });
  afterEach(() => kept.store.close());

  it('has what was told of its crops in the record', async () => {
    await kept.said(NIGHT, { inside: 0 }, { verdicts: [LETTUCE], clock: DateTime.fromSeconds(localS('16:00'), { zone: 'UTC-5' }).toFormat("yyyy-MM-dd'T'HH:mm") });
    await kept.came(NIGHT, 'lettuce', 'marked');
    const { text } = await answerRecord(kept.subject, { store: kept.store, drawNights: () => Promise.resolve(null) });
    expect(text).toContain('it got cold enough for marks on 1 of 1 crop night');
  });

  it('has what was done on it from its own evening on, also when it is told days later', async () => {
    const message = { ...kept.subject, night: '2026-07-13', receivedAtS: localS('10:00') + 3 * 86_400, text: 'covered the beds on friday', words: 'covered the beds on friday' };
    await logDeeds({ kind: 'did', done: ['cover'], night: NIGHT }, message, kept.store);
    const { night, body } = (await kept.store.actions(kept.subject.greenhouseId, 0))[0]!;
    expect(night).toBe(NIGHT);
    const { fromS } = JSON.parse(body) as Deed;
    expect(fromS).toBeGreaterThan(localS('16:30'));
    expect(fromS).toBeLessThan(localS('19:30'));
  });
});
