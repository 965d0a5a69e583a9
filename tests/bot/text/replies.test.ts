import { describe, expect, it } from 'vitest';
import type { Ask } from '../../../bot/language/intent.js';
import * as replies from '../../../bot/text/reply-text.js';
import { cropFamilies, cropRows } from '../../../engine/index.js';
import { outsideGsm } from './gsm.js';

const ASKS: Readonly<Record<Ask, true>> = {
  what: true, 'which-unit': true, 'which-sign': true, 'which-number': true, 'which-stat': true, 'which-time': true, 'which-place': true, 'which-crop': true, 'which-state': true,
  'which-night': true, 'which-item': true, 'which-meaning': true, 'which-reading': true, 'done-yet': true, 'impossible-temperature': true,
};

describe('replies are plain', () => {
  it.each(Object.keys(ASKS) as Ask[])('asks back: %s', (ask) => {
    for (const text of [replies.askBack(ask, undefined, undefined, 'F'), replies.askBack(ask, 'frob', ['-2C', '+2C'], 'C')]) {
      expect(outsideGsm(text), text).toEqual([]);
      expect(text).not.toContain('undefined');
      expect(text.endsWith('Say "help" for what I can do.')).toBe(true);
    }
  });

  it('all fixed ones, and all with something filled in', () => {
    const texts = Object.values(replies).filter((reply) => typeof reply === 'string');
    expect(texts.length).toBeGreaterThanOrEqual(5);
    const filled = [replies.cropNotGrown(['kale'], ['lettuce']), replies.cropNotGrown(['kale'], []), replies.notBuiltYet('what-if'), replies.NO_WEATHER, replies.SOMETHING_FAILED];
    for (const text of [...texts, ...filled]) expect(outsideGsm(text), text).toEqual([]);
  });
});

describe('names of crops', () => {
  it('are plain, so that naming one never turns a message into a longer kind', () => {
    const names = [...cropRows.map(({ commonName }) => commonName), ...cropFamilies.map(({ name }) => name)];
    expect(names.filter((name) => outsideGsm(name).length > 0)).toEqual([]);
  });
});
