/**
 * Phrases written before the rules and never used to tune them: the honest score. When a rule is changed because of one of these,
 * move the phrase to phrases.ts and write a new one here.
 */
import type { Phrase } from './growers.js';

export const HELD_OUT: readonly Phrase[] = [
  // readings, °F
  ['got down to 26 in the tunnel', 'F_MORNING', { kind: 'reading', readings: [{ c: -3.33, stat: 'low', place: 'inside' }] }],
  ['thermometer says 31.5 right now', 'F_EVENING', { kind: 'reading', readings: [{ c: -0.28, stat: 'now' }] }],
  ['24 outside, 30 in the greenhouse, 34 under the fabric', 'F_MORNING', {
    kind: 'reading',
    readings: [{ c: -4.44, place: 'outside' }, { c: -1.11, place: 'inside' }, { c: 1.11, place: 'cover' }],
  }],
  ['overnight min was 19F outdoors', 'F_MORNING', { kind: 'reading', readings: [{ c: -7.22, stat: 'low', place: 'outside' }] }],
  ['hit 71 yesterday in there, low 27', 'F_MORNING', { kind: 'reading' }],
  ['27 @ 5:15am', 'F_MORNING', { kind: 'reading', readings: [{ c: -2.78, stat: 'now', at: '2026-01-14T05:15:00.000-05:00' }] }],
  ['soil temp 38', 'F_MORNING', { kind: 'reading', readings: [{ c: 3.33, place: 'soil' }] }],
  ['six below outside this morning', 'F_MORNING', { kind: 'reading', readings: [{ c: -21.11, stat: 'low', place: 'outside' }] }],
  ['min/max 29/58', 'F_MORNING', { kind: 'reading', readings: [{ c: -1.67, stat: 'low' }, { c: 14.44, stat: 'high' }] }],
  ['water in the barrels is 41', 'F_EVENING', { kind: 'reading', readings: [{ c: 5, place: 'water' }] }],
  // readings, °C
  ['minus 4 outside and +1 inside', 'C_MORNING', { kind: 'reading', readings: [{ c: -4, place: 'outside' }, { c: 1, place: 'inside' }] }],
  ['it went to −1,5 under the fleece', 'C_MORNING', { kind: 'reading', readings: [{ c: -1.5, stat: 'low', place: 'cover' }] }],
  ['0.5 at 3am', 'C_MORNING', { kind: 'reading', readings: [{ c: 0.5, stat: 'now', at: '2026-01-14T03:00:00.000+01:00' }] }],
  ['lowest -3.2', 'C_MORNING', { kind: 'reading', readings: [{ c: -3.2, stat: 'low' }] }],
  ['2 degrees of frost outside', 'C_MORNING', { kind: 'reading', readings: [{ c: -2, place: 'outside' }] }],
  ['-1', 'C_EVENING', { kind: 'reading', readings: [{ c: -1, stat: 'now' }] }],
  // corrections
  ['oops meant -3', 'C_MORNING', { kind: 'fix', c: -3 }],
  ['forget that last one', 'F_MORNING', { kind: 'fix' }],
  ['that should have been 21 not 12', 'F_MORNING', { kind: 'fix', c: -6.11 }],
  // crops
  ['are the beets going to be alright tonight', 'F_EVENING', { kind: 'crop', crop: 'beet', night: '2026-01-14' }],
  ['can spinach take it tomorrow', 'F_EVENING', { kind: 'crop', crop: 'spinach', night: '2026-01-15' }],
  ['will i lose my tomatos', 'F_EVENING', { kind: 'crop', crop: 'tomato', night: '2026-01-14' }],
  ['romaine and bok choy ok friday night?', 'F_EVENING', { kind: 'crop', crops: ['lettuce_romaine', 'pak_choi'], night: '2026-01-16' }],
  ['wil the lettcue make it thru the night', 'F_EVENING', { kind: 'crop', crop: 'lettuce', night: '2026-01-14' }],
  ['is it too cold for basil tonight', 'C_EVENING', { kind: 'crop', crop: 'basil', night: '2026-01-14' }],
  ['will the dragonfruit survive tonight', 'C_EVENING', { kind: 'unclear', asks: { code: 'which-crop', word: 'dragonfruit' } }],
  // advice and outlook
  ['do i need to cover anything tonight', 'F_EVENING', { kind: 'advice', topic: 'cover' }],
  ['what do you recommend', 'F_EVENING', { kind: 'advice' }],
  ['is it worth running the fan', 'F_EVENING', { kind: 'advice', topic: 'fan' }],
  ['when should i shut the vents', 'F_EVENING', { kind: 'advice', topic: 'vents' }],
  ['whats the low going to be in the tunnel', 'F_EVENING', { kind: 'outlook', place: 'inside' }],
  ['will it freeze tomorrow night', 'C_EVENING', { kind: 'outlook', night: '2026-01-15' }],
  ['any cold nights coming up', 'C_EVENING', { kind: 'outlook' }],
  ['how does the week look', 'C_EVENING', { kind: 'outlook', span: 'week' }],
  // what was done
  ['all covered up and vents closed', 'F_EVENING', { kind: 'did', done: ['cover', 'vents'] }],
  ['turned the heater on but left the curtain open', 'F_EVENING', { kind: 'did', done: ['heater'], not: ['curtain'] }],
  ["couldn't get the fleece on, too windy", 'C_EVENING', { kind: 'did', not: ['cover'] }],
  ['picked the tomatoes', 'C_EVENING', { kind: 'did', done: ['harvest'] }],
  ['yep all done', 'C_EVENING', { kind: 'did' }],
  // other kinds
  ['what if i put in 4 water barrels', 'F_EVENING', { kind: 'suppose', items: ['water'] }],
  ['lettuce got burned at the edges', 'F_MORNING', { kind: 'outcome', crop: 'lettuce', state: 'marked' }],
  ['the power went out', 'F_EVENING', { kind: 'condition', items: ['power-out'], on: true }],
  ['we put a second sheet of plastic on the house today', 'F_EVENING', { kind: 'mark', items: ['layer'] }],
  ['have the stones made any difference', 'F_MORNING', { kind: 'effect', items: ['stones'] }],
  ['how come you said cover', 'F_MORNING', { kind: 'why' }],
  ['how accurate have you been', 'F_MORNING', { kind: 'record' }],
  ['please stop texting me', 'F_MORNING', { kind: 'stop' }],
  ['how does this work', 'F_MORNING', { kind: 'help' }],
  ['switch to celsius', 'F_MORNING', { kind: 'settings' }],
  ['ta very much', 'C_MORNING', { kind: 'chat' }],
  // things that must be asked
  ['150', 'F_MORNING', { kind: 'unclear' }],
  ['27', 'C_MORNING', { kind: 'unclear' }],
  ['28 or maybe 29', 'F_MORNING', { kind: 'unclear' }],
];
