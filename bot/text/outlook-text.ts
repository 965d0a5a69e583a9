import type { Week, WeekCrop, WeekNight, WeekPreparation, WeekSpell } from '../features/outlook/week.js';
import { nights as inNights } from './chance.js';
import { clockOf } from './local-time.js';
import { cropNotGrown } from './reply-text.js';
import { temperature, withRange, type TempUnits } from './temperature.js';

type WeekVerdict = WeekCrop['usual'];

const VERDICT_WORDS = { safe: 'safe', watch: 'watch', 'at-risk': 'at risk', 'likely-lost': 'likely lost' } as const satisfies Record<WeekVerdict['verdict'], string>;
const STORE_WORDS: Readonly<Record<string, string>> = { soil: 'soil at root depth', water: 'drums', stones: 'stones', 'stone-box': 'stones in the box' };

/** All nights in a line each; the spell, if there is one, comes first because it wants work by day. */
export function weekText(week: Week, units: TempUnits): string {
  if (week.nights.length === 0) return beyondForecast(null);
  const parts = [
    ...(week.spell ? [spellText(week.spell, units)] : []),
    [`The next nights at ${week.greenhouse} (8 nights in 10 fall in the range, which grows with the days):`, ...week.nights.map((night) => `- ${nightLine(night, units)}`)].join('\n'),
    ...(week.spell ? [] : ['No cold spell in sight: no two nights in a row that threaten your crops.']),
    ...(week.weather.stale ? ['This stands on an OLD forecast.'] : []),
  ];
  return parts.join('\n\n');
}

export function spellText(spell: WeekSpell, units: TempUnits): string {
  const stores = spell.stores.map(({ place, firstC, lastC }) => `${STORE_WORDS[place] ?? place} from ${temperature(firstC, units)} to ${temperature(lastC, units)}`);
  return [
    `Cold spell: ${spell.nights} nights in a row from ${spell.fromDay}, ${spell.worst === spell.from ? 'the first of them the worst' : `worst on ${spell.worstDay}`}.`,
    ...(stores.length > 0 ? [`At sunset, from its first evening to its last: ${stores.join(', ')}.`] : []),
    ...(spell.prepare.length > 0 ? ['Before it comes:', ...spell.prepare.map((one) => `- ${preparationText(one)}`)] : ['Nothing to buy or to pick before it.']),
  ].join('\n');
}

function preparationText(one: WeekPreparation): string {
  switch (one.what) {
    case 'cover-each-night':
      return `Have the covers ready for ${one.beds.join(' and ')}: they are needed each night.`;
    case 'get-cover':
      return `Get a cover for ${one.beds.join(' and ')}: fabric of about 30 g/m2 would make the difference.`;
    case 'fuel':
      return `Have about ${one.amount} ${one.unit} of fuel for ${one.nights} nights just above freezing.`;
    case 'pick':
      return `Pick the ${one.asked} in ${one.bed} before ${one.beforeDay}, ${clockOf(one.before)}: no cover saves it.`;
  }
}

function nightLine(night: WeekNight, units: TempUnits): string {
  const threatened = night.crops.filter(({ usual }) => usual.verdict !== 'safe').map((crop) => `${crop.asked} ${VERDICT_WORDS[crop.usual.verdict]}${coveredWords(crop)}`);
  return `${night.day}: outside ${temperature(night.outside.q50, units)}, inside ${withRange(night.inside, units)}. ${threatened.length > 0 ? `${capital(threatened.join(', '))}.` : 'Crops safe.'}`;
}

const coveredWords = ({ usual, covered }: WeekCrop): string => (covered && covered.verdict !== usual.verdict ? ` (covered: ${VERDICT_WORDS[covered.verdict]})` : '');

/** One night with all its crops. */
export const nightText = (night: WeekNight, units: TempUnits): string =>
  [`${night.day}: outside ${withRange(night.outside, units)}, inside ${withRange(night.inside, units)}.`, ...night.crops.map((crop) => `- ${cropAheadLine(crop)}`)].join('\n');

/** Some crops on one night to come. */
export function cropNightText(night: WeekNight, crops: readonly WeekCrop[], asked: readonly string[]): string {
  if (crops.length === 0) return cropNotGrown(asked, [...new Set(night.crops.map((crop) => crop.asked))]);
  return [`${night.day}, as far as the forecast can tell:`, ...crops.map((crop) => `- ${cropAheadLine(crop)}`)].join('\n');
}

function cropAheadLine(crop: WeekCrop): string {
  const said = ({ verdict, damageProbability }: WeekVerdict): string => (verdict === 'safe' ? 'safe' : `${VERDICT_WORDS[verdict]}, marked on ${inNights(damageProbability)} like that`);
  const covered = crop.covered && crop.usual.verdict !== 'safe' ? ` Covered: ${said(crop.covered)}.` : '';
  return `${capital(crop.asked)} in ${crop.bed}: ${said(crop.usual)}.${covered}`;
}

export const beyondForecast = (lastDay: string | null): string => (lastDay === null ? 'The forecast does not reach the next night.' : `The forecast reaches only to ${lastDay}.`);

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A day ahead: what it is, and that the decision comes on the evening itself. */
export const headsUpText = {
  spell: (spell: WeekSpell, units: TempUnits): string => `Heads-up. ${spellText(spell, units)}\nEach evening brings its own plan.`,
  night: (night: WeekNight, units: TempUnits): string => `Heads-up for tomorrow night.\n${nightText(night, units)}\nThe plan comes tomorrow, early enough for the work.`,
};
