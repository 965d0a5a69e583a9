import type { Advisory, AdvisoryAction } from '../features/evening/advisory.js';
import type { Supposed } from '../features/evening/supposed-night.js';
import type { ConditionItem } from '../language/intent.js';
import { actionSentence } from './action-text.js';
import { cautionText } from './caution-text.js';
import { idleSentence } from './advisory-text.js';
import { degreesWarmer } from './degrees-warmer.js';
import { reasonSentence } from './reason-text.js';
import { temperature, withRange, type TempUnits } from './temperature.js';

const WRONG_WORDS = { snow: 'snow on the roof', 'power-out': 'the power out', 'blower-off': 'the blower stopped', 'torn-film': 'a hole in the film', 'door-open': 'the door open', 'fuel-out': 'no fuel', 'fan-dead': 'the fans dead' } as const satisfies Record<ConditionItem, string>;
const RIGHT_WORDS = { snow: 'no snow on the roof', 'power-out': 'the power back', 'blower-off': 'the blower running', 'torn-film': 'the film mended', 'door-open': 'the door shut', 'fuel-out': 'fuel again', 'fan-dead': 'the fans working' } as const satisfies Record<ConditionItem, string>;

/** What to do about the thing itself, where that comes before anything else. */
const MEND = {
  snow: null,
  'power-out': null,
  'blower-off': null,
  'torn-film': 'Tape the hole before dark if you can.',
  'door-open': 'Shut the door now.',
  'fuel-out': null,
  'fan-dead': null,
} as const satisfies Record<ConditionItem, string | null>;

const POWER_CAUTION = 'No grill, no unvented burner and no generator inside: their gas kills. Keep off loose wires. Headache or dizziness: get out and call for help.';

/** Less is not worth a word (project estimate). */
const WORTH_SAYING_K = 0.3;

interface ConditionWords {
  /** The low inside that was told earlier for this night, degrees C; null where none was. */
  readonly earlierLowC: number | null;
  readonly units: TempUnits;
  readonly cropName: (id: string) => string;
}

/** What to do now, then what it does to the night, then the cautions. */
export function conditionText({ items, on }: { items: readonly ConditionItem[]; on: boolean }, evening: { advisory: Advisory; supposed?: Supposed }, words: ConditionWords): string {
  const { advisory, supposed } = evening;
  const cautions = on ? items.flatMap((item) => (item === 'snow' ? [cautionText('snow-on-film')] : item === 'power-out' ? [POWER_CAUTION] : [])) : [];
  const inside = advisory.places.find(({ place }) => place === 'inside')!;
  return [
    ...(on ? items.flatMap((item) => MEND[item] ?? []) : []),
    advisory.plan.actions.length === 0 ? idleSentence(advisory) : advisory.plan.actions.map((action: AdvisoryAction) => actionSentence(action, words)).join(' '),
    `Noted: ${items.map((item) => (on ? WRONG_WORDS : RIGHT_WORDS)[item]).join(', ')}.`,
    `The low inside is now ${withRange(inside.lowC, words.units)}.${thanBefore(supposed, inside.lowC.q50, words)}`,
    ...advisory.reasons.flatMap((reason) => (reason.code === 'too-late' ? (reasonSentence(reason, words) ?? []) : [])),
    ...harmed(advisory),
    ...cautions,
    on ? 'Tell me when it is right again.' : 'Glad to hear it.',
  ].join('\n');
}

/** A change of the plan counts as one of the night: no heat where the power is out. The house before is what was supposed, so that the change is the other way round. */
function thanBefore(supposed: Supposed | undefined, lowC: number, { earlierLowC, units }: ConditionWords): string {
  const change = supposed?.changes.find(({ at }) => at === 'inside');
  if (change !== undefined && Math.abs(change.meanK) >= WORTH_SAYING_K) return ` That is ${degreesWarmer({ meanK: -change.meanK, q10K: -change.q90K, q90K: -change.q10K }, units)}, because of this.`;
  return earlierLowC === null || Math.abs(earlierLowC - lowC) < WORTH_SAYING_K ? '' : ` Earlier I said ${temperature(earlierLowC, units)}.`;
}

function harmed({ crops }: Advisory): string[] {
  const lost = crops.filter(({ verdict, pickedBefore }) => !pickedBefore && (verdict === 'at-risk' || verdict === 'likely-lost')).map(({ asked }) => asked);
  return lost.length === 0 ? [] : [`At risk even so: ${[...new Set(lost)].join(', ')}.`];
}

export const conditionRefused = (items: readonly ConditionItem[]): string => `I cannot put that down: ${items.map((item) => WRONG_WORDS[item]).join(', ')}. Give the size in other words, for example "10 cm of snow on the roof".`;
