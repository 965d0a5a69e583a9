import { describe, expect, it } from 'vitest';
import { CROP_WORDS } from '../../../bot/conversation.js';
import { readMessage, type Heard } from '../../../bot/language/message.js';
import { toleranceAnswer, tolerancesIn, worthsIn, type ToleranceSaid } from '../../../bot/language/tolerance.js';
import { understand } from '../../../bot/language/understand.js';
import { instantS, ZONE } from './phrase.js';

const heard = (text: string): Heard => ({ text, atS: instantS('evening'), zone: ZONE, units: 'F', crops: CROP_WORDS });

const saidIn = (text: string): readonly ToleranceSaid[] => tolerancesIn(heard(text)).map(({ said }) => said);

const trip = (said: 'easy' | 'annoying' | 'awful'): ToleranceSaid => ({ about: 'trip', trip: said });
const worth = (value: number, ...crops: string[]): ToleranceSaid => ({ about: 'worth', worth: value, crops });
const minutes = (value: number, ...crops: string[]): ToleranceSaid => ({ about: 'minutes', minutes: value, crops });
const step = (by: 1 | -1): ToleranceSaid => ({ about: 'careful', step: by });
const trips = (value: number): ToleranceSaid => ({ about: 'trips', trips: value });

const SAID: readonly (readonly [string, ToleranceSaid])[] = [
  ['I hate going out at night', trip('awful')], ['the trip is awful', trip('awful')], ["I really don't like going out in the snow", trip('annoying')], ["it's an annoying trip", trip('annoying')],
  ['getting out there is a pain', trip('annoying')], ["I don't mind going out", trip('easy')], ['going out is easy for me', trip('easy')], ['the trip is no problem', trip('easy')], ['I dread going out after dark', trip('awful')],
  ["I'd rather go out ten times for nothing than lose the lettuce", trips(10)], ['one saved bed is worth 8 trips', trips(8)], ['20 needless trips are fine', trips(20)], ['10 trips for a saved bed', trips(10)],
  ['be more careful', step(1)], ['be careful', step(1)], ['Can you be more careful?', step(1)], ['better safe than sorry', step(1)], ['call me more often', step(1)],
  ['be less careful', step(-1)], ['too many calls', step(-1)], ['too many false alarms lately', step(-1)], ['you call me out too often', step(-1)], ["you're calling me out for nothing", step(-1)], ["don't call me out unless you're sure", step(-1)], ['could you call me out less often?', step(-1)],
  ['never lose the lettuce', { about: 'careful', careful: 'never-lose-it' }], ["I can't afford to lose the tomatoes", { about: 'careful', careful: 'never-lose-it' }], ["I'm relaxed about frost", { about: 'careful', careful: 'relaxed' }],
  ['the kale is worth 60', worth(60, 'kale')], ['the lettuce is worth $80', worth(80, 'lettuce')], ['losing the kale would cost me 60 dollars', worth(60, 'kale')], ['the lettuce in the south bed is worth 80', worth(80, 'lettuce')], ['the north bed is worth 120 euros', worth(120)],
  ['The spinach is worth about 40 to me', worth(40, 'spinach')], ['the kale takes 6 weeks to regrow, 10 a week', worth(60, 'kale')], ['the kale and the lettuce are worth 90', worth(90, 'kale', 'lettuce')],
  ['covering takes me 30 minutes', minutes(30)], ['covering takes 20 min', minutes(20)], ['it takes me 20 minutes to cover the beds', minutes(20)], ['covering the kale takes 10 minutes', minutes(10, 'kale')], ['it takes me half an hour to cover everything', minutes(30)],
  ['my time is worth 25 an hour', { about: 'hour', worth: 25 }], ['ask me', { about: 'ask' }],
];

describe('how readily to call, at any time', () => {
  it.each(SAID)('%s', (text, said) => {
    expect(understand(heard(text)).kind).toBe('settings');
    expect(saidIn(text)).toEqual([said]);
  });

  it('several things in one message', () => {
    expect(saidIn('the kale is worth 60, the lettuce is worth 30')).toEqual([worth(60, 'kale'), worth(30, 'lettuce')]);
    expect(saidIn('the kale is worth $60 and the lettuce $40')).toEqual([worth(60, 'kale'), worth(40, 'lettuce')]);
    expect(understand(heard('the kale is worth 60 and the lettuce 40')).kind).toBe('settings');
    expect(worthsIn(heard('kale 60, lettuce 40')).map(({ said }) => said)).toEqual([worth(60, 'kale'), worth(40, 'lettuce')]);
    expect(saidIn('covered the beds. the kale is worth 60')).toEqual([worth(60, 'kale')]);
    expect(saidIn('covering takes 20 minutes and the kale and the leek are worth 50')).toEqual([minutes(20), worth(50, 'kale', 'leek')]);
  });

  it.each(['is the kale worth 60?', 'be careful tonight', 'the kale is worth a lot', 'is it worth covering?', 'how bad is the frost', 'the kale came through', 'lost the lettuce', 'covered the kale', 'it was 28 inside', 'not tonight', 'call me at 17:00', 'too many messages'])('not: %s', (text) => {
    expect(saidIn(text)).toEqual([]);
  });
});

describe('answers to the questions', () => {
  const answer = (text: string, asked: Parameters<typeof toleranceAnswer>[1]): ReturnType<typeof toleranceAnswer> => toleranceAnswer(readMessage(heard(text)), asked);

  it.each([['60', { worth: 60 }], ['about 60 bucks', { worth: 60 }], ['sixty', { worth: 60 }], ['it would cost me 80', { worth: 80 }], ['6 weeks, 10 a week', { weeks: 6, weekly: 10 }], ['4 weeks of 15', { weeks: 4, weekly: 15 }], ['50 dollars per week for 5 weeks', { weekly: 50, weeks: 5 }], ['6 weeks', { weeks: 6 }]] as const)('worth: %s', (text, is) => {
    expect(answer(text, 'worth')).toEqual(is);
  });

  it.each([['annoying, 20 minutes', { trip: 'annoying', minutes: 20 }], ['awful, half an hour', { trip: 'awful', minutes: 30 }], ['easy', { trip: 'easy' }], ['not too bad, 20 min', { trip: 'easy', minutes: 20 }], ['it is a pain', { trip: 'annoying' }], ['15', { minutes: 15 }]] as const)('the trip: %s', (text, is) => {
    expect(answer(text, 'trip')).toEqual(is);
  });

  it.each([['10', 10], ['ten', 10], ['about 8', 8], ['5 trips', 5]] as const)('trips: %s', (text, count) => {
    expect(answer(text, 'trips')).toEqual({ trips: count });
  });

  it.each([['relaxed', 'relaxed'], ['careful', 'careful'], ['never lose it', 'never-lose-it']] as const)('trips, in a word: %s', (text, careful) => {
    expect(answer(text, 'trips')).toEqual({ careful });
  });

  it.each(['28F inside', '-2', 'low was 31', 'covered the beds', 'why?', 'will the kale survive tonight'])('none of them: %s', (text) => {
    for (const asked of ['worth', 'weekly', 'trip', 'trips'] as const) expect(answer(text, asked)).toBeNull();
  });
});
