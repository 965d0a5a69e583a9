import { topicOf } from './advice.js';
import { namedCrops } from './crop-question.js';
import { effect } from './effect.js';
import type { Intent, PlainKind } from './intent.js';
import { itemsSaid } from './items-said.js';
import type { Message } from './message.js';
import { nightMeant } from './night.js';
import { outlookMeant } from './outlook.js';
import { wordings } from './wordings.js';

/** Longer messages say more than a word or two of them can tell. */
const MOST_WORDS = 20;
const FEW_WORDS = 7;

const PLAIN: readonly (readonly [PlainKind, RegExp])[] = [
  ['stop', wordings`
    (?:stop|quit|cease|no more|enough|sick|tired|done) (?:\w+ ){0,3}?(?:messages?|messaging|texts?|texting|sending|writing|contacting|bothering)
    count me out|get lost|not interested|no longer interested|leave me out|go away|buzz off|had enough of (?:you|this)
  `],
  ['start', wordings`
    (?:start|begin|join|sign up|take part)(?: (?:please|now|again|with this|using (?:it|this)))* $
    (?:sign|put|count|add|get|let) (?:me|us|him|her|them|my \w+) (?:up|in|down|on the list|to the list|on board|onto the list)
    (?:want|like|love) to (?:join|try (?:this|it)|take part|sign up|use this|be part)
  `],
  ['settings', wordings`
    settings?|preferences
    (?:text|message|send|ping|call|buzz|wake|write) (?:me |us |anything )?(?:before|after|until|till|past|later than|earlier than|no earlier|no later)
    (?:stop|pause|hold|quiet|hush|silence|hold off|no texts|no messages)(?: \w+){0,3} (?:for|until|till|over|this|while)
    what (?:is|are) my (?:location|time|units?|address|number|name|zone|place|town)
    (?:in|to|use|prefer|want|like) (?:f|c|degrees c|degrees f)(?: please| instead)* $
  `],
  ['help', / (?:help|commands?|instructions) | what (?:\w+ ){0,3}?can (?:you|i ask) | what (?:\w+ ){0,2}?do you do | what do i do with (?:this|it|you) /],
  ['export', / (?:csv|spreadsheet|excel) /],
  ['why', / (?:(?:what|which|the|your) reasons?|reasoning|how come|what makes you|went wrong|go wrong|explain) /],
  ['record', wordings`
    accuracy|accurate|track record|reliable|trust you|how good are you|ever wrong|ever right
    (?:you|your \w+|forecast) (?:were|was|got it|had it|is|are) (?:\w+ )?(?:spot on|bang on|right|wrong|off|out|close|way off|miles off|way out|dead on|
    not far off|nowhere near)
  `],
  ['history', wordings`
    (?:how|what) (?:has|have|did|was|were) (?:the |my |our |it |this |i |we |you )*(?:winter|week|month|season|year|been|told you|sent|reported|written|
    written down|noted|so far)
    ^ (?:the |my )?(?:past|last|previous) (?:week|month|winter|few nights|nights|night|readings)
  `],
  ['next', / (?:best|wisest|smartest|cleverest|first|cheapest) thing (?:\w+ )?(?:to|i|we) |^ what (?:is )?next $/],
];

