import { describe, expect, it } from 'vitest';
import type { AdvisoryReason } from '../../../bot/features/evening/advisory.js';
import { actionSentence, morningSentence } from '../../../bot/text/action-text.js';
import { advisoryText, cropLine } from '../../../bot/text/advisory-text.js';
import { WEATHER_ATTRIBUTION } from '../../../bot/text/attribution.js';
import { cautionText } from '../../../bot/text/caution-text.js';
import { reasonSentence } from '../../../bot/text/reason-text.js';
import { ACTIONS, ADVISORY, CAUTIONS, CHOICE_REASONS, CROPS, MORNING, REASONS } from './invented-advisory.js';
import { DEFAULT_ALPHABET_SIZE, GSM_CHARACTERS, outsideGsm } from './gsm.js';

const UNITS = ['C', 'F'] as const;
const wordsIn = (units: 'C' | 'F') => ({ units, dayName: 'Wed 25 Nov', cropName: (id: string): string => id });

/** Whole, readable and plain: nothing undefined, nothing that would not fit a plain text message. */
function expectPlain(text: string): void {
  expect(outsideGsm(text), text).toEqual([]);
  expect(text).not.toMatch(/undefined|null|NaN|\[object|Infinity|-0[CF]\b/u);
  expect(text.trim()).toBe(text);
  expect(text.length).toBeGreaterThan(0);
}

const expectSentence = (text: string): void => {
  expectPlain(text);
  expect(text).toMatch(/^[A-Z].*[.!?]$/su);
};

describe('plain text message alphabet', () => {
  it('is the default alphabet without its escape, and the extension', () => {
    expect(DEFAULT_ALPHABET_SIZE).toBe(127);
    expect(GSM_CHARACTERS.size).toBe(137);
    expect(outsideGsm('-3C (24 to 29) @ 5 % [x] {y} ~ | \\ ^')).toEqual([]);
    expect(outsideGsm('−3°C – “no” ’ … `')).toEqual(['−', '°', '–', '“', '”', '’', '…', '`']);
  });
});

describe('every action has words', () => {
  it.each(Object.values(ACTIONS).flat().flatMap((action) => UNITS.map((units) => [action.action, units, action] as const)))('%s in %s', (_name, units, action) => {
    expectSentence(actionSentence(action, wordsIn(units)));
  });

  it.each(Object.entries(MORNING))('in the morning: %s', (_name, step) => {
    expectSentence(morningSentence(step));
  });
});

describe('every reason has words', () => {
  const isForGrowers = (reason: AdvisoryReason): boolean => reason.code !== 'weather-note' || reason.note !== 'no-members';
  it.each(Object.entries(REASONS).filter(([code]) => code !== 'choice' && code !== 'heat').flatMap(([code, reasons]) => reasons.filter(isForGrowers).flatMap((reason) => UNITS.map((units) => [code, units, reason] as const))))('%s in %s', (_code, units, reason) => {
    expectSentence(reasonSentence(reason, wordsIn(units))!);
  });

  it.each(REASONS['weather-note'].filter(isForGrowers))('weather note %o begins with its own words and not with its code', (reason) => {
    const sentence = reasonSentence(reason, wordsIn('C'))!;
    if (reason.code === 'weather-note') expect(sentence.startsWith(reason.note)).toBe(false);
  });

  it('what concerns the operator alone has none', () => {
    expect(REASONS['weather-note'].filter((reason) => !isForGrowers(reason)).map((reason) => reasonSentence(reason, wordsIn('C')))).toEqual([null]);
  });

  it('a choice has words, except where the plan speaks for itself', () => {
    const silent = CHOICE_REASONS.filter((why) => reasonSentence({ code: 'choice', why }, wordsIn('C')) === null);
    expect(silent).toEqual(['nothing-at-risk', 'gain-worth-it']);
    for (const why of CHOICE_REASONS) if (!silent.includes(why)) expectSentence(reasonSentence({ code: 'choice', why }, wordsIn('C'))!);
  });

  it('never says that there are no readings when some are kept', () => {
    const [none, some] = REASONS['not-learned-yet'].map((reason) => reasonSentence(reason, wordsIn('C'))!);
    expect(none).toContain('No reading');
    expect(some).not.toContain('No reading');
    expect(some).toContain('Your readings are kept');
  });

  it('the heat account is told only when it is asked for', () => {
    expect(reasonSentence(REASONS.heat[0]!, wordsIn('C'))).toBeNull();
  });

  it('knows what to say of no other choice', () => {
    expect(reasonSentence({ code: 'choice', why: 'a whim' }, wordsIn('C'))).toBeNull();
  });
});

describe('every caution has words', () => {
  it.each(CAUTIONS)('%s', (code) => {
    expectSentence(cautionText(code));
  });

  it('a flame never goes without carbon monoxide, fresh air and getting out', () => {
    for (const code of ['flame-vented', 'flame-unvented'] as const) {
      for (const needed of ['carbon monoxide alarm', 'fresh air', 'never sleep', 'get out', '1 m (3 ft)', 'local codes']) expect(cautionText(code)).toContain(needed);
    }
    expect(cautionText('flame-unvented')).not.toMatch(/seal|shut|close all/iu);
    expect(cautionText('heater-electric')).toContain('GFCI');
  });
});

describe('every verdict has words', () => {
  it.each(CROPS.flatMap((crop) => UNITS.map((units) => [crop.pickedBefore ? 'picked' : crop.verdict, units, crop] as const)))('%s in %s', (_name, units, crop) => {
    const line = cropLine(crop, wordsIn(units));
    expectSentence(line);
    expect(line).not.toMatch(/\d ?%/u);
  });
});

describe('whole advisory', () => {
  it.each(UNITS)('in %s is plain and tells the action before the reasons', (units) => {
    const text = advisoryText(ADVISORY, wordsIn(units));
    expectPlain(text);
    expect(text.split('\n')[0]).toBe('Tonight, Wed 25 Nov: the greenhouse');
    const order = ['Do\n', 'How cold', 'Crops\n', 'In the morning', 'Why, and', 'Take care'].map((title) => text.indexOf(title));
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(order.every((index) => index > 0)).toBe(true);
  });

  it('says only the unit of the grower', () => {
    expect(advisoryText({ ...ADVISORY, reasons: [], cautions: [] }, wordsIn('F'))).not.toMatch(/\dC\b/u);
    expect(advisoryText({ ...ADVISORY, reasons: [], cautions: [] }, wordsIn('C'))).not.toMatch(/\dF\b/u);
  });

  it('with nothing to do says so, and whether that is good news', () => {
    const idle = { ...ADVISORY, reasons: [], plan: { id: 'nothing', actions: [], effortMinutes: 0, cost: 0, heater: null } };
    expect(advisoryText(idle, wordsIn('C'))).toContain('Nothing that you can do tonight is worth the work, but not all crops are safe');
    expect(advisoryText({ ...idle, crops: CROPS.slice(0, 1) }, wordsIn('C'))).toContain('Nothing to do tonight.');
    expect(advisoryText({ ...idle, crops: CROPS.slice(0, 1), reasons: REASONS['counts-on'] }, wordsIn('C'))).toContain('Nothing more to do tonight');
  });

  it('names the weather service in plain characters', () => {
    expectPlain(WEATHER_ATTRIBUTION);
  });
});
