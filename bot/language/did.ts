import { amountsSaid, numbersAreSettings } from './amounts.js';
import { unclear, type Intent, type Item } from './intent.js';
import { itemsSaid } from './items-said.js';
import { localNow } from './local-now.js';
import type { Message } from './message.js';
import { nightMeant } from './night.js';
import { anyLine, listed, wordings } from './wordings.js';

/** Words that say an item stands as it should for a cold night, and words that say the opposite. */
const SHUT = 'shut|closed|down|drawn|sealed|latched|lowered|buttoned|zipped|secured|cranked down';
const OPEN = 'open|opened|uncovered|rolled up|cracked|ajar|wide open';
const ON = listed(`
  on|running|going|lit|in place|in|over|over the bed|over the beds|set|ready|full|plugged in|covered|pulled|pulled over|tucked|tucked in
  buttoned up|filled|deployed|out|up and running|burning|humming|fired up|on duty|clipped down|pinned down|tied down|in position|weighted down
`).join('|');
const OFF = 'dead|died|broke|quit|failed|off|removed|unplugged|broken|out of service|stopped|not running';
const ACTED = listed(`
  put|laid|threw|thrown|placed|pulled|turned|switched|fired|started|set|got|used|filled|topped|closed|shut|lit|fired|stoked|clipped|pinned
  pegged|rigged|battened|buttoned|zipped|cinched|latched|secured|strapped|chucked|wrapped|ran|plugged|drew|dropped|lowered|covered|did|left
  kept|spread|tossed|popped|draped|cranked|running|added|lighted
`).join('|');
const TAKEN_AWAY = 'pulled back|peeled back|folded back|lifted|took|taken|removed|pulled off|rolled up|opened|uncovered|unplugged|switched off|turned off';
const NEGATED = wordings`
  not|no|nobody|no one|none of us|never|forgot|forgotten|without|skipped|skip|skipping|none|nothing|neither|nor|left off|could not|missed|except|haven't|unable|never got around
  not get around|not got around|did not manage|not bothered|gave up on|ran out of time|can wait|will wait|skipping|passing on|bothered|not bothering
  no need|rather not|leaving out|too tired|too late|too windy|no time
`;
const HARVESTED = / (?:picked|harvested|cut|pulled|gathered|brought in) /;
const LATER = wordings`
  will|going to (?!bed|sleep|work|town|church|the )|about to|planning|plan to|want to|need to|later|soon|on my way|heading out|off to|gonna|shall|tomorrow|thinking|considering|wondering
  not sure|maybe|might|may|went (?:out |in |over |down |up )?to (?!bed|the|my|check|see)|hope to|hoping to|going out|going in|heading|gonna|off out|trying to|in a minute
`;

const TO_COME = /(?: (?:i|we) (?:am |are )?|^ )(?:will|shall|going to|about to|plan to|planning to|off to) (?!not )(?:now |go |then |also )*(?:@cover|cover|close|shut|open|turn|put|pick|harvest|run|light|pull|set|uncover|start|do) /;

/** What was not done, or not on this night: a wish, a habit, the weather's doing. */
const UNREAL = wordings`
  wish
  (?:neighbou?rs?|mate|friend|friends|brother|everyone else|everybody else|they all) (?:has |have |had |just |all |already |next door )*(?:covered|
  closed|shut|picked|put|turned|lit|harvested)
  (?:i|we) (?:should|ought to|had better|better|need to|must) (?!have been)|should have|would have|could have|must have|if only|almost|nearly|always
  usually|normally|used to|never (?:have |ever )?@?cover|never .*before
  (?:buddy|buddies|mate|friend|neighbou?r|brother|sister|uncle|cousin|boss|aunt|nephew|lad)(?: (?!and )\w+){0,4}? (?:runs?|has|uses|keeps|swears)
  it (?:got|went|dropped|fell|was) (?:down |to |as )*(?:under|inside|beneath)|in (?:his|hers|theirs)|(?:husband|wife|hubby|missus|mum|mom|dad|he|she|they|everyone|neighbou?r) (?:says|said|thinks|reckons) (?:to|do not|not|we should|i should)|[a-z]+ says? (?:do not|not to) (?:bother|cover|close|shut|heat|run|light)
  (?:who|which|that) (?:donated|gave|made|built|brought|sold|lent)
  (?:snow|frost|ice|dew|condensation) (?:has |had )?(?:covered|on|over|under|in)
  (?:@tube|@water) (?:\w+ )?(?:froze|frozen|burst|leaking|leaks|leaked)
`;
const OTHER_NIGHT = / (?:last week|the other (?:night|day)|night before) /;
const LAST_NIGHT = / (?:last night|yesterday) /;
const NOON = 12;

