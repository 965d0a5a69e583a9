import type { Advisory, AdvisoryAction, AdvisoryCrop, AdvisoryPlace } from '../features/evening/advisory.js';
import { actionSentence, mergedMorning, morningSentence } from './action-text.js';
import { cautionText } from './caution-text.js';
import { nights } from './chance.js';
import { clockOf } from './local-time.js';
import { reasonSentence } from './reason-text.js';
import { temperature, withRange, type TempUnits } from './temperature.js';

export interface AdvisoryWords {
  readonly units: TempUnits;
  /** "Wed 25 Nov" */
  readonly dayName: string;
  readonly cropName: (id: string) => string;
}

const PLACE_ORDER = ['outside', 'inside', 'cover', 'water', 'stones', 'stone-box'] as const;
const PLACE_NAME = { outside: 'Outside', inside: 'Inside', cover: 'Under the cover', leaf: 'Leaves', soil: 'Soil at root depth', water: 'Drums', stones: 'Stones', 'stone-box': 'Stones in the box', tube: 'Ground at the tubes', compost: 'Compost' } as const satisfies Record<AdvisoryPlace['place'], string>;

/** The whole advisory in plain words: action first, then lows, crops, morning, what would change it, cautions. */
export function advisoryText(advisory: Omit<Advisory, 'text'>, words: AdvisoryWords): string {
  const blocks = [
    `Tonight, ${words.dayName}: ${advisory.greenhouse}`,
    actionBlock(advisory, words),
    block('How cold (8 nights in 10 fall in the range)', lowLines(advisory.places, words)),
    block('Crops', advisory.crops.map((crop) => cropLine(crop, words))),
    block('In the morning', mergedMorning(advisory.morning).map((step) => morningSentence(step))),
    block('Why, and what would change it', reasonLines(advisory, words)),
    block('Take care', advisory.cautions.map(({ code }) => cautionText(code))),
  ];
  return blocks.filter((text) => text !== '').join('\n\n');
}

const block = (title: string, lines: readonly string[]): string => (lines.length === 0 ? '' : `${title}\n${lines.map((line) => `- ${line}`).join('\n')}`);

function actionBlock(advisory: Omit<Advisory, 'text'>, words: AdvisoryWords): string {
  const { actions, effortMinutes, cost, heater } = advisory.plan;
  if (actions.length === 0) return idleSentence(advisory);
  const total = `About ${effortMinutes} minutes of work${cost > 0 ? `, about ${cost.toFixed(2)} for heat` : ''}.`;
  const heat = heater ? [`Heater: ${heater.powerW} W, the heat of about ${heater.fullPowerHours} h at full power, ${heater.energyKwh} kWh${heater.fuelUnit === 'kWh' ? '' : ` (${heater.fuel} ${heater.fuelUnit})`}, about ${heater.cost.toFixed(2)}${heater.priceIsPlaceholder ? ' at a made-up price: set yours in the greenhouse file' : ''}.${heater.expectedInsideC === null ? '' : ` It will run flat out and not hold the setting: expect about ${temperature(heater.expectedInsideC, words.units)} inside.`}`] : [];
  return block('Do', [...mergedActions(actions).map((action) => actionSentence(action, words)), ...heat, total]);
}

/** Why there is nothing to do. */
export function idleSentence({ crops, reasons }: Pick<Advisory, 'crops' | 'reasons'>): string {
  const inPlace = reasons.some(({ code }) => code === 'counts-on');
  const threatened = crops.some(({ verdict }) => verdict === 'at-risk' || verdict === 'likely-lost');
  const late = reasons.find((reason) => reason.code === 'too-late');
  if (late !== undefined) return `Too late for work in daylight. ${late.actions.some(({ action }) => action === 'cover') ? 'With a light, covering still helps: see below.' : 'See the crops below.'}`;
  if (threatened) return `Nothing ${inPlace ? 'more ' : ''}that you can do tonight is worth the work, but not all crops are safe: see below.`;
  return inPlace ? 'Nothing more to do tonight, as long as what is in place stays.' : 'Nothing to do tonight.';
}

