import { amountsSaid } from './amounts.js';
import type { Intent, Item } from './intent.js';
import { itemsSaid } from './items-said.js';
import type { Message } from './message.js';
import { wordings } from './wordings.js';

const SUPPOSES = wordings`
  ^ (?:no|without|skip|minus) (?:the |my )?@\w+ (?:\w+ ){0,3}?(?:how|what)
  ^ (?:another |a |an |extra |one more |=\d+ |two |the )*@\w+ (?:\w+ |&\w+ ){0,5}?how (?:many degrees|much (?:warmer|help|good|difference|gain))
  ^ if (?:the |my |our )?@\w+ (?:\w+ )?(?:stays?|is|are|were|was|goes|fails?|dies?|quits?|stops?|had) .*(?:what|how)|what if
  how many degrees (?:does|do|will|would|can|could)
  (?:do|would|will|what do|what would) i (?:gain|win|get out of)
  worth (?:my while|it to|the (?:trouble|bother|money|effort) (?:of |to )?)(?: ?)(?:getting|adding|buying|building|installing|putting up|having)
  how would (?:=\d+ |a |an |the |some |another )?@\w+|how about (?:=\d+ |a |an |some |another )@\w+|pretend|what happens if|what happens when
  what happens with|what would happen if|what would happen|suppose|supposing|imagine|say i|say we|assume|assuming|if i|if we|if there|if it
  how much (?:would|will|warmer|difference would|could|does)|how many degrees would
  would (?:it|that|a|an|the|\w+|=\d+|@\w+|two|more|adding|another|extra) (?:\w+ |@\w+ |&\w+ |=\d+ ){0,8}?(?:help|make|matter|work|be any use|
  be any good|be enough|do|save|be better|be worth|hold|give|gain|bring|lift|raise|warm|change|improve|add)|is (?:a|an|another|adding|two) .*worth
  is there any point (?:in|to|having)
  is it worth (?:adding|putting(?! .* (?:on|over) )|getting|buying)|and if|and without|and with|with the @\w+ (?:off|on|shut|open|closed)
  without (?:\w+ ){0,4}?[@%]\w+|without (?:anything|any of it|it|them|covering|cover|heat|heating|picking)
  ^ if (?:more|another|=\d+) @\w+
  what would (?:it|things|we|the (?:low|minimum|temperature|&\w+)) (?:be|get|drop|go|look)(?: \w+){0,2} (?:with|without)
  would it be (?:any |a bit |much )?(?:warmer|better|safer|milder)|when (?:i|we) would|what would (?:be|happen) (?:if|when)
  compare|versus|vs
  what (?:would|will|could|might) (?:that|it|this|they|those|=\d+|adding|a|an|another|the)(?: [@=&]?\w+){0,6}? (?:get us|get me|get you|bring|make|do|change|give|gain|buy|
  save|mean)|get away with|(?:only|just) (?:i|we) (?:did|do)
  would (?:\w+ |@\w+ |=\d+ |%\d+ |&\w+ ){1,9}(?:get us through|get me through|get them through|save us|buy me|buy us|be enough|do it|do the trick|
  cut it|keep|carry|see us|suffice|difference)|is (?:the )?@\w+ (?:alone |on its own |by itself )?enough
  (?:is|would|will) (?:just |only )(?:the |a )?@\w+ 
`;
const WITHOUT = wordings`
  (?:take|took|taking|remove|pull|pulled) (?:\S+ ){1,4}?(?:out|away|off)
  without|not|no|skip|skipped|leave off|leave out|left off|forget|forgot|remove|removed|take off|took off|turn off|turned off|leave .*? off
  leave .*? open|left .*? open|do nothing|open|opened|off|uncovered|fails?|dies?|breaks?|quits?|rid|sold|lose|lost|went without|go without|did without
  do without|took away|took out|take away|take out|had not|did not have|do not have|were gone|was gone|were not|was not there|not there|scrapped|ditched
  stopped using|dropped
`;

function deeds(clause: string): readonly Item[] {
  const verbs: Item[] = [];
  if (/ (?:cover|covered|covering|uncovered) /.test(clause)) verbs.push('cover');
  if (/ (?:harvest|pick(?! up)|picked(?! up)|harvested) /.test(clause)) verbs.push('harvest');
  if (/ (?:heat|heated|heating) (?!(?:things|it|up|the &))/.test(clause)) verbs.push('heater');
  if (/ (?:vent|vented) /.test(clause)) verbs.push('vents');
  return [...new Set([...verbs, ...itemsSaid(clause)])];
}

/** What is told before "what if" is no part of what is supposed. */
const MARKER = /^.* (?=(?:what if|what happens if|suppose|supposing|imagine|what would it do|how much would|would it help) )/;

/** Of several sentences those that ask or suppose, where they name something: what a neighbour has is no part of it. */
function askedSentences(form: string): string {
  const sentences = form.split(/(?<= [;?]) (?=\S)/).map((sentence) => ` ${sentence.trim()} `);
  const asked = sentences.filter((sentence) => sentence.includes(' ? ') || SUPPOSES.test(sentence)).join('');
  const kept = sentences.length > 1 && deeds(asked).length > 0 ? asked : form;
  const supposed = kept.replace(MARKER, ' ');
  return deeds(supposed).length > 0 ? supposed : kept;
}

/** A question about a night or a house that is not so: with more, or with less, than there is. */
export function suppose(message: Message): Intent | null {
  const { said, form } = message;
  if (/ what would you (?:do|advise|suggest) /.test(said)) return null;
  const asked = (/^ (?:with|without) /.test(said) && message.asks) || SUPPOSES.test(said) && (message.asks || / (?:what if|suppose|supposing|imagine|if) |^ (?:say|let us say|assume|assuming) (?:i|we) /.test(said));
  // "How many barrels should I", "must I heat, or is it all right without": what to do is asked.
  if (!asked || (/ (?:how much|how many) @?\w+ (?:should|do) /.test(said) && !/ (?:if|suppose|supposing) /.test(said))) return null;
  if (/ (?:should|shall|must) (?:i|we) /.test(said) && !/ (?:if|suppose|supposing|imagine|without) /.test(said)) return null;
  if (/ (?:i|we) (?:must|should|need to|have to|ought to) .* or /.test(said) && !/ (?:if|suppose|supposing) /.test(said)) return null;
  // Whether to do it now or later is for tonight's advice.
  if (/ (?:would|will|is) it (?:be )?(?:better|best|wise|ok|safe|smart) (?:to|if i|if we|that i) /.test(said) && / (?:@harvest|pick|cut) /.test(form)) return null;
  const withItems: Item[] = [];
  const without: Item[] = [];
  for (const part of askedSentences(form).split(/ (?:[,;]|and|but|plus) /)) {
    const clause = ` ${part.trim()} `.replace(/ (?:frost|cold|chill|snow|worst) off /g, ' ');
    (WITHOUT.test(clause) ? without : withItems).push(...deeds(clause));
  }
  if (/ (?:do nothing|did nothing|do not do anything|without anything|without any of it) /.test(said)) return { kind: 'suppose', items: [] };
  const items = [...new Set(withItems)];
  const gone = [...new Set(without)];
  if (items.length === 0 && gone.length === 0) return null;
  const amounts = amountsSaid(message);
  return { kind: 'suppose', ...(items.length === 0 ? {} : { items }), ...(gone.length === 0 ? {} : { without: gone }), ...(amounts === undefined ? {} : { amounts }) };
}