/** What a thing is without, and no word on what was done with it: "propane heater, no flue". */
const LACKED = /^(?:flues?|chimneys?|thermostats?|blowers?|battery|batteries|exhaust|stack|pilot|timer|opener|lid)$/;

/** The form without what a thing is said to lack. */
function withoutLacks({ pieces, form }: Message): string {
  const lacked = pieces.flatMap(({ written }, at) => (LACKED.test(written.toLowerCase()) ? [at] : []));
  if (lacked.length === 0) return form;
  const gone = new Set<number>();
  for (const at of lacked) {
    const from = [at - 1, at - 2].find((one) => /^(?:no|without)$/.test(pieces[one]?.symbol ?? '') && pieces.slice(one + 1, at).every(({ symbol }) => /^(?:a|any|the)$/.test(symbol)));
    if (from !== undefined) for (let one = from; one <= at; one++) gone.add(one);
  }
  return ` ${pieces.filter((_, at) => !gone.has(at)).map(({ symbol }) => symbol).join(' ')} `;
}

/** "Turn on the heater": nobody did it yet, or only the ending is missing. */
const BIDS = /^ (?:please |just |now )*(?:turn|switch|close|run|light|pull|draw|uncover|leave|keep|take|open) (?!.*(?:already|done) )/;

const words = (list: string): RegExp => new RegExp(` (?:${list}) `);
const [SHUT_WORDS, OPEN_WORDS, ON_WORDS, OFF_WORDS, ACTED_WORDS, AWAY_WORDS] = [SHUT, OPEN, ON, OFF, ACTED, TAKEN_AWAY].map(words);

type State = 'done' | 'not' | null;

/** How the clause leaves its items: only vents, curtains and sides are opened and shut, the rest is on or off. */
function stateOf(whole: string): State {
  // "The sensor sits on the heater" leaves no heater on.
  const plain = whole.replace(/ (?:is |are |stays? |staying )?not (?:been )?(?:running|lit|going|burning|used|in use|plugged in|switched on|turned on|working|set up) /, ' off ');
  const clause = ACTED_WORDS?.test(plain) === true ? plain : plain.replace(/ (?:on|in|over|under) (?:the |my |our |a )(?=@)/g, ' ');
  const away = AWAY_WORDS?.test(clause) === true && !/ (?:took|taken) .*\b(?:on|in)\b/.test(clause);
  const reversed = / @heater (?:is |has |about |nearly |almost |gone )+out (?!of )/.test(clause) || / @\w+ (?:\w+ )?(?:tripped|went out|cut out|gone out|blew out|conked out|packed (?:up|in)|burned out|burnt out) /.test(clause) || OPEN_WORDS?.test(clause) === true || OFF_WORDS?.test(clause) === true || away;
  const stands = SHUT_WORDS?.test(clause) === true || ON_WORDS?.test(clause) === true || ACTED_WORDS?.test(clause) === true || HARVESTED.test(clause) || wordings`
    (?:everything|all|all of it|lot|beds?|plants|crops|they|them|%\d+) (?:is |are |all |now |snug |safe |tucked |warm )*(?:under|beneath|
    underneath) (?:the |their |its |a )?@cover
  `.test(clause) || / @heater (?:is )?(?:at|set to|to) #\d/.test(clause) || / @heater #\d/.test(clause) || / @\w+ (?:yes|yep|y|check|checked|tick|sorted|done) $/.test(clause);
  // "Heater left off" is one word on it, and no two that cancel each other.
  const negated = NEGATED.test(clause.replace(/ left off /g, ' off '));
  if (reversed) return negated ? 'done' : 'not';
  if (negated) return 'not';
  return stands ? 'done' : null;
}

