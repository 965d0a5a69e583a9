import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wrongWith } from '../../soak/never.js';
import { strangeMessage } from '../../soak/strange-messages.js';
import { heard } from './phrase.js';

describe('strange messages', () => {
  it('crash nothing and store no temperature that was not said', () => {
    fc.assert(
      fc.property(strangeMessage, fc.constantFrom('F', 'C'), fc.constantFrom('morning', 'evening', '2026-07-15T13:00'), (says, units, when) => {
        expect(wrongWith(says, heard({ says, units, when, is: {} }))).toBeNull();
      }),
      { numRuns: 2000 },
    );
  });

  // A check that cannot fail would say nothing.
  it('are judged by a check that sees each fault', () => {
    const reading = (c: number) => ({ kind: 'reading', readings: [{ c, stat: 'low' }] }) as const;
    expect(wrongWith('it was 28', reading(-2.22))).toBeNull();
    expect(wrongWith('it was cold', reading(-2.22))).not.toBeNull();
    expect(wrongWith('it was 28', reading(-3))).not.toBeNull();
    expect(wrongWith('500', reading(260))).not.toBeNull();
    expect(wrongWith('/start 12', reading(12))).not.toBeNull();
    expect(wrongWith('covered, 28', { kind: 'did', also: [reading(-3)] })).not.toBeNull();
  });
});
