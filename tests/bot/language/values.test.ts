import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Intent } from '../../../bot/language/intent.js';
import { understand } from '../../../bot/language/understand.js';
import { CROPS } from './crop-words.js';
import { instantS, ZONE } from './phrase.js';

const hear = (text: string, units: 'C' | 'F', when = 'morning'): Intent => understand({ text, atS: instantS(when), zone: ZONE, units, crops: CROPS });
const onlyC = (intent: Intent): number | null => (intent.kind === 'reading' && intent.readings.length === 1 ? (intent.readings[0]?.c ?? null) : null);
const celsius = (value: number, unit: 'C' | 'F'): number => (unit === 'C' ? value : ((value - 32) * 5) / 9);

/** Tenths that are a temperature in either unit. */
const tenths = fc.integer({ min: -599, max: 599 }).filter((tenth) => celsius(tenth / 10, 'F') > -60);
const unit = fc.constantFrom<'C' | 'F'>('C', 'F');
const minus = fc.constantFrom('-', '−', '–', 'minus ', 'negative ');
const mark = fc.constantFrom('', ' ', '°', ' °', ' deg ', ' degrees ');
const around = fc.constantFrom('{}', 'low was {}', '{} inside', 'inside: {}', 'it was {} at 5am', 'outside {} this morning', '{} under the cover', 'got down to {}', 'min {}', 'good morning, {}');

describe('a temperature keeps its sign and unit', () => {
  it('in either unit, with any minus, degree mark and words around it', () => {
    fc.assert(
      fc.property(tenths, unit, unit, minus, mark, around, fc.boolean(), (tenth, said, own, sign, degree, words, withComma) => {
        const size = `${Math.abs(tenth) / 10}`;
        const text = words.replace('{}', `${tenth < 0 ? sign : ''}${withComma ? size.replace('.', ',') : size}${degree}${said}`);
        expect(onlyC(hear(text, own)), text).toBeCloseTo(celsius(tenth / 10, said), 2);
      }),
      { numRuns: 2000 },
    );
  });

  it('below zero without a unit, in the grower\'s own', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), unit, minus, around, (tenth, own, sign, words) => {
        const text = words.replace('{}', `${sign}${tenth / 10}`);
        expect(onlyC(hear(text, own)), text).toBeCloseTo(celsius(-tenth / 10, own), 2);
      }),
      { numRuns: 1000 },
    );
  });

  it('as so many below zero or below freezing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), unit, fc.constantFrom('below zero', 'below', 'below freezing', 'under zero'), (tenth, own, words) => {
        const value = words.includes('freezing') && own === 'F' ? 32 - tenth / 10 : -tenth / 10;
        expect(onlyC(hear(`${tenth / 10} ${words}`, own))).toBeCloseTo(celsius(value, own), 2);
      }),
    );
  });

  it('or is asked about where a dash may be no minus', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), unit, fc.constantFrom('inside - ', 'low-', 'outside – '), (value, own, words) => {
        expect(hear(`${words}${value}`, own)).toMatchObject({ kind: 'unclear', asks: 'which-sign' });
      }),
    );
  });

  it('and is asked about outside -60 to +60 °C', () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 9999 }), fc.constantFrom('', 'minus '), (value, sign) => {
        expect(hear(`${sign}${value}C`, 'C')).toMatchObject({ kind: 'unclear', asks: 'impossible-temperature' });
      }),
    );
  });

  it('and a bare 20 to 60 of a °C grower is asked about in winter', () => {
    for (let value = 20; value <= 60; value++) expect(hear(`${value}`, 'C')).toMatchObject({ kind: 'unclear', asks: 'which-unit' });
    for (let value = 0; value < 20; value++) expect(onlyC(hear(`${value}`, 'C'))).toBe(value);
  });
});

describe('any text', () => {
  it('has a meaning or a question, always the same, and never a temperature out of range', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary', maxLength: 200 }), fc.array(fc.constantFrom('kale', '28', '-3', 'F', 'low', 'covered', 'at', '5am', 'the', 'beds', '?', ',', 'not', 'will', 'tonight', 'heater', 'if', '40%', 'yesterday', 'stop', '\n', '6:40', 'inside')).map((words) => words.join(' '))), unit, (text, own) => {
        const intent = hear(text, own);
        expect(hear(text, own)).toEqual(intent);
        if (intent.kind === 'reading') for (const { c } of intent.readings) expect(Math.abs(c)).toBeLessThanOrEqual(60);
      }),
      { numRuns: 1000 },
    );
  });

  it('of great length takes no great time', () => {
    const start = performance.now();
    for (const words of ['will the kale ', '28 ', 'covered the beds and ', 'what ', '- ', 'how much would the ', 'a']) hear(words.repeat(400), 'F');
    expect(performance.now() - start).toBeLessThan(5000);
  });
});