/** What stays the same from night to night is done only where somebody did something with it: "frost on the film" is no deed. */
const LASTING: ReadonlySet<Item> = new Set(['film', 'layer', 'wall', 'stones', 'compost']);

function itemsOf(clause: string): readonly Item[] {
  const verbs: Item[] = [];
  if (/ (?:cover|covered|covering|uncovered|tucked|wrapped|bundled) /.test(clause) && !/ @cover /.test(clause)) verbs.push('cover');
  if (HARVESTED.test(clause) && / %\d/.test(clause)) verbs.push('harvest');
  if (wordings`
    harvested
  (?:picked|cut) (?:all |most of )?the (?:good|best|ripe|ready|big) (?:stuff|ones|leaves|bits)
  (?:picked|cut|pulled) (?:all |both |every |the |last )*(?:=\d+|rows?|beds?|row|bed)
    picked (?:everything|it all|it|them|what i could|what we could|what was ready|what there was|what is ready|a few|some|plenty|most of it|all i could|
    all we could|the ripe ones|the best of it|the rest|all of it|the lot)
  `.test(clause)) verbs.push('harvest');
  if (/ (?:shut|closed) (?:it |them |the place |&inside )?(?:everything|all|it all|it|&inside)(?: |$)/.test(clause)) verbs.push('vents');
  if (/ (?:lit|fired up|started|turned on|got|stoked|running|cranked up|switched on) (?:the |up the |my )?(?:propane|gas|kerosene|paraffin|diesel|fire|woodfire|logs) (?!empty|low)/.test(clause) && !/ got (?:the )?(?:gas|propane|kerosene|paraffin|diesel) (?!going|on|running|lit)/.test(clause)) verbs.push('heater');
  const said = itemsSaid(clause).filter((item) => ACTED_WORDS?.test(clause) === true || !LASTING.has(item));
  return [...new Set([...verbs, ...said])];
}

const ALL_DONE = wordings`
  ^ (?:i |we |i have |it is |that is |that is me |all |everything |everything is |i am |we are |yep |yes |ok )*(?:did (?:it|that|them|all that|
  all of that|all of them|all|everything|all of it|it all|the lot|so)|done|finished|complete|completed|all set|taken care of|sorted|buttoned up|
  tucked in|ready for the night|good to go|battened down|as you said|followed the plan|did what you said|shut up|(?:closed|shut|buttoned|locked|tucked|
  zipped|battened|sealed|wrapped|put) (?:it|her|him|them|everything|everything up|the &inside|the place|all|it all|&inside|everybody|everyone|
  the plants|the beds) (?:up|in|down|to bed|away)|closed up|locked up|all locked down|all in hand|all squared away|squared away|shipshape|as instructed|
  as planned|as per plan|as per the plan|all systems go|mission accomplished|jobs done|job done|me done|done for the night|put to bed|snug)(?: (?:all|
  now|it|already|everything|boss|thanks|for|the|night|tonight|so far|and|ready|chief|as|you|said|told|me))* $
`;
const NOTHING_DONE = wordings`
  ^ (?:i |we |have |sorry |nah |no |nope |naw |ah |well |am )*(?:did nothing|(?:none|nothing) of (?:it|them|that) (?:is |was |got |has been )?done|
  none done|did none of it|did sod all|did bugger all|not a thing done|have done nothing|haven't done any of it|could not be bothered|not bothered|
  can not be bothered|did not get round to (?:it|any of it|that)|never got round to it|never did it|did not do (?:it|that|anything|any of it|any)|
  not done|have not done (?:it|that|anything)|nothing done|did not|nope|did not get to it|did not bother|did not have time|had no time|could not do it|
  forgot|i forgot|(?:(?:will|am|are|going to|think i will|i will|i am) )*(?:skip|skipping|skipped|passing on|leaving|not doing|not bothering with|
  giving) (?:it|that|this|them|all of it|the plan|the lot|tonight|it all)(?: a miss)?|skip|skipping|(?:rather |probably |definitely )?not (?:tonight|
  this evening|this time)|(?:am |are |will )?not (?:going to|(?:be )?doing (?:it|that|anything|any of it))(?: (?:do it|do that|bother|
  go out))?)(?: (?:tonight|yet|it|sorry|anything|this|evening|time|thanks|then|today|now))* $
`;
const ALL_BUT = / (?:all|everything|did it all|done all|the lot) .*?(?:but|except|except for|apart from|bar|save for|other than) /;

