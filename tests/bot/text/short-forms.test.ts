import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { TOPICS, type Detail } from '../../../bot/features/describe/state.js';
import type { Week } from '../../../bot/features/outlook/week.js';
import { actionSentence, morningSentence } from '../../../bot/text/action-text.js';
import { advisoryText, cropLine } from '../../../bot/text/advisory-text.js';
import { cautionText } from '../../../bot/text/caution-text.js';
import { CHAT_WORDS } from '../../../bot/text/chat-words.js';
import { deedsKept, planLeft } from '../../../bot/text/deed-text.js';
import { questionText } from '../../../bot/text/describe-text.js';
import { markCounted, markNoted } from '../../../bot/text/mark-text.js';
import { morningText, outcomeQuestion, reminderText } from '../../../bot/text/morning-text.js';
import { outcomeKept } from '../../../bot/text/outcome-text.js';
import { weekText } from '../../../bot/text/outlook-text.js';
import { readBack, readingQuestion } from '../../../bot/text/reading-text.js';
import { reasonSentence } from '../../../bot/text/reason-text.js';
import { askBack, NO_WEATHER } from '../../../bot/text/reply-text.js';
import { settingsText } from '../../../bot/text/settings-text.js';
import { shortAdvisory } from '../../../bot/text/short-advisory.js';
import { shortForm } from '../../../bot/text/short-form.js';
import { shortWeek } from '../../../bot/text/short-week.js';
import { PRICE_OF_CALLS, TOLERANCE_ASKS, TOLERANCE_MOVED, TOLERANCE_NOTED, TOLERANCE_REFUSED, toleranceLines, toleranceNoted } from '../../../bot/text/tolerance-text.js';
import { ACTIONS, ADVISORY, CAUTIONS, CROPS, MORNING, REASONS } from './invented-advisory.js';
import { outsideGsm } from './gsm.js';

const UNITS = ['C', 'F'] as const;
const WORDS = { units: 'C', dayName: 'Wed 25 Nov', cropName: (id: string): string => id } as const;

/** Places that a text message needs, 3GPP TS 23.038 section 6.2.1: a character of the extension table takes two. */
const places = (text: string): number => [...text].reduce((sum, character) => sum + ('\f^{}\\[~]|€'.includes(character) ? 2 : 1), 0);
const plain = (text: string): string => text.replace(/[\s.:-]+/gu, ' ').trim();

/** One message that says the beginning of the long form, in whole sentences or marked as cut. */
function expectShort(text: string): void {
  const short = shortForm({ text });
  expect(places(short), short).toBeLessThanOrEqual(160);
  expect(outsideGsm(short), short).toEqual([]);
  expect(short).not.toMatch(/\n|undefined|null/u);
  expect(short, text).toMatch(/(?:[.!?:]["')]?|")$/u);
  const cut = short.endsWith('...');
  expect(plain(text).startsWith(plain(cut ? short.slice(0, -3) : short)) || plain(text).includes(plain(short.split(/(?<=[.!?]) /u)[0]!)), `${short}\n${text}`).toBe(true);
}

/** Every text that a module of the text room exports as it stands, however deep. */
function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return /[a-z] [a-z]/iu.test(value) ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}
const ROOM = new URL('../../../bot/text/', import.meta.url);
const MODULES = await Promise.all(readdirSync(ROOM).filter((name) => name.endsWith('.ts')).map(async (name) => [name, textsIn({ ...((await import(new URL(name, ROOM).href)) as object) })] as const));

const DETAILS: readonly Detail[] = ['all', 'choice', 'height', 'height-shape', 'shape', 'side', 'plain-unit', 'likely-height', 'count', 'weight', 'each', 'amount', 'length', 'airflow', 'battery', 'volume', 'started', 'fuel', 'flue', 'power', 'candles', 'safety', 'hardiness', 'which-bed', 'hang', 'area', 'depth', 'curtain-kind', 'glazed'];
const WEXBY = { name: 'Wexby', region: 'Scotland', country: 'United Kingdom', countryCode: 'GB', latitude: 57.2, longitude: -3.8 };
const asking = { primary: 'ft', temperatureUnits: 'F', strangeCrop: 'minutina', beds: ['the north bed', 'the south bed'], places: [WEXBY, WEXBY], plainSize: [20, 48], likelyHeightM: 3, flame: 'flame-unvented', layersAre: null } as const;

const READ = { tempC: -5.6, statistic: 'low', judged: 'open', thermometer: { place: 'inside', name: 'the long shed thermometer' }, night: 'Tuesday', clock: '07:10', forecastC: -2 } as const;
const CHOICES = [{ judged: 'good', tempC: -2, meant: { value: -2, unit: 'C' } }, { judged: 'good', tempC: 22 }, { judged: 'sunlit', tempC: 22 }] as const;