const FIX = / (?:delete|remove|cancel|scrap|erase|drop|undo) (?:\w+ ){0,3}?(?:last|latest|previous|that) (?:\w+ ){0,1}?(?:reading|measurement|number|value|temperature|entry|one) /;
const NEXT = / (?:build|improve|improvements?|upgrades?|invest|project) /;
const THANKS = / (?:thanks|thank|cheers|best|appreciate|appreciated|goodnight|lovely|star|legend) /;
const AHEAD = / (?:tonight|tomorrow|this night|next night|\w+day night|this week|next week|the week|the weekend|few nights|few days|nights|before (?:morning|dawn|sunrise)|(?:christmas|xmas|boxing|thanksgiving|new year) (?:eve|day|night)) /;
/** "Minus what tonight", "next few nights bad or what". */
const ASKS_ANYHOW = / (?:what|how|which|or what|or not|any) /;
/** What somebody does, has or grows is no question of the weather alone. */
const OF_DEEDS = / (?:do|doing|did|done|cover|covering|close|closing|open|opening|heat|heating|light|pick|picking|harvest|water|watering|build|buy|add|record|right|wrong|trust|help|message|messages|text|texts|make it|survive|survives|live|die|pull through|safe|ok|them|they) /;
const FEW_NIGHT_WORDS = 5;
const COLD = / (?:frost|frosts|frosty|freeze|freezing|freezes|cold|colder|chilly|mild|warm|warmer|bad|as bad|low|minimum|temperature|degrees|weather|forecast|outlook) /;
const PAST = / (?:last|yesterday|was|were|did|have been|has been|so far) /;

/**
 * The last resort for a message that no rule knows: a word or two that hardly ever mean another thing. None of what is found
 * so writes down a number or a deed; the most it does is to take the last reading back or to be quiet, and both can be undone by a word.
 */
export function keyWords(message: Message): Intent | null {
  const { said, asks } = message;
  const words = said.trim().split(' ').length;
  if (message.temps.length > 0 || words > MOST_WORDS) return null;
  const plain = PLAIN.find(([kind, pattern]) => pattern.test(said) && !(kind === 'next' && / (?:tonight|this evening) /.test(said)));
  if (plain !== undefined) return { kind: plain[0] };
  if (asks && !/ would /.test(said) && / any (?:improvement|better|warmer|change|difference) (?:\w+ )?(?:since|from|with|after) /.test(said)) return { kind: 'effect', ...(itemsSaid(said).length === 0 ? {} : { items: itemsSaid(said) }) };
  if (FIX.test(said)) return { kind: 'fix' };
  if (NEXT.test(said) && / (?:next|first|best|most|should) /.test(said)) return { kind: 'next' };
  if (message.hits.length > 0 && AHEAD.test(said)) return cropAhead(message);
  const asksAnyhow = ASKS_ANYHOW.test(said) || (asks && COLD.test(said));
  const isOfNight = message.hits.length === 0 && itemsSaid(said).every((item) => item === 'cover' && / under (?:the |my )?@cover /.test(said)) && !OF_DEEDS.test(said) && !PAST.test(said);
  if (asksAnyhow && isOfNight && AHEAD.test(said)) return outlookMeant(message);
  // "Overnight low please".
  if (isOfNight && words <= FEW_NIGHT_WORDS && / (?:low|lows|minimum|temperature|forecast|frost) /.test(said) && / (?:please|tonight|tomorrow|overnight|ahead) /.test(said)) return outlookMeant(message);
  if (asks && itemsSaid(said).length === 0 && message.hits.length === 0 && COLD.test(said) && !PAST.test(said)) return outlookMeant(message);
  const isWithout = /^ without /.test(said);
  if (/^ (?:with|without) /.test(said) && itemsSaid(said).length > 0 && !/ (?:no|not) /.test(said)) return { kind: 'suppose', [isWithout ? 'without' : 'items']: itemsSaid(said) };
  const topic = topicOf(said);
  // "Double fleece or single tonight".
  if ((asks || (/ or /.test(said) && AHEAD.test(said))) && topic !== null && message.hits.length === 0 && !PAST.test(said) && !/ what (?:is|are) (?:a |an )?@\w+ /.test(said)) return { kind: 'advice', topic };
  return words <= FEW_WORDS && THANKS.test(said) ? { kind: 'chat' } : effect(message);
}

function cropAhead(message: Message): Intent | null {
  const crops = namedCrops(message);
  const night = nightMeant(message);
  if ('kind' in crops || 'kind' in night) return null;
  const [only, ...more] = crops;
  if (only === undefined) return null;
  return more.length === 0 ? { kind: 'crop', crop: only, night: night.night } : { kind: 'crop', crops, night: night.night };
}