/** "Covered everything but did not run the fan": one deed was done everywhere, and not the whole plan. */
const ONLY_ONE_DEED = / (?:covered|closed|shut|picked|harvested|tucked|wrapped) .*(?:everything|all|the lot) .*but (?:(?:i|we) )?(?:did not|have not|could not|forgot|left|never|no) /;

function move(item: Item, from: Set<Item>, to: Set<Item>): void {
  from.delete(item);
  to.add(item);
}

const withAmounts = (message: Message, items: readonly Item[]): Pick<Extract<Intent, { kind: 'did' }>, 'amounts'> => {
  const said = Object.entries(amountsSaid(message) ?? {}).filter(([item]) => (items as readonly string[]).includes(item));
  return said.length === 0 ? {} : { amounts: Object.fromEntries(said) };
};

/** "Used 12 bricks to hold it": stones that hold a cover down store no heat. */
const HOLDS_DOWN = / (?:(?:i )?(?:used|using|with|put)|@stones on the edges) (?:=\d+ |some |a few |the |few |big )*@(?:stones|water|wall) (?:to|for|on top to) (?:hold|weigh|keep|pin|secure|stop|holding|weighing|pinning|keeping) (?:\w+ )*/g;

/** "Covered everything except the kale": what is left out is no thing of ours, and the rest stands. */
const withoutExceptions = (form: string): string => form.replace(HOLDS_DOWN, ' ').replace(/ (?:except|except for|apart from|save for|other than|all but|but not|not) (?:(?:for|the|my|our|%\d+|and|one|bed|beds|\*label) )+$/, ' ');

