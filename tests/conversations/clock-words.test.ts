import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { clockMove } from '../../bot/play/clock-words.js';

const ZONE = 'America/Toronto';
const at = (local: string): number => DateTime.fromISO(local, { zone: ZONE }).toSeconds();
/** Where the words move the clock, on its own zone's clock. */
function moved(text: string, from = '2026-11-25T15:30'): string | null {
  const move = clockMove(text, { nowS: at(from), zone: ZONE, greenhouse: null });
  if (move === null) return null;
  return 'fault' in move ? move.fault : DateTime.fromSeconds(move.toS, { zone: ZONE }).toFormat("yyyy-MM-dd'T'HH:mm");
}

describe('words that move the clock', () => {
  it.each([
    ['in 3 hours', '2026-11-25T18:30'],
    ['In three hours.', '2026-11-25T18:30'],
    ['+20 min', '2026-11-25T15:50'],
    ['in 2 days', '2026-11-27T15:30'],
    ['noon', '2026-11-26T12:00'],
    ['next morning', '2026-11-26T07:00'],
    ['next evening', '2026-11-25T16:00'],
    ['tomorrow at 15:00', '2026-11-26T15:00'],
    ['tomorrow at 3 pm', '2026-11-26T15:00'],
    ['tomorrow at 12 am', '2026-11-26T00:00'],
    ['today at noon', 'over'],
    ['friday at 6:45', '2026-11-27T06:45'],
    ['wednesday at 16:00', '2026-12-02T16:00'],
    ['today at 25', 'no-such-time'],
    ['today at 13 pm', 'no-such-time'],
    ['in 6 weeks', 'too-far'],
  ])('%s', (text, expected) => {
    expect(moved(text)).toBe(expected);
  });

  it.each(['tomorrow', 'will the kale survive tomorrow', '16:30', '4 pm', 'evening', 'in the morning', 'low was -3 at 7:00', '+3', 'yesterday at 5', 'inside at 20'])('leaves "%s" to the assistant', (text) => {
    expect(moved(text)).toBeNull();
  });

  it('goes by the local clock when the clocks change', () => {
    expect(moved('tomorrow at 15:00', '2026-10-31T15:00')).toBe('2026-11-01T15:00');
    expect(moved('in 24 hours', '2026-10-31T15:00')).toBe('2026-11-01T14:00');
    expect(moved('in 1 day', '2026-10-31T15:00')).toBe('2026-11-01T15:00');
  });
});