/** Several beds to cover by the same time are one sentence. */
export function mergedActions(actions: readonly AdvisoryAction[]): readonly AdvisoryAction[] {
  return actions.reduce<AdvisoryAction[]>((merged, action) => {
    const same = merged.findIndex((other) => other.action === 'cover' && action.action === 'cover' && other.by === action.by);
    if (same < 0) return [...merged, action];
    return merged.map((other, i) => (i === same ? { ...other, target: `${other.target} and ${action.target}` } : other));
  }, []);
}

/** Leaves and soil of every bed would bury the lows that matter: only outside, inside, under covers and stores are listed. */
function lowLines(places: readonly AdvisoryPlace[], words: AdvisoryWords): string[] {
  return PLACE_ORDER.flatMap((name) => places.filter(({ place }) => place === name)).map((place) => {
    const bed = place.place === 'cover' && place.bed !== undefined ? `, ${place.bed}` : '';
    return `${PLACE_NAME[place.place]}${bed}: ${withRange(place.lowC, words.units)}, coldest about ${clockOf(place.lowAt)}`;
  });
}

const capitalised = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

const NODE_WORDS = { outside: 'outside air', inside: 'air in the house', cover: 'air under the cover', leaf: 'the leaf itself', soil: 'the soil', water: 'the water', stones: 'the stones', 'stone-box': 'the stones in the box', tube: 'the ground at the tubes', compost: 'the compost' } as const satisfies Record<AdvisoryPlace['place'], string>;

/** Verdict first, then how likely, then against what it was judged. */
export function cropLine(crop: AdvisoryCrop, words: AdvisoryWords): string {
  const name = `${capitalised(crop.asked)} in ${crop.bed}`;
  if (crop.pickedBefore) return `${name}: pick it before dark. Left out, it gets marked on ${nights(crop.damageProbability)} like this.`;
  const judged = `${NODE_WORDS[crop.judgedAt]} about ${temperature(crop.judgedLowC, words.units)}, harm begins at ${temperature(crop.damageBeginsC, words.units)}`;
  const chill = crop.chill && crop.verdict !== 'likely-lost' ? ` Chilled below ${temperature(crop.chill.thresholdC, words.units)} for about ${Math.round(crop.chill.hours)} h, which sets it back even without frost.` : '';
  return `${verdictWords(crop, name, judged)}${chill}`;
}

function verdictWords(crop: AdvisoryCrop, name: string, judged: string): string {
  switch (crop.verdict) {
    case 'safe':
      return `${name}: safe${crop.chill ? ' from frost' : ''} (${judged}).`;
    case 'watch':
      return `${name}: watch. Leaves get marked on ${nights(crop.damageProbability)} like this (${judged}).`;
    case 'at-risk':
      return `${name}: at risk. Marked on ${nights(crop.damageProbability)} like this, lost on ${nights(crop.lossProbability)} (${judged}).`;
    case 'likely-lost':
      return `${name}: likely lost, on ${nights(crop.lossProbability)} like this (${judged}).`;
  }
}

/** The two crops that the plan helps most stand for all. */
const MOST_HELPED = 2;

function reasonLines(advisory: Omit<Advisory, 'text'>, words: AdvisoryWords): string[] {
  const helped = advisory.reasons.filter((reason) => reason.code === 'plan-helps').sort((a, b) => b.withoutDamageProbability - b.withDamageProbability - (a.withoutDamageProbability - a.withDamageProbability));
  return advisory.reasons.flatMap((reason) => {
    if (reason.code === 'plan-helps' && helped.indexOf(reason) >= MOST_HELPED) return [];
    const sentence = reasonSentence(reason, words);
    return sentence === null ? [] : [sentence];
  });
}
