import type { Advisory, AdvisoryAction, AdvisoryCrop, AdvisoryMorning, AdvisoryPlace, AdvisoryReason, CautionCode } from '../../../bot/features/evening/advisory.js';
import type { WeatherFailure, WeatherNote } from '../../../bot/ports.js';
import type { ChoiceReason } from '../../../engine/plan/choose.js';

/** One example of everything that an advisory can say; a code that is added and not listed here does not compile. All is invented. */
const at = (clock: string): string => `2026-11-25T${clock}:00-05:00`;

export const ACTIONS: Readonly<Record<AdvisoryAction['action'], readonly AdvisoryAction[]>> = {
  cover: [{ action: 'cover', target: 'north', by: at('16:40') }],
  vents: [{ action: 'vents', target: 'shut', by: at('15:10') }],
  curtain: [{ action: 'curtain', target: 'draw', by: at('16:20') }],
  'tube-fan': [{ action: 'tube-fan', run: true, from: at('17:00'), until: at('07:45') }, { action: 'tube-fan', run: false, from: at('17:00'), until: at('07:45') }],
  fan: ['stones', 'compost', 'air'].map((target) => ({ action: 'fan', target, run: true, from: at('02:00'), until: at('07:45') })),
  heater: [{ action: 'heater', setC: 2, from: at('17:00'), until: at('08:15') }, { action: 'heater', setC: null, from: at('17:00'), until: at('08:15') }],
  harvest: [{ action: 'harvest', target: 'south', crop: 'lettuce', by: at('16:40') }],
};

export const MORNING: Readonly<Record<AdvisoryMorning['action'], AdvisoryMorning>> = {
  uncover: { action: 'uncover', target: 'north', from: at('09:20') },
  vents: { action: 'vents', target: 'open', from: at('10:30') },
  curtain: { action: 'curtain', target: 'open', from: at('08:50') },
  'clear-snow': { action: 'clear-snow', from: at('07:10') },
  harvest: { action: 'harvest', target: 'south', from: at('09:40') },
};

const CHOICES: Readonly<Record<ChoiceReason, true>> = { 'nothing-at-risk': true, 'gain-too-small': true, 'best-is-nothing': true, 'gain-worth-it': true, 'kept-as-issued': true, switched: true, 'stand-down': true };
export const CHOICE_REASONS = Object.keys(CHOICES) as readonly ChoiceReason[];

const FAILURES: Readonly<Record<WeatherFailure, true>> = { network: true, 'time-out': true, 'cut-off': true, 'not-json': true, server: true, refused: true, limited: true, resting: true, unusable: true };

/** Notes that have a sentence of their own elsewhere. */
type NoteCode = Exclude<WeatherNote['code'], 'stale' | 'second-service' | 'invented-demo'>;
const NOTES: Readonly<Record<NoteCode, string>> = {
  'coarse-steps': '20 h ahead, then in steps of 6 h', 'short-horizon': '20 h ahead', 'short-history': '70 h back', 'filled-gap': 'cloud cover, 2 h', 'second-model-used': 'wind speed', 'missing-variable': 'snowfall: none is assumed', 'no-ensemble': 'it did not answer', 'no-members': '40 of 51 runs can be used',
};

