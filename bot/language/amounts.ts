import type { Amount, Amounts, AmountUnit, Item } from './intent.js';
import type { Message } from './message.js';
import { celsius, signedValue } from './temperature.js';
import type { AmountToken } from './value-grammar.js';

const LITRES_PER_GALLON = 3.785411784;
const KG_PER_POUND = 0.45359237;
const METRES_PER_FOOT = 0.3048;
const WATTS_PER_BTU_H = 0.29307107;
const GSM_PER_OUNCE_YD2 = 33.90575;
const MICROMETRES_PER_MIL = 25.4;

interface Measure {
  readonly nouns: RegExp;
  readonly unit: AmountUnit;
  readonly factor: number;
}

const MEASURES: readonly Measure[] = [
  { nouns: /^count$/, unit: 'count', factor: 1 },
  { nouns: /^gal/, unit: 'litre', factor: LITRES_PER_GALLON },
  { nouns: /^(?:l|lit.*)$/, unit: 'litre', factor: 1 },
  { nouns: /^(?:kw|kilowatts?)$/, unit: 'watt', factor: 1000 },
  { nouns: /^w(?:atts?)?$/, unit: 'watt', factor: 1 },
  { nouns: /^btus?$/, unit: 'watt', factor: WATTS_PER_BTU_H },
  { nouns: /^(?:kilos?|kgs?)$/, unit: 'kilogram', factor: 1 },
  { nouns: /^(?:pounds?|lbs?)$/, unit: 'kilogram', factor: KG_PER_POUND },
  { nouns: /^tonnes?$/, unit: 'kilogram', factor: 1000 },
  { nouns: /^(?:gsm|g\/m2|grams?|gr|g)$/, unit: 'gram-per-m2', factor: 1 },
  { nouns: /^(?:ounces?|oz)$/, unit: 'gram-per-m2', factor: GSM_PER_OUNCE_YD2 },
  { nouns: /^mils?$/, unit: 'micrometre', factor: MICROMETRES_PER_MIL },
  { nouns: /^microns?$/, unit: 'micrometre', factor: 1 },
  { nouns: /^mm$/, unit: 'metre', factor: 0.001 },
  { nouns: /^cm$/, unit: 'metre', factor: 0.01 },
  { nouns: /^(?:m|met.*)$/, unit: 'metre', factor: 1 },
  { nouns: /^(?:feet|foot|ft)$/, unit: 'metre', factor: METRES_PER_FOOT },
  { nouns: /^inch/, unit: 'metre', factor: METRES_PER_FOOT / 12 },
  { nouns: /^(?:hours?|hrs?|h)$/, unit: 'hour', factor: 1 },
  { nouns: /^min/, unit: 'hour', factor: 1 / 60 },
  { nouns: /^(?:%|per ?cent)$/, unit: 'percent', factor: 1 },
  { nouns: /^(?:\$|dollars?|bucks|euros?|quid)$/, unit: 'money', factor: 1 },
];

function measured({ value, noun }: AmountToken): Amount | null {
  const measure = MEASURES.find(({ nouns }) => nouns.test(noun));
  return measure === undefined ? null : { value: Math.round(value * measure.factor * 1000) / 1000, unit: measure.unit };
}

/** Below this a bare heater number of a °F grower is no thermostat setting, but a step of the dial. */
const LEAST_SETTING_F = 25;
const MOST_SETTING_C = 30;

/** A number at a heater: a setting where it can be one, else a number that is not known to be a temperature. */
function heaterSetting(message: Message, at: number): Amount | null {
  const token = message.temps[at];
  if (token === undefined) return null;
  const unit = token.unit ?? message.units;
  const c = celsius(signedValue(token, unit), unit);
  const fits = token.unit !== null || (unit === 'F' ? token.value >= LEAST_SETTING_F : c <= MOST_SETTING_C);
  return fits ? { value: c, unit: 'C' } : { value: token.value, unit: null };
}

/** "Two 55 gallon drums". */
const COUNT_OF_AMOUNT = /=(\d+) =(\d+) (?:of |new |big |old |black |full |plastic )*@(\w+)/g;
const AMOUNT_BEFORE = /=(\d+) (?:of |more |new |the |big |extra |of the |of water |black |full )*@(\w+)/g;
const AMOUNT_AFTER = /@(\w+) (?:of |is |holds |with |at )?=(\d+)/g;
const HEATER_AT = /@heater (?:is |are |on |set |at |to |kicks |in |running |down |up |back |low |high |for )*#(\d+)/g;

/** The amounts said with the items: "4 drums", "200 gallons of water", "heater at 3". */
export function amountsSaid(message: Message): Amounts | undefined {
  const found: Partial<Record<Item, Amount>> = {};
  const note = (item: string | undefined, amount: Amount | null): void => {
    // Litres are of water, whatever stands nearer.
    const fits = amount?.unit !== 'litre' || item === 'water';
    if (item !== undefined && amount !== null && fits) found[item as Item] ??= amount;
  };
  const counted = (index: string | undefined): Amount | null => {
    const token = message.amounts[Number(index)];
    return token === undefined ? null : measured(token);
  };
  for (const [, count, index, item] of message.said.matchAll(COUNT_OF_AMOUNT)) {
    const [times, each] = [counted(count), counted(index)];
    if (times?.unit === 'count' && each !== null) note(item, { ...each, value: Math.round(times.value * each.value * 1000) / 1000 });
  }
  for (const [, index, item] of message.said.matchAll(AMOUNT_BEFORE)) note(item, counted(index));
  for (const [, item, index] of message.said.matchAll(AMOUNT_AFTER)) note(item, counted(index));
  for (const [, index] of message.said.matchAll(HEATER_AT)) note('heater', heaterSetting(message, Number(index)));
  return Object.keys(found).length === 0 ? undefined : found;
}

/** Whether every number of the message belongs to a heater, so that none of them is a reading. */
export const numbersAreSettings = (message: Message): boolean => [...message.said.matchAll(HEATER_AT)].length === message.temps.length;
