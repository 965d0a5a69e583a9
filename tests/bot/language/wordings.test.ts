import { describe, expect, it } from 'vitest';
import { everyWording, listed, wordings } from '../../../bot/language/wordings.js';

describe('wordings', () => {
  const found = wordings`
    frost|cold (?:snap|spell)
    (?:will|might) (?:it|we|
    they) freeze
    ^ bare $
  `;

  it.each([' any frost ', ' a cold snap ', ' will they freeze ', ' might it freeze ', ' bare '])('finds%sin any of its lines', (form) => {
    expect(found.test(form)).toBe(true);
  });

  it.each([' frosty ', ' defrost ', ' cold ', ' snap ', ' they freeze ', ' so bare ', ' bare ground '])('finds no part of a word, of a bracket or of a whole in%s', (form) => {
    expect(found.test(form)).toBe(false);
  });

  it('has its parts from outside, and bars in a class are letters', () => {
    expect(wordings`power (?:is )?${'(?:out|off)'}`.test(' the power is off ')).toBe(true);
    expect(wordings`a[|]b`.test(' a|b ')).toBe(true);
    expect(wordings`a[|]b`.test(' b ')).toBe(false);
  });

  it('replaces each of them where they stand', () => {
    expect(' no frost here no frost '.replace(everyWording`no frost`, ' fine ')).toBe(' fine here fine ');
  });

  it('lists phrases between bars and lines', () => {
    expect(listed(`
      row cover|fleece
      low tunnel
    `)).toEqual(['row cover', 'fleece', 'low tunnel']);
  });
});
