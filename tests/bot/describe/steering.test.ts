import { describe, expect, it } from 'vitest';
import { readSignal } from '../../../bot/language/house/signals.js';
import { readCoordinates } from '../../../bot/language/house/read-place.js';
import { plainText } from '../../../bot/language/plain-text.js';

describe('words that steer', () => {
  it.each([
    ['skip', 'skip'], ['Skip this one', 'skip'], ['pass please', 'skip'], ["I don't know", 'unknown'], ['not sure', 'unknown'], ['idk', 'unknown'],
    ['back', 'back'], ['go back please', 'back'], ['later', 'later'], ['stop', 'later'], ["I'll do it later", 'later'],
    ['done', 'done'], ['skip the rest', 'done'], ['skip them all', 'done'], ["ok that's all", 'done'], ['summary', 'summary'], ['what do you have?', 'summary'],
    ['help', 'help'], ['why do you need that?', 'help'], ['?', 'help'], ['yes', 'yes'], ['Yep!', 'yes'], ['I have read it', 'yes'], ['no', 'no'], ['none at all', 'no'], ["we don't have any", 'no'],
    ['start over', 'restart'], ['hello', 'start'],
  ] as const)('%s', (says, kind) => {
    expect(readSignal(says)?.kind).toBe(kind);
  });

  it.each([['change 3', 3], ['edit line 12', 12], ['3 is wrong', 3], ['#2 is wrong', 2]] as const)('%s', (says, line) => {
    expect(readSignal(says)).toEqual({ kind: 'line', line });
  });

  it.each([['2', 2], ['the second one', 2], ['number 3', 3], ['1.', 1]] as const)('%s is a choice', (says, number) => {
    expect(readSignal(says)).toEqual({ kind: 'number', number });
  });

  it.each(['two layers', 'no heater', 'yes, medium row cover', 'stop the fan at night', 'kale', 'done with tomatoes', '20 by 48', 'back bed kale'])('%s steers nothing', (says) => {
    expect(readSignal(says)).toBeNull();
  });
});

describe('coordinates', () => {
  const TENTH_OF_A_SECOND_DEG = 0.1 / 3600;
  it.each([
    ['45.10, -72.2', 45.1, -72.2],
    ['45.10 -72.2', 45.1, -72.2],
    ['45,10; -72,20', 45.1, -72.2],
    ['45 06 N 72 12 W', 45.1, -72.2],
    ['45°06\'N 72°12\'W', 45.1, -72.2],
    ['45° 6\' 36" N, 72° 12\' 0" W', 45.11, -72.2],
    ['N45.1 W72.2', 45.1, -72.2],
    ['45.1N, 72.2W', 45.1, -72.2],
    ['45.1 north, 72.2 west', 45.1, -72.2],
    ['lat 45.1 lon -72.2', 45.1, -72.2],
    ['33.9 S 18.4 E', -33.9, 18.4],
    ['https://maps.example/@45.1,-72.2,15z', 45.1, -72.2],
  ] as const)('%s', (says, latitude, longitude) => {
    const fact = readCoordinates(plainText(says), true)?.fact;
    expect(fact?.about).toBe('coordinates');
    if (fact?.about !== 'coordinates') return;
    expect(Math.abs(fact.latitude - latitude)).toBeLessThan(TENTH_OF_A_SECOND_DEG);
    expect(Math.abs(fact.longitude - longitude)).toBeLessThan(TENTH_OF_A_SECOND_DEG);
  });

  it.each(['20 by 48', '20, 48', '6.5 x 12.5 m', '4 drums, 55 gallons', '20x48 9 ft'])('%s are none', (says) => {
    expect(readCoordinates(plainText(says), false)).toBeNull();
  });
});
