import { describe, expect, it } from 'vitest';
import { HELD_OUT } from './held-out.js';
import { heard, type Phrase } from './phrase.js';
import { NIGHT_PHRASES } from './phrases-night.js';
import { OTHER_PHRASES } from './phrases-other.js';
import { DOUBTFUL_READINGS, READING_PHRASES } from './phrases-readings.js';

const title = (phrase: Phrase): string => `${phrase.says} [${phrase.units ?? 'F'} ${phrase.when ?? 'morning'}]`;

describe.each([
  ['readings and fixes', READING_PHRASES],
  ['the night', NIGHT_PHRASES],
  ['the other kinds', OTHER_PHRASES.filter(({ is }) => is['kind'] !== 'unclear')],
] as const)('%s, exactly', (_, phrases) => {
  it.each(phrases.filter(({ is }) => is['kind'] !== 'unclear').map((phrase) => [title(phrase), phrase] as const))('%s', (_title, phrase) => {
    expect(heard(phrase)).toEqual(phrase.is);
  });
});

describe('what is asked back', () => {
  const asked = [...DOUBTFUL_READINGS, ...NIGHT_PHRASES, ...OTHER_PHRASES].filter(({ is }) => is['kind'] === 'unclear');
  it.each(asked.map((phrase) => [title(phrase), phrase] as const))('%s', (_title, phrase) => {
    expect(heard(phrase)).toMatchObject(phrase.is);
  });
});

describe('held-out phrases', () => {
  it('are understood as often as when they were first counted', () => {
    const missed = HELD_OUT.filter((phrase) => {
      try {
        expect(heard(phrase)).toMatchObject(phrase.is);
        return false;
      } catch {
        return true;
      }
    });
    // First count, before anything was tuned: 55 of 60; one of the five has since moved to the other tables.
    expect(missed.length, missed.map(title).join('\n')).toBeLessThanOrEqual(4);
  });
});