export const REASONS: Readonly<Record<AdvisoryReason['code'], readonly AdvisoryReason[]>> = {
  'counts-on': [
    { code: 'counts-on', coveredBeds: ['north', 'south'], heaterSetC: null, heaterOn: false, curtainDrawn: false, fans: [] },
    { code: 'counts-on', coveredBeds: [], heaterSetC: 2, heaterOn: true, curtainDrawn: true, fans: ['tubes', 'air'] },
    { code: 'counts-on', coveredBeds: ['north'], heaterSetC: null, heaterOn: true, curtainDrawn: false, fans: [] },
  ],
  trouble: [{ code: 'trouble', items: ['snow', 'power-out', 'blower-off', 'opening', 'fans-dead', 'fuel-out'] }],
  fan: (['tubes', 'stones', 'compost', 'air'] as const).flatMap((fan) => (['run', 'leave-as-it-is', 'stop', 'stands-still', 'no-current'] as const).flatMap((advice) => [0, 1.4].map((worthC) => ({ code: 'fan' as const, fan, advice, worthC, batteryShort: worthC > 0 })))),
  'burns-out': [{ code: 'burns-out', hours: 4, at: at('01:30') }],
  'if-power-fails': [{ code: 'if-power-fails', stops: ['heater', 'fan'], insideLowC: -6.5, crops: [{ asked: 'lettuce', damageProbability: 0.62 }] }, { code: 'if-power-fails', stops: ['blower'], insideLowC: -3, crops: [] }],
  'clear-and-calm': [{ code: 'clear-and-calm' }],
  'cloudy-or-windy': [{ code: 'cloudy-or-windy' }],
  'partly-clear': [{ code: 'partly-clear' }],
  heat: [{ code: 'heat', lostW: 3560, to: { sky: 0.71, outside: 0.22, gaps: 0.07 }, from: { ground: 0.6, water: 0.2, stones: 0, heater: 0.1, compost: 0, outside: 0 }, cloud: 0.1, windMPerS: 1.5, forecastOffC: 2.4 }],
  choice: CHOICE_REASONS.map((why) => ({ code: 'choice', why })),
  'plan-helps': [{ code: 'plan-helps', crop: 'kale', asked: 'kale', bed: 'north', withoutDamageProbability: 0.42, withDamageProbability: 0.004 }],
  'not-needed-if-milder': [{ code: 'not-needed-if-milder', outsideLowC: -2.5 }],
  'not-enough-if-colder': [{ code: 'not-enough-if-colder', outsideLowC: -12, crops: ['kale', 'lettuce'] }],
  'too-late': [{ code: 'too-late', actions: [{ action: 'cover', target: 'north bed' }, { action: 'heater', setC: 2 }] }],
  'class-fallback': [{ code: 'class-fallback', asked: 'moonwort beet', hardinessClass: 'half-hardy' }],
  'not-learned-yet': [{ code: 'not-learned-yet' }, { code: 'not-learned-yet', kept: 3 }],
  learned: [{ code: 'learned', nights: 1 }, { code: 'learned', nights: 14 }],
  'short-history': [{ code: 'short-history', hours: 70 }],
  'ground-guessed': [{ code: 'ground-guessed' }],
  'second-weather': Object.keys(FAILURES).map((failure) => ({ code: 'second-weather', failure: failure as WeatherFailure, cause: 'expected JSON, got text/html' })),
  'stale-weather': [{ code: 'stale-weather', ageHours: 9, cause: 'no answer within 10 s' }],
  'weather-note': Object.entries(NOTES).map(([note, detail]) => ({ code: 'weather-note', note, detail })),
  'demo-weather': [{ code: 'demo-weather' }],
};

const CAUTION_CODES: Readonly<Record<CautionCode, true>> = { 'heater-electric': true, 'fan-electric': true, 'flame-vented': true, 'flame-unvented': true, 'unvented-left-out': true, 'flame-not-advised': true, 'frozen-leaves': true, 'snow-on-film': true, 'not-a-promise': true };
export const CAUTIONS = Object.keys(CAUTION_CODES) as readonly CautionCode[];

const place = (name: AdvisoryPlace['place'], q50: number, bed?: string): AdvisoryPlace => ({ place: name, ...(bed === undefined ? {} : { bed }), lowC: { mean: q50, q10: q50 - 1.5, q50, q90: q50 + 1.5 }, lowAt: at('06:10') });

export const crop = (parts: Partial<AdvisoryCrop> = {}): AdvisoryCrop => ({
  crop: 'kale', asked: 'kale', bed: 'north', damageProbability: 0.42, lossProbability: 0.03, expectedDamage: 0.12, verdict: 'at-risk', damageBeginsC: -6.7, killedC: -15, hardening: 0.4,
  judgedAt: 'leaf', judgedLowC: -6.2, grade: 'published', isClassFallback: false, chill: null, pickedBefore: false, ...parts,
});

const VERDICTS: Readonly<Record<AdvisoryCrop['verdict'], AdvisoryCrop>> = {
  safe: crop({ verdict: 'safe', damageProbability: 0.004, lossProbability: 0 }),
  watch: crop({ verdict: 'watch', damageProbability: 0.2, lossProbability: 0 }),
  'at-risk': crop(),
  'likely-lost': crop({ verdict: 'likely-lost', damageProbability: 0.97, lossProbability: 0.7 }),
};
export const CROPS: readonly AdvisoryCrop[] = [...Object.values(VERDICTS), crop({ pickedBefore: true })];

export const ADVISORY: Omit<Advisory, 'text'> = {
  greenhouse: 'the greenhouse',
  issuedAt: at('15:00'),
  night: '2026-11-25',
  weather: { source: 'demo', issuedAt: at('14:00'), stale: false },
  places: [place('inside', -1), place('outside', -7.5), place('cover', 1.5, 'north'), place('leaf', -2, 'north'), place('soil', 6, 'north'), place('water', 8)],
  crops: CROPS,
  plan: {
    id: 'cover north + heater 2', actions: Object.values(ACTIONS).flat(), effortMinutes: 14, cost: 2.2,
    heater: { kind: 'vented-propane', powerW: 3000, fullPowerHours: 6.5, expectedInsideC: -1.5, energyKwh: 19.5, fuel: 1.7, fuelUnit: 'kg', cost: 3.8, priceIsPlaceholder: true },
  },
  alternatives: [],
  morning: Object.values(MORNING),
  reasons: Object.values(REASONS).flat(),
  cautions: CAUTIONS.map((code) => ({ code })),
};
