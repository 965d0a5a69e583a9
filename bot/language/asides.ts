import { withPieces, type Message } from './message.js';
import type { Piece } from './piece.js';
import { wordings } from './wordings.js';

const list = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

/** Words that a clause must hold, where it names no place, thing, crop or number, to be more than an aside. */
const TRADE = list(`tonight tomorrow overnight frost frosts frosty freeze freezing freezes frozen cold colder coldest cool warm warmer mild low lows lowest high
  minimum maximum temperature degrees thermometer reading readings snow snowing wind storm rain weather forecast cover covered covering
  uncover uncovered closed close shut open opened vent heat heating turned switched lit picked harvest harvested pick did done do doing forgot
  skipped survive survived survives make dead died alive fine hurt burnt nipped wilted damage damaged black crop crops plants beds bed power
  electricity mains gas propane fuel blower door doors film roof torn ripped tear hole message messages text texts settings celsius fahrenheit
  units stop start help delete erase data export csv spreadsheet download copy record records history log rundown advice plan prepare should
  shall need must what how when why will would if suppose build built add added buy install installed wrong meant mistake correction scratch
  ignore forget undo wait not no yes`);

/** Greetings, hopes, thanks and excuses, whatever they speak of. */
const PLEASANT = wordings`
  (?:hope|hoping|trust) (?:you|this|that you|all|everyone|everybody|ye)
  (?:sorry|apologies|forgive me|excuse me|pardon) (?:to|for|about|if|i am|that i|the|again|,)|(?:sorry|apologies|forgive me|excuse me|pardon) $
  thanks|thank you|cheers|ta|much obliged|much appreciated|appreciate it|bless you|god bless|grateful
  (?:good (?:morning|evening|afternoon|day|night|man|lad|on you)|hello|hi|hey|hiya|howdy) (?:again|there|all|everyone|from|dear|my|to you|pal|mate|love|
  friend)|(?:good (?:morning|evening|afternoon|day|night|man|lad|on you)|hello|hi|hey|hiya|howdy) $
  how are you|how is it going|hope all is well|long time no|happy (?:new year|christmas|easter|birthday)|merry christmas|have a (?:good|nice|great|lovely)
  take care|sleep well|sweet dreams|best (?:wishes|regards)|kind regards|yours|love from|if you do not mind|if that is ok|if you can
  when you get a (?:chance|minute|moment)|no rush|(?:quick|dumb|silly|stupid|honest|fair dinkum) question|just wondering|i was wondering|one more thing
  by the way|not to worry|do not worry|no worries|if you please|please and thank you|i like to plan ahead
  first time (?:using|doing|here)|new (?:here|to this|at this)
`;
/** Whom and what growers speak of that is no part of the house: with a person the clause is about that person. */
const OTHERS = wordings`
  (?:my|our|the|his|her|me|your) (?:\w+ )?(?:wife|husband|hubby|missus|son|daughter|grandson|granddaughter|grandkids|grandchildren|grandad|granny|mum|
  mom|dad|mother|father|kids?|children|boys?|girls?|baby|friend|mate|neighbou?rs?|boss|uncle|aunt|auntie|sister|brother|nephew|niece|cousin|dog|cat|
  horse|chickens|hens|knees?|back|hip|hands?|fingers?|feet|toes|eyes|coffee|tea|breakfast|dinner|supper|car|truck|van|tractor|tutor|teacher|doctor|
  birthday|dissertation|thesis|homework|exam|book)
`;