const TOLERANCE = { trips: 10, trip: 'awful', coverMinutes: 26, hourWorth: 15, crops: [{ crop: 'kale', worth: 60, isGiven: true }, { crop: 'pak choi', worth: 25, isGiven: false }], nights: { left: 2, lost: 1 } } as const;

const TOLD: readonly (readonly [string, readonly string[]])[] = [
  ['actions', Object.values(ACTIONS).flat().map((action) => actionSentence(action, WORDS))],
  ['morning steps', Object.values(MORNING).map(morningSentence)],
  ['morning', UNITS.flatMap((units) => [morningText({ steps: Object.values(MORNING), asks: true, units }), morningText({ steps: [], asks: true, units })])],
  ['reminder and outcome', [reminderText('- Cover the north bed by 16:40.\n- Shut the vents by 16:30.'), outcomeQuestion(['lettuce', 'kale'], 'Tue 24 Nov')]],
  ['cautions', CAUTIONS.map(cautionText)],
  ['reasons', Object.values(REASONS).flat().flatMap((reason) => reasonSentence(reason, WORDS) ?? [])],
  ['crops', CROPS.map((crop) => cropLine(crop, WORDS))],
  ['advisory', UNITS.map((units) => advisoryText(ADVISORY, { ...WORDS, units }))],
  ['questions', TOPICS.flatMap((topic) => DETAILS.map((detail) => questionText({ topic, detail }, asking).text))],
  ['asking back', (['what', 'which-unit', 'which-sign', 'which-number', 'which-stat', 'which-time', 'which-place', 'which-crop', 'which-state', 'which-night', 'which-item', 'which-meaning', 'which-reading', 'done-yet', 'impossible-temperature'] as const).flatMap((ask) => UNITS.map((units) => askBack(ask, 'frob', ['-2C', '+2C'], units)))],
  ['readings', UNITS.flatMap((units) => [...(['good', 'not-reset', 'sunlit'] as const).map((judged) => readBack({ ...READ, judged }, units)), ...(['impossible', 'contradicts', 'unlikely'] as const).map((reason) => readingQuestion({ reading: READ, typed: '22F', reason, isSuggestionLikely: true, choices: CHOICES }, units).text)])],
  ['told', [deedsKept({ done: ['cover', 'vents'], not: ['fan'], beds: ['the north bed'], night: '2026-01-13' }, '2026-01-14'), planLeft(['cover']), outcomeKept({ crop: 'kale', bed: 'the north bed', state: 'marked', night: '2026-01-12' }, { today: '2026-01-14', isRiskiest: true, counts: true }), markCounted('2026-01-13', '2026-01-14'), markNoted('moved the thermometer '.repeat(12).trim(), '2026-01-14', '2026-01-14')]],
  ['settings', [settingsText({ units: 'F', evening: '17:00', eveningToday: '16:10', morning: '08:00', bedtime: '21:30', latitude: 45.1, longitude: -72.2, zone: 'America/Toronto', isPaused: true, tolerance: TOLERANCE })]],
  ['tolerance', [...toleranceLines(TOLERANCE), ...Object.values(TOLERANCE_MOVED), TOLERANCE_ASKS.worth('the kale and the spinach in the north bed'), TOLERANCE_ASKS.trip(true), TOLERANCE_ASKS.trip(false), toleranceNoted([TOLERANCE_NOTED.step(8, 12, false), PRICE_OF_CALLS]), toleranceNoted([TOLERANCE_NOTED.trips(5), TOLERANCE_NOTED.bound(6, 5), TOLERANCE_NOTED.counted(6, 12)]), ...[TOLERANCE_NOTED.most(45), TOLERANCE_NOTED.least(8), TOLERANCE_NOTED.same(12), TOLERANCE_REFUSED.tooLong(180), TOLERANCE_ASKS.trips({ trips: 12, named: { relaxed: 8, normal: 12, careful: 23, 'never-lose-it': 45 } })], ...(['easy', 'annoying', 'awful'] as const).map((trip) => toleranceNoted([TOLERANCE_NOTED.trip(trip), TOLERANCE_NOTED.minutes(20, ['the north bed'])])), toleranceNoted([TOLERANCE_NOTED.worth(120, ['the kale', 'the lettuce'], 30)]), toleranceNoted([TOLERANCE_NOTED.hour(25), TOLERANCE_NOTED.trips(1)])]],
  ['chat', [CHAT_WORDS.cannotRead('voice message'), CHAT_WORDS.invite('abcd2345'), CHAT_WORDS.joined('the long greenhouse')]],
];

