import type { Supposed, SupposedCrop } from '../features/evening/supposed-night.js';
import type { CautionCode } from '../features/evening/advisory.js';
import type { Assumed, Refused } from '../features/suppose/changed-house.js';
import type { Item } from '../language/intent.js';
import { cautionText } from './caution-text.js';
import { inTen, nights } from './chance.js';
import { degreesWarmer } from './degrees-warmer.js';
import { temperature, type TempUnits } from './temperature.js';

export interface SupposeWords {
  readonly items: readonly Item[];
  readonly without: readonly Item[];
  readonly assumed: readonly Assumed[];
  /** Something was put up or taken away, for the whole of the past fortnight. */
  readonly built: boolean;
  readonly units: TempUnits;
  /** Tonight's plan asks for something. */
  readonly planned: boolean;
  readonly caution: CautionCode | null;
}

const ITEM_WORDS = { cover: 'covers on', curtain: 'the curtain drawn', heater: 'the heater on', fan: 'the fan on', vents: 'the vents shut', water: 'more water', stones: 'the stones', layer: 'one more film', film: 'the other film', wall: 'the wall', tube: 'the ground tube', compost: 'the compost', harvest: 'picking' } as const satisfies Record<Item, string>;
const WITHOUT_WORDS = { cover: 'covers off', curtain: 'the curtain open', heater: 'the heater off', fan: 'the fan off', vents: 'the vents open', water: 'no drums', stones: 'no stones', layer: 'one film', film: 'no film', wall: 'no wall', tube: 'the tube off', compost: 'no compost', harvest: 'no picking' } as const satisfies Record<Item, string>;

const ASSUMED_WORDS = {
  'ten-drums': 'I took ten drums of 208 litres (55 gal).',
  'electric-1500': 'I took an electric heater of 1500 W.',
  'set-2': 'I took a setting of 2C (36F).',
  'fabric-30': 'I took row cover of 30 g/m2 (1 oz) on every bed.',
  'cubic-metre-stones': 'I took one cubic metre of black stones in the sun.',
  'thermal-film': 'I took thermal film.',
  'barrier-film': 'I took IR-barrier film.',
  'usual-wall': 'I took an insulated wall, 5 cm (2 in) of foam.',
  'usual-tube': 'I took four tubes as long as the house, 60 cm (2 ft) deep.',
  'usual-fan': 'I took a stirring fan of 300 m3 an hour (180 cfm).',
  'usual-compost': 'I took one cubic metre, two weeks old, against a bed.',
  'fabric-curtain': 'I took a curtain of fabric.',
  'second-film': 'I took a second film of the standard kind.',
} as const satisfies Record<Assumed, string>;

const REFUSED_WORDS = {
  'two-films': 'Your house has two films already, and I count no third. A curtain comes nearest: ask "what if I had a curtain".',
  'which-heat': 'How much heat is that? Say it in watts or degrees: "heater at 1500 W", "heater at 3C".',
  picking: 'Picking changes no temperature. Ask "should I pick anything" instead.',
  'no-film': 'A house without film is the open field. Ask "how cold outside" instead.',
  'not-there': 'Your house does not have that, so nothing would change. Tell me if it does.',
  'no-vents': 'I know of no vents in your house. Tell me: "two vents, 1 m2 each".',
  'too-much': 'That does not fit your house. Try a smaller amount, for example "ten more drums".',
} as const satisfies Record<Refused, string>;

export const supposeRefused = (why: Refused): string => REFUSED_WORDS[why];

/** A crop is named when its chance moves by this much; at most so many are. */
const WORTH_NAMING = 0.05;
const MOST_CROPS = 3;

/** The difference first, then what it means for the crops, then what it stands on. */
export function supposeText(supposed: Supposed, words: SupposeWords): string {
  const { assumed, built, caution, planned } = words;
  return [
    differenceSentence(supposed, words),
    ...plantsSentences(supposed, words),
    ...cropSentences(supposed.crops),
    ...assumed.map((one) => ASSUMED_WORDS[one]),
    ...(supposed.heatKwh > 0.05 ? [`The heat takes about ${Math.round(supposed.heatKwh * 10) / 10} kWh more.`] : []),
    ...(built ? ['It counts as if it had stood so for two weeks.'] : []),
    planned ? 'I compared it with tonight after the plan is done.' : 'I compared it with the house as it stands.',
    ...(caution === null ? [] : [cautionText(caution)]),
  ].join('\n');
}

function differenceSentence({ changes, insideLowC }: Supposed, { items, without, units }: SupposeWords): string {
  const what = [...items.map((item) => ITEM_WORDS[item]), ...without.map((item) => WITHOUT_WORDS[item])].slice(0, MOST_CROPS).join(', ') || 'nothing done';
  const inside = changes.find(({ at }) => at === 'inside')!;
  return `With ${what}, the low inside would be ${degreesWarmer(inside, units)}: about ${temperature(insideLowC, units)}.`;
}

/** Beds whose plants get another change than the air of the house. */
function plantsSentences({ changes }: Supposed, { units }: SupposeWords): string[] {
  const inside = changes.find(({ at }) => at === 'inside')!;
  return changes.filter(({ at, meanK }) => at === 'plants' && Math.abs(meanK - inside.meanK) >= OTHER_BY_K).map((change) => `At the plants in ${change.bed}: ${degreesWarmer(change, units)}.`);
}

/** What a thermometer would show as another change (project estimate). */
const OTHER_BY_K = 0.2;

const changed = (crops: readonly SupposedCrop[]): readonly SupposedCrop[] =>
  crops.filter(({ before, after }) => Math.abs(after - before) >= WORTH_NAMING && inTen(after) !== inTen(before)).sort((a, b) => Math.abs(b.after - b.before) - Math.abs(a.after - a.before));

function cropSentences(crops: readonly SupposedCrop[]): string[] {
  const moved = changed(crops).slice(0, MOST_CROPS);
  if (moved.length === 0) return ['For your crops it changes nothing that counts.'];
  return moved.map(({ asked, bed, before, after }) => `${capital(asked)} in ${bed}: marked on ${nights(before)} now, then on ${nights(after)}.`);
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