const isEmpty = (clause: readonly Piece[]): boolean => clause.every(({ symbol }) => /^[^\w&@%#~$=*]+$/.test(symbol));

function isAside(clause: readonly Piece[]): boolean {
  const said = ` ${clause.map(({ symbol }) => symbol).join(' ')} `;
  if (clause.some(({ symbol }) => /^[#~@%$]/.test(symbol))) return false;
  if (PLEASANT.test(said)) return true;
  if (DEPTH.test(said) || SOMEBODY.test(said)) return !said.includes(' ? ');
  return (!clause.some(({ symbol }) => symbol.startsWith('&') || TRADE.has(symbol)) || OTHERS.test(said)) && !said.includes(' ? ');
}

/** Words that may be taken out of a message without a number and leave it with its meaning. */
const FILLERS = list(`even actually really just ever exactly maybe then also kindly possibly quickly perhaps probably honestly basically literally like so well ok
  anyway wait hey hmm dear mate friend pal love um er oh ah please though right still seriously simply finally sure yeah yep definitely
  already again there bit quite very pretty absolutely`);

const ENDS = /^[;,?:]$/;
/** A clause goes on with these: "slept in a bit but the low was 14". */
const JOINTS = /^(?:but|and|so|because|though|although)$/;
/** "Half an inch of frost on everything". */
const DEPTH = / (?:=\d+|half an inch|an inch|inch|bit|touch|lot|lots|layer) of (?:frost|ice|dew|rain|fog|hail) /;
/** Somebody at home, at the beginning of a clause: "wife thinks I'm nuts". */
const SOMEBODY = wordings`
  ^ (?:and |but )?(?:the )?(?:wife|hubby|husband|missus|mum|mom|dad|kids|dog|cat|neighbou?rs?|everyone|everybody|people) (?:thinks?|says?|reckons?|
  laughs?|is|are|was|were|loves?|hates?|wants?)
`;

/** The message without its asides; null where it has none, or is nothing else. */
export function withoutAsides(message: Message): Message | null {
  const clauses: Piece[][] = [[]];
  for (const piece of message.pieces) {
    if (JOINTS.test(piece.symbol)) clauses.push([]);
    clauses.at(-1)?.push(piece);
    if (ENDS.test(piece.symbol)) clauses.push([]);
  }
  const spoken = clauses.filter((clause) => clause.length > 0);
  const kept = spoken.filter((clause) => !isAside(clause));
  return kept.length === spoken.length || kept.every(isEmpty) ? null : withPieces(message, kept.flat());
}

/** The message without words that add nothing; null where it has none, or holds a number. */
export function withoutFillers(message: Message): Message | null {
  const kept = message.pieces.filter(({ symbol }) => !FILLERS.has(symbol));
  return message.temps.length > 0 || kept.length === message.pieces.length || isEmpty(kept) ? null : withPieces(message, kept);
}

const KIND = wordings`
  thanks|thank you|cheers|ta|much obliged|much appreciated|appreciate (?:it|you|that)|bless you|god bless|grateful|treasure|star|legend|lifesaver|gem
  diamond|angel|marvel|wonder|wonderful|brilliant|fantastic|best|genius|hero|champion|beauty|beaut|ripper|saved my|saved me|no bother|sound|well done
  nice (?:one|job|work)
  good (?:morning|evening|afternoon|day|night|man|lad|lass|girl|boy|on you|one|job|work|stuff|bot|thing|call)|hello|hi|hey|hiya|howdy
  how are (?:you|things)|how is (?:it going|yourself|life|tricks)|happy (?:new year|christmas|easter|birthday)|merry christmas|take care|sleep well
  sweet dreams|kind regards|no worries|love (?:it|this|you)
`;

const bare = (plain: string): string => ` ${plain.replace(/[^a-z']+/g, ' ').trim()} `;

/** What is told for joy. */
const LIFE = / (?:birthday|cake|wedding|party|grandson|granddaughter|hockey|football|game|match|won|newborn|graduated|anniversary|turned (?:today|yesterday)|years? old today|old today) /;
const ASKS_AFTER_US = / (?:how are (?:you|things)|how is (?:it going|yourself|life|tricks)) /;

/** Whether a message is nothing but kind words. */
export const isOnlyPleasant = ({ plain, pieces, asks }: Message): boolean =>
  (!asks || ASKS_AFTER_US.test(bare(plain))) && (KIND.test(bare(plain)) || LIFE.test(bare(plain))) && !pieces.some(({ symbol }) => (LIFE.test(bare(plain)) ? /^[#~@$%]/ : /^[#~@$&]/).test(symbol));

/** Words of any talk, which do not make it one of the trade. */
const OF_ANY_TALK = list('did do done doing make should shall need must what how when why will would if wait not no yes fine black add added buy start stop high low cool warm wrong');
const FEWEST_WORDS = 5;
/** People, animals, meals, feasts and pains: what small talk is of. */
const DAILY_LIFE = list(`wife husband hubby missus mum mom dad mother father granny grandma grandad grandpa nan kid kids child children son daughter boy boys girl girls
  lad lads baby twins friend friends mate neighbor neighbour neighbors neighbours uncle aunt sister brother cousin nephew niece family guests
  people crowd dog dogs cat cats cow cows calf horse horses sheep lamb lambs ewe goat goats hen hens chooks chickens pig pigs kitten puppy dinner
  supper lunch breakfast tea coffee beer pie pies cake oven turkey roast soup stew pub church school wedding party birthday christmas xmas easter
  holiday holidays match game football hockey rugby footy telly movie book guitar choir truck tractor car bus train plane dentist doctor hospital
  knee knees back shoulder cold flu fever nap sleep asleep bed tired knackered exhausted wrecked thesis exam exams homework class job boss
  retirement pension anniversary`);

/** Whether a message tells of people and their days, and of nothing that the house or the weather has to do with. */
export function isSmallTalk({ plain, pieces, asks, form }: Message): boolean {
  const words = pieces.filter(({ symbol }) => /^[a-z]/.test(symbol));
  if (asks || words.length < FEWEST_WORDS || pieces.some(({ symbol }) => /^[#%@&$]/.test(symbol))) return false;
  return (words.some(({ symbol }) => DAILY_LIFE.has(symbol)) || OTHERS.test(form) || LIFE.test(bare(plain)) || PLEASANT.test(form)) && !words.some(({ symbol }) => TRADE.has(symbol) && !OF_ANY_TALK.has(symbol));
}