describe('a short form', () => {
  it.each(MODULES.filter(([, texts]) => texts.length > 0))('of every fixed text in %s', (_name, texts) => {
    for (const text of texts) expectShort(text);
  });

  it('is looked for in many', () => {
    expect(MODULES.flatMap(([, texts]) => texts).length).toBeGreaterThan(50);
  });

  it.each(TOLD)('of %s', (_name, texts) => {
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expectShort(text);
  });

  it('holds whole sentences, and what stands above a list goes with its first line', () => {
    expect(shortForm({ text: 'Noted: 28F inside. Wrong? Say "undo".' })).toBe('Noted: 28F inside. Wrong? Say "undo".');
    expect(shortForm({ text: 'Do\n- Cover the bed by 16:40.\n- Shut the vents.' })).toBe('Do: Cover the bed by 16:40. Shut the vents.');
    expect(shortForm({ text: `First. A ${'long second '.repeat(14)}.` })).toBe('First.');
  });

  it('of a night without weather keeps what to do', () => {
    expect(shortForm({ text: NO_WEATHER })).toContain('cover what frost would hurt.');
  });

  it('of one endless sentence ends where a clause does, and says that it is cut', () => {
    const short = shortForm({ text: `${'one clause of this, '.repeat(12)}the end.` });
    expect(short).toMatch(/one clause of this\.\.\.$/u);
    expect(short.length).toBeGreaterThan(100);
  });

  it('counts brackets and the like twice', () => {
    expect(places(shortForm({ text: `${'[a] '.repeat(40)}end.` }))).toBeLessThanOrEqual(160);
  });
});

describe('the evening in one message', () => {
  const cover = ACTIONS.cover[0]!;
  const evening = (actions: typeof ADVISORY.plan.actions, more: Partial<typeof ADVISORY> = {}): string => shortAdvisory({ ...ADVISORY, reasons: [], cautions: [], plan: { ...ADVISORY.plan, actions }, ...more }, WORDS);

  it('begins with the work and its time, then the low with its range, the worst crop, and how to answer', () => {
    expect(evening([cover])).toBe(`${actionSentence(cover, WORDS)} Inside -1C (-2.5 to 0.5) at 06:10. Kale: lost on 7 in 10 nights like this. Reply DONE or SKIP.`);
  });

  it('with nothing to do says so first', () => {
    expect(evening([], { crops: CROPS.slice(0, 1) })).toBe('Nothing to do tonight. Inside -1C (-2.5 to 0.5) at 06:10. Crops safe.');
  });

  it('never hides an old forecast, and a flame goes with its caution', () => {
    expect(evening([cover], { reasons: REASONS['stale-weather'] })).toContain('OLD FORECAST.');
    const heater = ACTIONS.heater[0]!;
    expect(evening([heater], { cautions: [{ code: 'flame-vented' }] })).toContain('carbon monoxide alarm');
    // One that burns already is in no plan.
    expect(evening([], { cautions: [{ code: 'flame-unvented' }] })).toContain('carbon monoxide alarm');
  });

  it('counts the work that has no room', () => {
    const short = evening(Array.from({ length: 9 }, (_, n) => ({ ...cover, target: `the ${'very '.repeat(4)}long bed ${n}`, by: `2026-11-25T1${n}:00:00-05:00` })));
    expect(short).toMatch(/\d more jobs: ask "tonight"\./u);
    expect(places(short)).toBeLessThanOrEqual(160);
  });

  it.each(UNITS)('fits and is plain with all that there can be, in %s', (units) => {
    const short = shortAdvisory(ADVISORY, { ...WORDS, units });
    expect(places(short)).toBeLessThanOrEqual(160);
    expect(outsideGsm(short)).toEqual([]);
    expect(shortForm({ text: advisoryText(ADVISORY, { ...WORDS, units }), short })).toBe(short);
  });
});

describe('the week in one message', () => {
  const low = (q50: number) => ({ q10: q50 - 2, q50, q90: q50 + 2 });
  const verdict = { verdict: 'at-risk', damageProbability: 0.4 } as const;
  const week: Week = {
    greenhouse: 'the greenhouse',
    weather: { source: 'demo', stale: true },
    spell: { from: '2026-11-25', fromDay: 'Wed 25 Nov', nights: 3, worst: '2026-11-26', worstDay: 'Thu 26 Nov', stores: [], prepare: [] },
    nights: ['Wed 25 Nov', 'Thu 26 Nov', 'Fri 27 Nov', 'Sat 28 Nov', 'Sun 29 Nov', 'Mon 30 Nov', 'Tue 1 Dec'].map((day, n) => ({ night: `2026-11-${25 + n}`, day, outside: low(-12 - n), inside: low(-5.5 - n), crops: n < 3 ? [{ crop: 'kale', asked: 'kale', bed: 'north', usual: verdict, covered: null }] : [] })),
  };

  it('tells the spell, then the lows with a mark where a crop is at risk', () => {
    const short = shortWeek(week, 'C');
    expect(short).toMatch(/^Cold spell: 3 nights from Wed 25 Nov, worst Thu 26 Nov\. OLD FORECAST\. Lows inside: Wed -5\.5C!, Thu -6\.5C!/u);
    expect(places(short)).toBeLessThanOrEqual(160);
    expectShort(weekText(week, 'C'));
  });

  it('with no night to tell of says so', () => {
    expect(shortWeek({ ...week, nights: [] }, 'C')).toBe('The forecast does not reach the next night.');
  });
});
