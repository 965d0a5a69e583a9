import { describe, expect, it } from 'vitest';
import type { NightFlag, PicturedCrop } from '../../../bot/chart/night-picture.js';
import { clockMark, flagWords, idleWords, INVENTED_MARK, limitWords, lineName, lowTime, moreFlags, NAMELESS_GREENHOUSE, nightLine, NO_CROPS, pictureAttribution, staleMark, sunrise, sunset, VERDICT_TAGS, verdictLine } from '../../../bot/text/chart-text.js';
import { outsideGsm } from '../text/gsm.js';
import { inventedPicture } from './invented-picture.js';

const { crop, lines } = inventedPicture();
const VERDICTS = Object.keys(VERDICT_TAGS) as PicturedCrop['verdict'][];
const FLAGS: readonly NightFlag[] = [
  { atS: 0, does: 'cover', beds: ['north'] }, { atS: 0, does: 'cover', beds: ['north', 'south'] }, { atS: 0, does: 'cover', beds: ['a', 'b', 'c'] }, { atS: 0, does: 'pick', crops: ['kale'] },
  { atS: 0, does: 'heater', setC: 2 }, { atS: 0, does: 'heater', setC: null }, { atS: 0, does: 'shut-vents' }, { atS: 0, does: 'draw-curtain' },
  ...(['tubes', 'stone-box', 'heap', 'air'] as const).flatMap((fan) => [true, false].map((run): NightFlag => ({ atS: 0, does: 'fan', fan, run }))),
];
const SAID: readonly string[] = [
  NAMELESS_GREENHOUSE, NO_CROPS, INVENTED_MARK, nightLine('Wed 25 Nov', '16:00'), lowTime('06:10'), sunset('16:20'), sunrise('07:10'), moreFlags(3), staleMark(9 * 3600), ...[3600, -3600, 1800].map(clockMark),
  ...(['calm', 'not-worth-it', 'too-late'] as const).map(idleWords), ...Object.values(VERDICT_TAGS), ...['demo', 'file', 'open-meteo', 'met-norway'].flatMap(pictureAttribution),
  ...VERDICTS.flatMap((verdict) => [true, false].map((isPicked) => verdictLine({ ...crop!, verdict, isPicked }, 'kale'))),
  ...FLAGS.map((flag) => flagWords(flag, '16:40', 'C')),
  ...lines.flatMap((line) => [crop, null].map((some) => lineName(line, some, { crop: 'kale', bed: 'north' }))),
  ...(['harm', 'kill'] as const).flatMap((does) => [true, false].map((isFarBelow) => limitWords({ cropName: 'kale', does, tempC: -5.5, isFarBelow }, 'F'))),
];

describe('the words of the picture', () => {
  it.each(SAID)('"%s" is whole and in plain characters', (words) => {
    expect(outsideGsm(words)).toEqual([]);
    expect(words).not.toMatch(/undefined|null|NaN|\[object|Infinity/u);
    expect(words.trim()).toBe(words);
    expect(words).not.toBe('');
  });

  it('each thing to do has words of its own, and begins with its time', () => {
    const words = FLAGS.map((flag) => flagWords(flag, '16:40', 'C'));
    expect(new Set(words).size).toBe(FLAGS.length);
    for (const text of words) expect(text).toMatch(/^(?:by|from) 16:40: /u);
  });

  it('chances are counts of nights, never percentages', () => {
    for (const words of SAID) expect(words).not.toContain('%');
    expect(verdictLine({ ...crop!, verdict: 'at-risk', damageProbability: 0.42 }, 'kale')).toContain('4 in 10 nights');
    expect(verdictLine({ ...crop!, verdict: 'likely-lost', lossProbability: 0.97 }, 'kale')).toContain('9+ in 10 nights');
  });
});
