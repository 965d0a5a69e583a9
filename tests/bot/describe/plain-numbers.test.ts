import { describe, expect, it } from 'vitest';
import { makesNoHouse, plainUnit } from '../../../bot/features/describe/size.js';
import type { SizeDraft } from '../../../bot/features/describe/state.js';
import { habitsOfCountry, habitsOfZone } from '../../../bot/features/describe/units-of-place.js';
import { q } from './house-phrase.js';

const draft = (width: string, length: string, height?: string): SizeDraft => ({ width: q(width), length: q(length), ...(height === undefined ? {} : { height: q(height) }) }) as SizeDraft;

describe('plain numbers of a size', () => {
  it.each([
    ['20 by 48 in the United States', draft('20', '48'), 'ft', { unit: 'ft' }],
    ['20 by 48 in France: 20 m wide is no hoop house', draft('20', '48'), 'm', { asks: true }],
    ['6 by 15 in France', draft('6', '15'), 'm', { unit: 'm' }],
    ['6 by 15 in Canada could be either', draft('6', '15'), 'either', { asks: true }],
    ['14 by 30 in Britain: 14 m wide is no hoop house', draft('14', '30'), 'either', { unit: 'ft' }],
    ['3 by 5 in the United States: 3 ft wide is no house', draft('3', '5'), 'ft', { asks: true }],
    ['20 by 48 with 9 ft tall, anywhere', draft('20', '48', '9 ft'), 'm', { unit: 'ft' }],
    ['6 m by 15', draft('6 m', '15'), 'ft', { unit: 'm' }],
    ['20 by 48 before the place is known', draft('20', '48'), null, null],
    ['20 ft by 48 ft anywhere', draft('20 ft', '48 ft'), 'm', { unit: 'ft' }],
  ] as const)('%s', (_name, size, habit, is) => {
    expect(plainUnit(size, habit)).toEqual(is);
  });

  it('stay in what the grower answered', () => {
    expect(plainUnit({ ...draft('20', '48'), plain: 'ft' }, 'm')).toEqual({ unit: 'ft' });
  });

  it('that make a house in neither unit are told at once', () => {
    expect(makesNoHouse(draft('500', '800'))).toBe(true);
    expect(makesNoHouse(draft('20', '48', '90'))).toBe(true);
    expect(makesNoHouse(draft('20', '48'))).toBe(false);
  });
});

describe('what a place measures in', () => {
  it.each([
    ['US', { lengths: 'ft', temperature: 'F', gallons: 'us' }],
    ['FR', { lengths: 'm', temperature: 'C', gallons: 'us' }],
    ['GB', { lengths: 'either', temperature: 'C', gallons: 'imperial' }],
    ['CA', { lengths: 'either', temperature: 'C', gallons: 'us' }],
  ] as const)('%s', (country, habits) => {
    expect(habitsOfCountry(country)).toEqual(habits);
  });

  it.each([
    ['America/New_York', 'US'],
    ['America/Indiana/Knox', 'US'],
    ['Pacific/Honolulu', 'US'],
    ['America/Toronto', 'CA'],
    ['America/Mexico_City', 'MX'],
    ['Europe/London', 'GB'],
    ['Europe/Paris', 'FR'],
    ['Asia/Tokyo', 'JP'],
  ] as const)('is the same by the zone %s as by the country %s', (zone, country) => {
    expect(habitsOfZone(zone)).toEqual(habitsOfCountry(country));
  });
});
