import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST_PART, partsOf } from '../../../../bot/channels/telegram/message-parts.js';
import { readHtml } from '../../../fixtures/bot-api/telegram-html.js';

const texts = (text: string): readonly string[] => partsOf({ text }).map((part) => part.text);
const words = (text: string): readonly string[] => text.split(/\s+/u).filter((word) => word !== '');
const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Lines of all lengths, blank ones among them, far beyond what one message takes. */
const lines = fc.array(fc.oneof({ weight: 1, arbitrary: fc.constant('') }, { weight: 4, arbitrary: fc.array(fc.stringMatching(/^[a-z<&-]{1,12}$/u), { maxLength: 120 }).map((some) => some.join(' ').trim()) }), { maxLength: 60 });

describe('a text in parts', () => {
  it('that fits is left as it is', () => {
    const text = ` ${'x\n'.repeat(1700)} `;
    expect(texts(text)).toEqual([text]);
    expect(partsOf({ text: 'a', html: '<b>a' })).toEqual([{ text: 'a', html: '<b>a' }]);
  });

  it('loses no word, keeps their order, and every part fits and says something', () => {
    fc.assert(
      fc.property(lines, (some) => {
        const parts = texts(some.join('\n'));
        expect(parts.flatMap(words)).toEqual(words(some.join('\n')));
        if (some.join('\n').length > LONGEST_PART) expect(parts.every((part) => part.length <= LONGEST_PART && part.trim() !== '')).toBe(true);
      }),
      { seed: 20_261_125, numRuns: 200 },
    );
  });

  it('with markup: every part reads as its text, whatever tags go over the cut', () => {
    fc.assert(
      fc.property(lines, fc.array(fc.nat(59), { minLength: 2, maxLength: 2 }), (some, [one = 0, other = 0]) => {
        // Bold over a run of lines, with italics in each line of the run.
        const [from, to] = [Math.min(one, other), Math.max(one, other)];
        const html = some.map((line, i) => `${i === from ? '<b>' : ''}${i >= from && i < to ? `<i>${escaped(line)}</i>` : escaped(line)}${i === Math.min(to, some.length - 1) && from < some.length ? '</b>' : ''}`).join('\n');
        const parts = partsOf({ text: some.join('\n'), html });
        for (const part of parts) if (part.html !== null) expect(readHtml(part.html)).toBe(part.text);
        const hasLongLine = some.some((line) => line.length > LONGEST_PART);
        if (!hasLongLine) expect(parts.every((part) => part.html !== null)).toBe(true);
      }),
      { seed: 20_261_125, numRuns: 200 },
    );
  });

  it('is cut at the last blank line when the part is half full by then, else at the last line end', () => {
    const half = 'x'.repeat(1760);
    expect(texts(`${half}\n\nsecond\n${half}`)).toEqual([half, `second\n${half}`]);
    const start = 'x'.repeat(1700);
    expect(texts(`${start}\n\n${start}\n${start}`)).toEqual([`${start}\n\n${start}`, start]);
  });

  it('without line ends is cut between words, without words inside them, never inside a character', () => {
    const sentence = Array.from({ length: 1000 }, (_, i) => `word${i}`).join(' ');
    expect(texts(sentence).flatMap(words)).toEqual(words(sentence));
    expect(texts(sentence).every((part) => part.length <= LONGEST_PART && /^word\d+( word\d+)*$/u.test(part))).toBe(true);
    expect(texts('x'.repeat(2 * LONGEST_PART + 1)).map(({ length }) => length)).toEqual([LONGEST_PART, LONGEST_PART, 1]);
    // One unit, then characters of two units: the cut would fall inside one.
    const snow = `x${'\u{1F328}'.repeat(2000)}`;
    expect(texts(snow).join('')).toBe(snow);
    expect(texts(snow).every((part) => !/\p{Surrogate}/u.test(part))).toBe(true);
  });

  it('whose markup has other lines than its text goes plain', () => {
    const text = `${'x'.repeat(3000)}\n${'y'.repeat(3000)}`;
    expect(partsOf({ text, html: `<b>Title</b>\n${text}` })).toEqual(['x'.repeat(3000), 'y'.repeat(3000)].map((part) => ({ text: part, html: null })));
  });
});
