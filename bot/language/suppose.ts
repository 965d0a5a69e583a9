import { amountsSaid } from './amounts.js';
import type { Intent, Item } from './intent.js';
import { itemsSaid } from './items-said.js';
import type { Message } from './message.js';

const SUPPOSES = / (?:what if|what happens if|what would happen if|what would happen|suppose|supposing|imagine|say i|say we|assume|assuming|if i|if we|if there|if it|how much (?:would|will|warmer|difference would|could|does)|how many degrees would|would (?:it|that|a|an|the|\w+|=\d+|@\w+|two|more|adding|another|extra) (?:\w+ |@\w+ |&\w+ |=\d+ ){0,8}?(?:help|make|matter|work|be any use|be any good|be enough|do|save|be better|be worth|hold|give|gain)|is (?:a|an|another|adding|two) .*worth|is there any point (?:in|to|having)|is it worth (?:adding|putting|getting|buying)|and if|and without|and with|without|compare|versus|vs) /;
const WITHOUT = / (?:without|not|no|skip|skipped|leave off|leave out|left off|forget|forgot|remove|removed|take off|took off|turn off|turned off|leave .*? off|leave .*? open|left .*? open|do nothing|open|opened|off|uncovered|fails?|dies?|breaks?|quits?) /;

function deeds(clause: string): readonly Item[] {
  const verbs: Item[] = [];
  if (/ (?:cover|covered|covering|uncovered) /.test(clause)) verbs.push('cover');
  if (/ (?:harvest|pick|picked|harvested) /.test(clause)) verbs.push('harvest');
  if (/ (?:heat|heated|heating) /.test(clause)) verbs.push('heater');
  if (/ (?:vent|vented) /.test(clause)) verbs.push('vents');
  return [...new Set([...verbs, ...itemsSaid(clause)])];
}

/** A question about a night or a house that is not so: with more, or with less, than there is. */
export function suppose(message: Message): Intent | null {
  const { said, form } = message;
  const asked = SUPPOSES.test(said) && (message.asks || / (?:what if|suppose|supposing|imagine|if) |^ (?:say|let us say|assume|assuming) (?:i|we) /.test(said));
  if (!asked || / (?:how much|how many) @?\w+ (?:should|do) /.test(said)) return null;
  const withItems: Item[] = [];
  const without: Item[] = [];
  for (const part of form.split(/ (?:[,;]|and|but|plus) /)) {
    const clause = ` ${part.trim()} `;
    (WITHOUT.test(clause) ? without : withItems).push(...deeds(clause));
  }
  if (/ (?:do nothing|did nothing|do not do anything|without anything|without any of it) /.test(said)) return { kind: 'suppose', items: [] };
  if (withItems.length === 0 && without.length === 0) return null;
  const amounts = amountsSaid(message);
  return { kind: 'suppose', ...(withItems.length === 0 ? {} : { items: withItems }), ...(without.length === 0 ? {} : { without }), ...(amounts === undefined ? {} : { amounts }) };
}
