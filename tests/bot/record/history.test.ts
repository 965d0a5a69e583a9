import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { answerHistory } from '../../../bot/features/record/answer-history.js';
import type { NightsPicture } from '../../../bot/features/record/nights-picture.js';
import { shortForm } from '../../../bot/text/short-form.js';
import { outsideGsm } from '../text/gsm.js';
import { keptNights, type KeptNights } from './kept-nights.js';

let kept: KeptNights;
let drawn: NightsPicture | null;
beforeEach(async () => {
  kept = await keptNights();
  drawn = null;
});
afterEach(() => kept.store.close());

async function history(at: string): Promise<readonly string[]> {
  const drawNights = (picture: NightsPicture): Promise<null> => {
    drawn = picture;
    return Promise.resolve(null);
  };
  const { text, short } = await answerHistory(kept.subject, { store: kept.store, nowS: Date.parse(`${at}:00-05:00`) / 1000, drawNights });
  expect(outsideGsm(text), text).toEqual([]);
  // In one plain text message the newest night is told.
  if (short !== undefined) expect(shortForm({ text, short })).toBe(text.split('\n').at(-1)!.slice(2));
  expect(short === undefined).toBe(drawn === null);
  return text.split('\n').slice(1);
}

describe('the last nights', () => {
  it('are told as what was said, read and done, newest last', async () => {
    await kept.said('2026-01-12', { inside: 1 });
    await kept.said('2026-01-13', { inside: 0 });
    await kept.read('2026-01-13', -1.5);
    await kept.read('2026-01-13', -6, { place: 'outside', judged: 'open' });
    await kept.told('2026-01-13', { items: ['cover'] }, true);
    await kept.told('2026-01-13', { items: ['heater'] }, false);
    expect(await history('2026-01-14T12:00')).toEqual([
      '- Mon 12 Jan: said 1C (-1 to 3), not read.',
      '- Tue 13 Jan: said 0C (-2 to 2), read -1.5C inside, -6C outside (with a question mark). Done: cover. Left: heater.',
    ]);
    expect(drawn!.nights.map(({ date }) => date)).toEqual(['08', '09', '10', '11', '12', '13'].map((day) => `2026-01-${day}`).toSpliced(0, 0, '2026-01-07'));
    expect(drawn!.nights.at(-1)).toMatchObject({ said: { q50: 0 }, read: { tempC: -1.5, kind: 'low' } });
  });

  it('end with the one before while a night is young, and hold it once it is past its middle', async () => {
    await kept.said('2026-01-14', { inside: 1 });
    expect(await history('2026-01-14T20:00')).toEqual([]);
    expect(await history('2026-01-15T05:00')).toEqual(['- Wed 14 Jan: said 1C (-1 to 3), not read.']);
  });

  it('are seven, however many are kept', async () => {
    for (let day = 1; day <= 14; day += 1) await kept.said(`2026-01-${String(day).padStart(2, '0')}`, { inside: day });
    const lines = await history('2026-01-15T12:00');
    expect(lines).toHaveLength(7);
    expect(lines[0]).toContain('Thu 8 Jan');
  });

  it('speak of the thermometer that was read most, where it is not the one inside', async () => {
    await kept.said('2026-01-13', { inside: 0, cover: 2 });
    await kept.read('2026-01-13', 1.5, { place: 'cover' });
    expect(await history('2026-01-14T12:00')).toEqual(['- Tue 13 Jan: said 2C (0 to 4), read 1.5C under the cover.']);
    expect(drawn!.thermometer).toEqual({ place: 'cover', name: null });
  });

  it('of which nothing is kept are said to be so, without a picture', async () => {
    expect(await history('2026-01-14T12:00')).toEqual([]);
    expect(drawn).toBeNull();
  });
});
