import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { readHouseText } from '../../language/house/house-text.js';
import { readFacts } from '../../language/house/read-facts.js';
import { isQuestion } from '../../language/question.js';
import { tolerancesIn } from '../../language/tolerance.js';
import { understand } from '../../language/understand.js';
import { CHANGED, KNOWN_ALREADY } from '../../text/describe-text.js';
import { completeFile, sized, type DescribeContext } from './apply.js';
import { acknowledgesFlame, describeStep, finishStep, takeFacts, takeRead, type DescribeStep } from './describe.js';
import { quantityOf } from './size.js';
import { thermometerOf } from './thermometers.js';
import { readSignal } from '../../language/house/signals.js';
import { besideOf, FRESH, TOPICS, type Beside, type DescribeState, type SizeDraft } from './state.js';
import { summaryOf, viewOf } from './summary.js';
import { asAdded, isBareBed, isOfSome, isTelling, LASTING, MAY_CHANGE, OF_A_TEMPERATURE, OF_ONE_NIGHT, OF_THE_SITE } from './telling.js';
import { habitsOfZone } from './units-of-place.js';

/** A description that is whole, ready to be changed. Throws when the file is faulty: a stored file never is. */
export function stateOf(file: GreenhouseFile, context: Pick<DescribeContext, 'zoneAt'>, beside: Beside = {}): DescribeState {
  const checked = checkGreenhouse(file);
  if (!checked.ok) throw new Error(`expected a greenhouse file that passes its check, got ${checked.faults.map(({ field, message }) => `${field}: ${message}`).join('; ')}`);
  const { place, size, shape, sideHeight, grower, thermometers } = checked.greenhouse;
  const draft: SizeDraft = {
    width: quantityOf(file.size.width, size.width),
    length: quantityOf(file.size.length, size.length),
    height: quantityOf(file.size.height, size.height),
    shape,
    ...(file.sideHeight === undefined ? { sideSkipped: true } : { side: quantityOf(file.sideHeight, sideHeight) }),
  };
  const told = Object.fromEntries(TOPICS.map((topic) => [topic, file.none?.some((one) => one === topic) === true ? 'none' : 'told'])) as DescribeState['told'];
  const habits = { ...habitsOfZone(context.zoneAt(place.latitude, place.longitude)), temperature: grower.units };
  return { ...FRESH, mode: 'change', told, file: { ...file }, size: draft, habits, announced: true, safetyDeclined: true, hangAsked: true, placeName: beside.placeName ?? place.name ?? null, thermometers: thermometers.map(thermometerOf), pending: (beside.pending ?? []).map((one) => ({ ...one, parked: true })) };
}

/** The summary of a greenhouse: one line a thing, with its number. */
export const readBack = (file: GreenhouseFile, context: Pick<DescribeContext, 'zoneAt'>, beside: Beside = {}): string => summaryOf(viewOf(stateOf(file, context, beside)));

/** "Change 3", as the summary offers it. */
const NAMES_LINE = /^\s*(?:change|edit|fix|redo|correct)\b.*\d/iu;

/**
 * A change of a known greenhouse in the words of the first description: the new file and what was understood. Null when the
 * text is no change. Where something is missing, the step's state asks for it and is kept like that of a first description.
 */
export function changeGreenhouse(file: GreenhouseFile, text: string, context: DescribeContext, beside: Beside = {}): DescribeStep | null {
  const state = sized(stateOf(file, context, beside));
  const line = NAMES_LINE.test(text) ? readSignal(text) : null;
  if (line !== null) return describeStep(state, { text }, context);
  if (acknowledgesFlame(state, text)) return finishStep(takeRead(state), context);
  const zone = context.zoneAt(file.place.latitude, file.place.longitude);
  const form = ` ${readHouseText(text, context.cropWords).pieces.map(({ symbol }) => symbol).join(' ')} `;
  if (isQuestion(form, form)) return null;
  const intent = understand({ text, atS: context.nowS, zone, units: file.grower?.units ?? 'C', crops: context.cropWords });
  if (intent.kind === 'settings' && tolerancesIn({ text, atS: context.nowS, zone, units: file.grower?.units ?? 'C', crops: context.cropWords }).length > 0) return null;
  const isDeed = intent.kind === 'did';
  // "Drums at 40": a temperature whose unit is asked about is no count.
  const isTemperature = intent.kind === 'unclear' && OF_A_TEMPERATURE.has(intent.asks);
  if ((!MAY_CHANGE.has(intent.kind) && !isDeed) || (isDeed && OF_ONE_NIGHT.test(text))) return null;
  // "Send it at 17:00": what is set by a time alone is the evening message.
  const setsTime = intent.kind === 'settings' && / at (?:~|#N)\d+ /.test(form) && !/ (?:if|when|whenever|unless|once|wake|below|under|above|morning|twice) /.test(form);
  const read = readFacts(text, { crops: context.cropWords, now: { atS: context.nowS, zone }, asked: setsTime ? 'evening' : null });
  const facts = read.facts.map((fact) => (intent.kind === 'mark' ? asAdded(fact, text) : fact)).filter((fact) => (!isTemperature || OF_THE_SITE.has(fact.about)) && (isTelling(fact, text) || isBareBed(fact, form)) && !isOfSome(fact, text) && (!isDeed || LASTING.has(fact.about === 'none' ? `none:${fact.thing}` : fact.about)));
  if (facts.length === 0) return null;
  const step = finishStep(takeFacts(state, facts, read.left, context), context);
  const isSame = step.file !== undefined && step.look === undefined && JSON.stringify(completeFile(step.state)) === JSON.stringify(completeFile(state));
  return isSame && step.isFinished ? { ...step, reply: { text: step.reply.text.replace(CHANGED, KNOWN_ALREADY) } } : step;
}

/** Whether somebody wants to see what is known, or to change it without saying what. */
export const asksForReview = (text: string): boolean => /^\W*(?:summary|read (?:it )?back|what do you (?:have|know)(?: about (?:it|my greenhouse|the greenhouse))?|(?:show|describe|change|edit|check)(?: me)? (?:my|the|our) (?:greenhouse|tunnel|house)|(?:my|our|the) greenhouse)\W*$/iu.test(text);

/** Opens a conversation about what is known: the summary, and whatever is to be changed. */
export function reviewGreenhouse(file: GreenhouseFile, context: DescribeContext, beside: Beside = {}): DescribeStep {
  const state = sized(stateOf(file, context, beside));
  return { state, reply: { text: summaryOf(viewOf(state)) }, file, isFirst: false, beside: besideOf(state), understood: true, isFinished: false };
}
