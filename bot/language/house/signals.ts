import { plainText } from '../plain-text.js';

/** A word that steers the conversation and tells nothing of the greenhouse. */
export type Signal =
  | { readonly kind: 'skip' | 'back' | 'later' | 'done' | 'summary' | 'help' | 'yes' | 'no' | 'unknown' | 'restart' | 'start' }
  /** "Change 3": a line of the summary. */
  | { readonly kind: 'line'; readonly line: number }
  /** "2", where choices stand: which of them. */
  | { readonly kind: 'number'; readonly number: number };

type Plain = Exclude<Signal['kind'], 'line' | 'number'>;

const SIGNALS: readonly (readonly [Plain, RegExp])[] = [
  ['restart', /^(?:start over|start again|begin again|from scratch|restart|new start|all over again)$/],
  ['start', /^(?:start|go|begin|continue|go on|carry on|resume|lets go|let us go|let's go|go ahead|hi|hello|hey|hiya|good (?:morning|evening|afternoon)|ready|set up|setup)$/],
  ['skip', /^(?:skip(?: (?:it|this|that|one|this one|that one|question|the question))?|pass|next|next one|next question|leave it|leave it out|move on|ignore|ignore it|don't bother|never mind|nevermind)$/],
  ['unknown', /^(?:(?:i )?(?:don't|dont|do not) (?:really )?(?:know|remember)(?: (?:that|it|yet|right now|offhand|sorry))?|dunno|no (?:idea|clue)|not sure|unsure|idk|(?:i'm |i am |im )?not sure|(?:i )?have no idea|(?:i )?haven't measured(?: it)?|couldn't say|can't say|who knows|\?\?+)$/],
  ['back', /^(?:back|go back|previous|last one again|one back|step back|back up|the one before|previous question)$/],
  ['later', /^(?:stop|later|not now|pause|another time|wait|busy|brb|i'll do it later|do it later|maybe later|tomorrow|some other time|got to go|gotta go|i have to go|have to go|bye|quit|cancel|enough for now|that's enough for now|enough for today|stop here)$/],
  ['done', /^(?:done|finish|finished|i'm done|im done|all done|that's all|thats all|that is all|that's it|thats it|that is it|that's everything|that is everything|enough|that's enough|no more questions|end|skip (?:the rest|them|them all|all|everything|the others|all (?:of it|of them|the rest))|leave the rest|the rest later|nothing else|no more)$/],
  ['summary', /^(?:summary|read ?back|read it back|what do you have|what have you got|what have you|what did you understand|what do you know|show me|show|show it|show me what you have|list|list it|recap|check|let me check|my greenhouse|the greenhouse|describe it|change|edit|change something|i want to change something|change it|settings)$/],
  ['help', /^(?:help|why|how|what|huh|pardon|what do you mean|how do you mean|what does that mean|why do you (?:ask|need that|need this|want that|want to know|need to know)|what for|how do i (?:measure|know|tell|find out)(?: (?:it|that))?|example|for example|give me an example|such as|like what|explain|i don't understand|i dont understand|don't understand|what's that|whats that|what is that|\?)$/],
  ['yes', /^(?:yes|y|yep|yeah|yup|yea|ya|ok|okay|okey|k|sure|correct|right|that's right|thats right|that is right|exactly|true|fine|good|looks good|sounds good|all right|alright|agreed|i agree|understood|i understand|i have read (?:it|that|them|this)|i've read (?:it|that|them|this)|ive read (?:it|that)|read|read it|got it|i do|i have|we do|we have|of course|please|yes please|confirm|confirmed|noted|will do|is right|it is|si|ja|oui)$/],
  ['no', /^(?:no|n|nope|nah|none|nothing|neither|no thanks|no thank you|not any|none at all|nothing at all|nothing there|i don't|i dont|we don't|we dont|we do not|i do not|i haven't|we haven't|(?:i|we) (?:don't|dont|do not|haven't) (?:have|got|own|use)(?: (?:any|that|those|one|it|none|any of (?:that|those|them|it)))?|not yet|no i don't|no we don't|none of (?:that|those|them|it|these)|nothing like that|zero|0|wrong|that's wrong|not right|not at all|nothing yet|never|nein|non)$/],
];

const COURTESY = /^(?:(?:ok|okay|um|uh|well|so|oh|hm+|please|thanks|thank you|actually|let's|lets|i think|i guess|yes|no)[, ]+)+(?=(?:skip|back|later|stop|done|summary|pass|next|i don't know|don't know|not sure|no idea|that's all|that is all|that's it|finished|none|nothing))/;
const TRAILING = /[, ]+(?:please|thanks|thank you|for now|sir|mate|then|i think|i guess|really|sorry|now|again|yet|today|here|in there|there|at the moment|at all)$/;
const LINE = /^(?:change|edit|fix|correct|redo|line)(?: line| number| no\.?)?\s*#?\s*(\d{1,2})(?: (?:is wrong|wrong|please|is not right|isn't right))?$|^#?(\d{1,2})(?: is| isn't)? (?:wrong|not right|right)$/;
const NUMBER = /^(?:#|no\.? ?|number |option |the )?(\d{1,2})(?:st|nd|rd|th)?(?: one)?[.)]?$/;
const ORDINALS = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth'];

/** "Ok, understood" and "no, none": several words for the same. */
function agreed(plain: string): 'yes' | 'no' | null {
  const parts = plain.split(/[,.;!]+ */).filter((part) => part !== '');
  const kinds = parts.map((part) => SIGNALS.find(([, pattern]) => pattern.test(part))?.[0]);
  return parts.length > 1 && kinds.every((kind) => kind === 'yes') ? 'yes' : parts.length > 1 && kinds.every((kind) => kind === 'no') ? 'no' : null;
}

/** The steering word that a whole message is; null where it says more than that. */
export function readSignal(text: string): Signal | null {
  let plain = plainText(text).trim().replace(/\s+/g, ' ').replace(/[.!,;]+$/, '').trim();
  const short = (): Plain | null => SIGNALS.find(([, pattern]) => pattern.test(plain) || pattern.test(plain.replace(/[?]+$/, '')))?.[0] ?? null;
  const line = LINE.exec(plain);
  if (line !== null) return { kind: 'line', line: Number(line[1] ?? line[2]) };
  const number = NUMBER.exec(plain);
  const ordinal = ORDINALS.indexOf(/^(?:the )?(\w+)(?: one)?$/.exec(plain)?.[1] ?? '');
  if (plain !== '0' && (number !== null || ordinal >= 0)) return { kind: 'number', number: number === null ? ordinal + 1 : Number(number[1]) };
  const found = short() ?? agreed(plain);
  if (found !== null) return { kind: found };
  plain = plain.replace(COURTESY, '').replace(TRAILING, '').replace(TRAILING, '').trim();
  const trimmed = short();
  return trimmed === null ? null : { kind: trimmed };
}
