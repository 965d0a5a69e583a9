import { describe, expect, it } from 'vitest';
import type { Detail, Topic } from '../../../bot/features/describe/state.js';
import { TOPICS } from '../../../bot/features/describe/state.js';
import type { Problem } from '../../../bot/features/describe/thing.js';
import { problemText } from '../../../bot/text/describe-problem-text.js';
import * as say from '../../../bot/text/describe-text.js';
import { outsideGsm } from '../text/gsm.js';

const DETAILS: Readonly<Record<Topic, readonly Detail[]>> = {
  place: ['all', 'choice'],
  size: ['all', 'height', 'height-shape', 'shape', 'side', 'plain-unit', 'likely-height'],
  layers: ['all', 'count'],
  covers: ['all', 'weight'],
  water: ['all', 'count', 'each', 'amount', 'glazed'],
  soil: ['all'],
  air: ['all', 'length', 'airflow', 'battery', 'area', 'depth', 'curtain-kind'],
  compost: ['all', 'volume', 'started'],
  heater: ['all', 'fuel', 'flue', 'power', 'candles'],
  crops: ['all', 'hardiness', 'which-bed'],
  thermometers: ['all', 'hang'],
  evening: ['all'],
  units: ['all'],
};
const WEXBY = { name: 'Wexby', region: 'Scotland', country: 'United Kingdom', countryCode: 'GB', latitude: 57.2, longitude: -3.8 };
const words = (primary: 'ft' | 'm'): say.QuestionWords => ({ primary, temperatureUnits: primary === 'ft' ? 'F' : 'C', strangeCrop: 'minutina', beds: ['the north bed', 'the south bed'], places: [WEXBY, { ...WEXBY, region: 'Łódź' }], plainSize: [20, 48], likelyHeightM: 3, flame: 'flame-unvented', layersAre: null });
const QUESTIONS = TOPICS.flatMap((topic) => DETAILS[topic].flatMap((detail) => (['ft', 'm'] as const).map((primary) => [`${topic}, ${detail}, ${primary}`, say.questionText({ topic, detail }, words(primary)).text] as const)));

/** Words of a sentence, as a reader counts them; numbers and units included. */
const sentencesOf = (text: string): readonly string[] => text.split(/(?<=[.?!:])\s+|\n/u).filter((sentence) => /[a-z]/iu.test(sentence));
const wordCount = (sentence: string): number => sentence.split(/\s+/u).length;
const MOST_WORDS_ON_AVERAGE = 12;

describe('questions', () => {
  it.each(QUESTIONS)('%s: ask first, in plain characters, with an example or choices', (_name, text) => {
    expect(sentencesOf(text)[0]).toMatch(/[?]$|^(?:Is|Shall|What|How|Which|Do|Does|Where|When|One) .*:$/u);
    expect(outsideGsm(text), text).toEqual([]);
    expect(text).not.toMatch(/undefined|null|NaN/u);
  });

  it('are short on the whole', () => {
    const sentences = QUESTIONS.flatMap(([, text]) => sentencesOf(text));
    expect(sentences.reduce((sum, sentence) => sum + wordCount(sentence), 0) / sentences.length).toBeLessThanOrEqual(MOST_WORDS_ON_AVERAGE);
  });

  it('have a reason each', () => {
    expect(Object.keys(say.WHY).sort()).toEqual([...TOPICS].sort());
    for (const reason of Object.values(say.WHY)) expect(outsideGsm(reason)).toEqual([]);
  });
});

describe('the introduction', () => {
  it('is two sentences: who speaks, and that it is no promise', () => {
    expect(say.INTRODUCTION.split(/(?<=\.)\s/u)).toHaveLength(2);
    expect(say.INTRODUCTION).toMatch(/no promise/u);
  });
});

describe('what was wrong', () => {
  const PROBLEMS: readonly Problem[] = [
    { code: 'layers', count: 7 }, { code: 'unknown-shape', words: 'dome' }, { code: 'no-house' }, { code: 'bad-coordinates' }, { code: 'bad-choice', most: 3 }, { code: 'place-name', town: 'Łódź' },
    { code: 'place-search', town: 'Wexby', failure: 'network' }, { code: 'no-evening', from: '12:00', until: '21:30' },
    { code: 'fault', field: 'size.width', message: 'expected a length from 1 to 60 m, for example 4 or "13 ft"; got "200 ft"' }, { code: 'fault', field: 'somewhere.else', message: 'expected something' },
  ];
  it.each(PROBLEMS.map((problem) => [problem.code, problem] as const))('%s: is told with what is right', (_code, problem) => {
    const text = problemText(problem);
    expect(outsideGsm(text), text).toEqual([]);
    expect(text).toMatch(/example|from 1 to|such as/u);
  });

  it('names the field, the range and what was said', () => {
    expect(problemText({ code: 'fault', field: 'size.width', message: 'expected a length from 1 to 60 m, for example 4 or "13 ft"; got "200 ft"' })).toBe('The width does not fit (200 ft): expected a length from 1 to 60 m. For example "20 ft wide" or "6 m wide".');
  });
});
