import type { Intent } from './intent.js';
import { itemsSaid } from './items-said.js';
import type { Message } from './message.js';
import { wordings } from './wordings.js';

const HELPED = wordings`
  ^ (?:helped|brought|worked|changed) (?:the|my|our|that|this|it|them|those) (?:\S+ )*?(?:something|anything|much|at all|well|better)
  (?:did|does|do|has|have|is|are|was|were) (?:\S+ ){0,9}?(?:help|helped|helping|work|worked|working|change something|
  changed something|change things|help something|help any|help much|help at all|do something|did something|do much|do any good|bring something|
  brought something|bring anything|improve anything|improve something|improve things|improved things|improved anything|make it better|
  make things better|have been a help|been a help|been any help|been of use|make any difference|made any difference|make any odds|made any odds|
  make a difference|made a difference|making a difference|making any difference|do anything|doing anything|done anything|doing any good|do any good|
  done any good|worth it|worth the money|pay off|paid off|paying off|worthwhile|doing its job|become better|become warmer|become any better|
  become any warmer|got better|got warmer|gotten better|gotten warmer|got any better|got any warmer|been warmer|been better|been any warmer|gone better|
  change anything|changed anything|matter|mattered|make it warmer|made it warmer|worth having|effective|any good|any use|any better|better than|
  been worth|earning its keep|earned its keep|pulling its weight|money well spent|doing the trick|have an effect|have any effect|had an effect|
  had any effect|having an effect)
`;
const HOW_MUCH = wordings`
  how much (?:did|does|do|has|have|warmer (?:is|are|was))
  what (?:did|does|do|has|have) (?:\w+ |@\w+ ){0,5}?(?:gain|gained|bring|brought|give|given|gave|buy|bought|add|do for)
  what difference (?:did|does|do|has|have)|is it (?:\w+ )?(?:warmer|better) (?:since|with|after)|any (?:difference|effect|benefit) (?:from|of|with)
  (?:effect|benefit) of|worth it are we
  (?:put up|put in|added|installed|built|bought|fitted) (?:\w+ ){0,2}?(?:worth|any better|any good)
  (?:are|is) (?:we|it|the &inside) (?:any )?(?:warmer|better off) (?:since|now|with|for)
`;
const THINGS = / (?:\w+ing|that|it|this|they|those|change|changes|changed|put|did|new|upgrade|improvement|work|fix|@\w+) /;

/** Whether a change to the house helped. */
export function effect(message: Message): Intent | null {
  const { said } = message;
  if (!message.asks && !/^ (?:effect of|difference from) /.test(said)) return null;
  if (/ (?:coming|next) (?:few )?(?:days|nights|week) /.test(said)) return null;
  if (/ (?:would|will|if|should|(?<! do )you|do i|do we|how does this|how do you) /.test(said)) return null;
  if (!(HELPED.test(said) || HOW_MUCH.test(said)) || !THINGS.test(said)) return null;
  const items = itemsSaid(said);
  return items.length === 0 ? { kind: 'effect' } : { kind: 'effect', items };
}