/** What says the same in other words: "I'll leave the heater off tonight" is settled, and not something to come. */
const SAME: readonly (readonly [RegExp, string])[] = [
  [/ (?:just|only) ((?:the |my )?@\w+ )(?:(?:[,;] )?(?:nothing else|nothing more|that is all|that is it|so far|for now|tonight|though|and that is it) )+/g, ' did $1'],
  [/ nothing (?:else|more) /g, ' '],
  [/ (?:just|only) (?<= (?:no|not|without) .*)(?=(?:the |my )?@\w+ $)/g, ' , did '],
  [new RegExp(String.raw` (?:(?:i|we) )?(?:will|am|are|think i will|going to|am going to|are going to)(?: just| probably)? (?=(?:${anyLine(String.raw`
    leave|leaving|keep|keeping|skip|skipping|pass|passing|give|giving
    not (?:bother|bothering|use|using|run|running|light|lighting|put|putting|do|doing)
  `)}) )(?!.* (?:if|until|when|once|later) )`, 'g'), ' '],
  [/ (?:leave|leaving) (?=[^#]* off )/g, ' left '],
  [/ (?:give|giving|gave) ((?:\S+ ){1,3}?)(?:a|the) miss(?= )/g, ' skipped $1'],
  [/ too \w+ for (?:the )?(?=@)/g, ' no '],
  [/ (?:never mind|sod|saving|spare|spared) (?:about )?(?:the )?(?=@)/g, ' no '],
];
const asDecided = (said: string): string => SAME.reduce((sofar, [found, instead]) => sofar.replace(found, instead), said);

/** What the grower says was done tonight, or was not. */
export function did(message: Message): Intent | null {
  const said = asDecided(message.said);
  const form = asDecided(withoutExceptions(withoutLacks(message)));
  if (ALL_DONE.test(said)) return { kind: 'did' };
  if (NOTHING_DONE.test(said) && !message.form.includes(' ? ')) return { kind: 'did', done: [] };
  if (message.asks) return null;
  // "With the curtain but no heater" may be asked or told.
  if (/^ with /.test(said) && ACTED_WORDS?.test(said) !== true) return null;
  if (UNREAL.test(said) || /^ not (?:under|beneath|in|inside|outside|by|at|from) | (?:installing|building|fitting|mounting) /.test(said)) return null;
  if (ALL_BUT.test(said) && !ONLY_ONE_DEED.test(said) && itemsSaid(said).length > 0) {
    const not = itemsOf(said.slice(said.search(/ (?:but|except|apart from|bar|save for|other than) /)));
    return not.length === 0 ? null : { kind: 'did', not, rest: true };
  }
  if ((TO_COME.test(said) || BIDS.test(said)) && itemsOf(said).length > 0) return unclear('done-yet');
  if (message.temps.length > 0 && !numbersAreSettings(message)) return null;
  const lists: Record<'done' | 'not', Set<Item>> = { done: new Set(), not: new Set() };
  let waiting: Item[] = [];
  let before: State = null;
  let lastItems: readonly Item[] = [];
  for (const part of form.split(/ (?:[,;:/]|and|but|then|plus|though|while) | (?<=(?:everything|all|them|beds|lot|up|down|shut|closed|off|on|running|lit|%\d+) )(?=@\w+ (?:is |are )?(?:off|on|out|shut|closed|down|open|running|lit) )| (?=(?:did not|have not|could not) (?:bother|get|do|put|run|light|use|cover|close|shut) )/)) {
    const clause = ` ${part.trim()} `;
    const items = itemsOf(clause);
    const own = stateOf(clause);
    if (own === null && items.length > 0 && before === null) waiting.push(...items);
    const state: State = own ?? before;
    // "The heater is filled but not lit": the same thing, as it is now.
    if (own === 'not' && items.length === 0 && lastItems.length > 0 && / not (?:lit|on|running|going|burning|plugged in|switched on|turned on|started) |^ (?:no|nope|nah) $/.test(clause)) for (const item of lastItems) move(item, lists.done, lists.not);
    if (items.length > 0) lastItems = items;
    if (state !== null) for (const item of [...waiting, ...items]) lists[state].add(item);
    if (state !== null) waiting = [];
    if (items.length > 0) before = state;
  }
  // "Forgot the vents, just done it now".
  if (/ (?:just |have |now )*(?:did|done|doing) (?:it|that|them)(?: just| now)* $/.test(form) && lists.done.size === 0 && / (?:forgot|forgotten) /.test(form)) [lists.done, lists.not] = [lists.not, lists.done];
  const done = [...lists.done].filter((item) => !lists.not.has(item));
  const not = [...lists.not].filter((item) => !lists.done.has(item));
  const torn = [...lists.done].some((item) => lists.not.has(item));
  if (torn || (done.length === 0 && not.length === 0)) return null;
  if (LATER.test(said)) return unclear('done-yet');
  // By the next afternoon what was done last night is no deed of the night to come.
  if (OTHER_NIGHT.test(said) && !/ tonight /.test(said) && localNow(message).hour >= NOON) return unclear('which-night');
  const last = LAST_NIGHT.test(said) && !/ (?:tonight|today|this evening) /.test(said) ? nightMeant({ ...message, said: ' last night ' }) : null;
  if (last !== null && 'kind' in last) return last;
  if (/ (?:but )?not (?:tonight|yet|today) $/.test(said) && not.length === 0) return { kind: 'did', not: done };
  return { kind: 'did', ...(done.length === 0 ? {} : { done }), ...(not.length === 0 ? {} : { not }), ...withAmounts(message, [...done, ...not]), ...(last === null ? {} : { night: last.night }) };
}
