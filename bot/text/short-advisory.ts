import type { Advisory, AdvisoryCrop } from '../features/evening/advisory.js';
import { actionSentence } from './action-text.js';
import { idleSentence, mergedActions, type AdvisoryWords } from './advisory-text.js';
import { inTen } from './chance.js';
import { clockOf } from './local-time.js';
import { fitsSms } from './short-form.js';
import { withRange } from './temperature.js';

const OLD = 'OLD FORECAST.';
const INVENTED = 'INVENTED WEATHER.';
const FLAME = 'Flame: fresh air in, carbon monoxide alarm on.';
const REPLY = 'Reply DONE or SKIP.';
const more = (count: number): string => `${count} more ${count === 1 ? 'job' : 'jobs'}: ask "tonight".`;

/** The evening in one plain text message: what to do and until when, where the forecast is old, how cold, the crop that is worst off. What does not fit is left out from the end, and work that does not fit is counted. */
export function shortAdvisory(advisory: Omit<Advisory, 'text'>, words: Pick<AdvisoryWords, 'units' | 'cropName'>): string {
  const { actions } = advisory.plan;
  const has = (code: string): boolean => advisory.reasons.some((reason) => reason.code === code);
  const origin = [...(has('stale-weather') ? [OLD] : []), ...(has('demo-weather') ? [INVENTED] : [])];
  const work = actions.length === 0 ? [idleSentence(advisory)] : mergedActions(actions).map((action) => actionSentence(action, words));
  // Also one that burns already, and is in no plan.
  const burns = advisory.cautions.some(({ code }) => code === 'flame-vented' || code === 'flame-unvented');
  const inside = advisory.places.find(({ place }) => place === 'inside');
  const extra = [
    ...(burns ? [FLAME] : []),
    ...(inside === undefined ? [] : [`Inside ${withRange(inside.lowC, words.units)} at ${clockOf(inside.lowAt)}.`]),
    ...worstCrop(advisory.crops),
    ...(actions.length === 0 ? [] : [REPLY]),
  ];
  const told = fitting(work, origin);
  return extra.reduce((sofar, sentence) => (fitsSms(`${sofar} ${sentence}`) ? `${sofar} ${sentence}` : sofar), told);
}

/** The work with where it comes from; what has no room is counted. */
function fitting(work: readonly string[], origin: readonly string[]): string {
  for (let told = work.length; told > 0; told -= 1) {
    const text = [...work.slice(0, told), ...(told < work.length ? [more(work.length - told)] : []), ...origin].join(' ');
    if (fitsSms(text)) return text;
  }
  return [more(work.length), ...origin].join(' ');
}

const RANK = { safe: 0, watch: 1, 'at-risk': 2, 'likely-lost': 3 } as const satisfies Record<AdvisoryCrop['verdict'], number>;

function worstCrop(crops: readonly AdvisoryCrop[]): readonly string[] {
  const [worst] = crops.filter(({ pickedBefore }) => !pickedBefore).toSorted((a, b) => RANK[b.verdict] - RANK[a.verdict] || b.damageProbability - a.damageProbability);
  if (worst === undefined) return [];
  const name = worst.asked.charAt(0).toUpperCase() + worst.asked.slice(1);
  if (worst.verdict === 'safe') return ['Crops safe.'];
  return [worst.verdict === 'likely-lost' ? `${name}: lost on ${inTen(worst.lossProbability)} nights like this.` : `${name}: marked on ${inTen(worst.damageProbability)} nights like this.`];
}
