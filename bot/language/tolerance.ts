import type { Intent } from './intent.js';
import { readMessage, type Heard, type Message } from './message.js';
import { wordings } from './wordings.js';

/** What a grower says of how readily to be called out, as data. Money is in the grower's own. */
export type ToleranceSaid =
  /** How many needless trips one saved bed is worth. */
  | { readonly about: 'trips'; readonly trips: number }
  | { readonly about: 'careful'; readonly careful: CareSaid }
  | { readonly about: 'careful'; readonly step: 1 | -1 }
  | { readonly about: 'trip'; readonly trip: TripSaid; readonly minutes?: number }
  | { readonly about: 'minutes'; readonly minutes: number; readonly crops: readonly string[] }
  | { readonly about: 'worth'; readonly worth: number; readonly crops: readonly string[] }
  | { readonly about: 'hour'; readonly worth: number }
  /** Wants to be asked. */
  | { readonly about: 'ask' };

export type CareSaid = 'relaxed' | 'normal' | 'careful' | 'never-lose-it';
export type TripSaid = 'easy' | 'annoying' | 'awful';

/** What an answer to one of the questions says. */
export type ToleranceAnswer =
  | { readonly worth: number }
  | { readonly weeks: number; readonly weekly?: number }
  | { readonly trip?: TripSaid; readonly minutes?: number }
  | { readonly careful: CareSaid }
  | { readonly trips: number };

const MONEY_NOUN = /^(?:[$\u00a3\u20ac]|dollars?|bucks?|euros?|pounds?|quid|francs?|crowns?|kronor|cents?)$/u;
const MINUTE_NOUN = /^min/u;
const HOUR_NOUN = /^(?:h|hr|hrs|hours?)$/u;
const WEEK_NOUN = /^(?:wk|wks|weeks?)$/u;
const MONTH_NOUN = /^months?$/u;
const TIMES_NOUN = /^times?$/u;
const MINUTES_PER_HOUR = 60;
const WEEKS_PER_MONTH = 52 / 12;

interface Numbered {
  /** A number is n0 (bare), m0 (money), d0 (minutes), w0 (weeks), t0 (times) or o0 (of something else). */
  readonly form: string;
  readonly values: readonly number[];
}

const SPOKEN: readonly (readonly [RegExp, string, number])[] = [
  [/ half an hour /u, 'd', 30],
  [/ (?:a )?quarter of an hour /u, 'd', 15],
  [/ three quarters of an hour /u, 'd', 45],
  [/ an hour and a half /u, 'd', 90],
  [/(?<! [nm]\d+) an hour(?= \$)/u, 'd', 60],
  [/ a month(?= [,$])/u, 'w', WEEKS_PER_MONTH],
];

/** The message with its numbers by what they count; courtesies and hedges are left out. */
function numbered({ form: written, temps, amounts }: Message): Numbered {
  const values: number[] = [];
  const put = (kind: string, value: number): string => `${kind}${values.push(value) - 1}`;
  const named = written.replace(/([#=])(\d+)/gu, (_, mark: string, at: string) => {
    const number = Number(at);
    if (mark === '#') {
      const temp = temps[number];
      return temp === undefined || temp.unit !== null || temp.degree || temp.sign !== 'none' ? 'o' : put('n', temp.value);
    }
    const amount = amounts[number];
    if (amount === undefined) return 'o';
    const { noun, value } = amount;
    if (noun === 'other' || noun === 'count') return put('n', value);
    if (MONEY_NOUN.test(noun)) return put('m', value);
    if (MINUTE_NOUN.test(noun)) return put('d', value);
    if (HOUR_NOUN.test(noun)) return put('d', value * MINUTES_PER_HOUR);
    if (WEEK_NOUN.test(noun)) return put('w', value);
    if (MONTH_NOUN.test(noun)) return put('w', value * WEEKS_PER_MONTH);
    return TIMES_NOUN.test(noun) ? put('t', value) : 'o';
  });
  const bare = named.replace(/ n(\d+) (?:mins?|minimum)(?= )/gu, ' d$1').replace(/ (?:[;:!.-]|please|thanks|just|really|quite|very|pretty|so|always|rather|about|around|roughly|maybe|probably|perhaps|say|well|ok|honestly|lately|recently|these days|to me|for me|to us|for us)(?= )/gu, '').replace(/^ (?:[,;] )+|(?: [,;])+ $/gu, ' ');
  const form = SPOKEN.reduce((sofar, [pattern, kind, value]) => sofar.replace(/ $/u, ' $').replace(pattern, () => ` ${put(kind, value)} `).replace(/ \$$/u, ' ').replace(/ +/gu, ' '), bare);
  return { form, values };
}

const ASKS_TO_BE_ASKED = wordings`
  ^ (?:ask me|ask us)(?: (?:about it|about that|again|now|the|three|questions|short|care|=\d+|n\d+))* $
  ^ (?:how careful (?:are you|should you be|do i want you)|the (?:three )?questions|tolerance) $
`;
const MORE_CAREFUL = wordings`
  ^ (?:be|you (?:should|could|can|must) be|i (?:want|need|would like) you to be|get|act) (?:a (?:bit|little) |much |more )*(?:more )?(?:careful|cautious)(?: (?:from now on|in future|next time|with (?:the|my) (?:%\d+|beds|plants|crops)|with it|with them|with frost))* $
  ^ (?:more|extra) (?:careful|cautious) $
  better safe than sorry|when(?:ever)? in doubt|if in doubt|rather be called (?:once )?too often
  (?:call|warn|send|get) (?:me|us)(?: out)? (?:more(?: often| readily)?|earlier rather than later|sooner rather than later|too often than too seldom|once too often)
  you (?:call|warn) (?:me|us)(?: out)? (?:too seldom|not often enough|too rarely)
  (?:too few|not enough|more) (?:calls|warnings|alarms)
`;
const LESS_CAREFUL = wordings`
  ^ (?:be|you (?:should|could|can) be|i (?:want|need|would like) you to be) (?:a (?:bit|little) )?(?:less (?:careful|cautious|anxious|nervous|jumpy)|more relaxed|bolder|braver) $
  ^ less (?:careful|cautious) $
  (?:too many|so many|far too many|fewer|less) (?:calls|false alarms|false calls|needless calls|needless trips|call outs|callouts|alarms|trips for nothing|wasted trips)
  you (?:(?:are|keep) )?(?:call|calling|send|sending|get|getting|drag|dragging|chase|chasing) (?:me|us)(?: out)?(?: there)? (?:too often|too much|for nothing|all the time|every night)
  you (?:cry|cried) wolf|stop crying wolf
  (?:stop|quit|no more) (?:calling|sending|dragging|getting|chasing) (?:me|us) out(?: there)?(?: every night| so often| for nothing| for no reason| needlessly)+
  (?:call|send|get) (?:me|us)(?: out)? (?:less(?: often)?|less readily|more seldom)
  (?:do not|only) (?:call|send|get) (?:me|us) out (?:unless|if|when) (?:you are|it is) (?:sure|certain|needed|necessary)
  (?:call|send|get) (?:me|us) out only (?:if|when) (?:you are|it is) (?:sure|certain|needed|necessary)
  do not (?:call|send|get|drag) (?:me|us)(?: out)?(?: there)? (?:for nothing|needlessly|so often|every night)
  (?:do not|not) want to be (?:called|sent|dragged)(?: out)?(?: there)? (?:for nothing|needlessly|so often|every night)
`;
const NEVER_LOSE = wordings`
  ^ (?:i |we )?(?:never|must not|must never|can not|do not want to|do not ever want to|will not|would never|can not afford to|can not bear to|whatever happens,? do not|do not) lose (?:(?:it|them|any|anything|any of (?:it|them|the \w+)|a (?:bed|crop|plant|single plant)|the (?:bed|beds|crop|crops|%\d+)|my (?:bed|beds|crop|crops|%\d+)|this|that|those|%\d+)(?: ever| again| at all)*) $
  ^ never lose it $
`;
const RELAXED = wordings`
  ^ (?:(?:i am|we are) )?(?:relaxed|easy going|easygoing|laid back)(?: (?:about )?(?:it|this|frost|losses|that|the (?:frost|cold|beds|crops|%\d+)))? $
  ^ (?:i|we) (?:do not|would not) mind losing (?:it|them|a bed|the bed|some|a few|a bit|the odd (?:bed|plant|one)|the %\d+|my %\d+) $
  ^ (?:it is|it would be) (?:ok|fine|no tragedy|not the end of the world) (?:if|to) (?:i |we )?los(?:e|es) (?:it|them|a bed|the bed|some|a few|the %\d+) $
`;
const USUAL = wordings`
  ^ (?:be )?(?:as )?(?:careful|cautious)(?: as)? (?:as )?(?:usual|normal|before)$
  ^ (?:be |back to )?(?:normal|normally|usual|usually) (?:careful|cautious|care) $
  ^ back to (?:normal|usual) care $
`;

const OUT = '(?:(?:going|to go|getting|heading|being) (?:&outside|over there)|going (?:out|there)(?: there)?|to go (?:out|there)(?: there)?|(?:the|that|this) (?:trip|walk|way|job|work)(?: out| there)?|covering|to cover|@cover|getting (?:out|there)(?: there)?|the covering|putting (?:the )?@cover on|heading out|being out(?: there)?)';
const WHEN = '(?: (?:at night|in the (?:dark|evening|cold|snow|rain|evenings)|there|at that hour|in winter|after dark|tonight|of an evening|when it is (?:dark|cold|snowing)|to @cover|to cover|the beds|them|it|every time|each time|and|so late|late))*';
const IS = '(?:is|it is|are|would be)';
const tripWords = (adverse: string, verbs: string): RegExp => new RegExp([
  ` (?:i|we) (?:\\w+ )?(?:${verbs}) ${OUT}${WHEN} $`,
  `^ (?:for me )?${OUT}${WHEN} ${IS} (?:a |an |such a )?(?:${adverse})(?: trip| job| walk)?${WHEN} $`,
  `^ it is (?:a |an |such a )?(?:${adverse}) (?:trip|walk|job|way)${WHEN} $`,
  `^ it is (?:a |an |such a )?(?:${adverse}) ${OUT}${WHEN} $`,
].join('|'), 'u');
const ADVERSE = {
  awful: 'awful|terrible|horrible|dreadful|miserable|hell|hellish|nightmare|dangerous|torture|grim|brutal|the worst|horrid|misery',
  annoying: 'annoying|bad|not great|not nice|no fun|pain|nuisance|bother|chore|hassle|tedious|unpleasant|a bit of a pain|bit of a pain|drag|tiresome|inconvenient',
  easy: 'easy|not (?:too |that |all that )?bad|not (?:too |that )?hard|no bother|no trouble|no problem|fine|nothing|quick|not bad|no hassle|short|pleasant|no big deal|easy enough|ok|easy peasy|a breeze|breeze|piece of cake',
} as const satisfies Record<TripSaid, string>;
const TRIPS: readonly (readonly [TripSaid, RegExp])[] = [
  ['awful', tripWords(ADVERSE.awful, 'hate|loathe|dread|detest|can not stand|can not bear|despise')],
  ['annoying', tripWords(ADVERSE.annoying, 'dislike|do not (?:much )?(?:like|enjoy|fancy|love)|do not care for|am not fond of|hardly like')],
  ['easy', tripWords(ADVERSE.easy, 'do not mind|like|enjoy|love|am happy with|am fine with|have no trouble|am happy')],
];

const MONEY = '([nm]\\d+)';
const MY = '(?:(?:the|my|our|all|all the|a|each|this|that|these|those) )?';
/** A crop or bed and its words: which one is meant is found beside it. */
const THING = `${MY}(?:%\\d+|(?:\\w+ ){0,3}?beds?(?: \\w+)?|bed \\*label)(?: (?:in|of|on) ${MY}(?:%\\d+|(?:\\w+ ){0,3}?beds?))?(?: (?:and|,) ${MY}%\\d+)*`;
const WORTH: readonly RegExp[] = [
  new RegExp(`^ (?:i (?:think|reckon|guess|would say) |to me )?${THING} (?:is|are|would be|must be|is still) worth (?:of )?${MONEY} $`, 'u'),
  new RegExp(`^ (?:losing|to lose|if i lost|if we lost|if i lose|if we lose|replacing|to replace) ${THING}(?: it| that)? (?:would|will|could|might)? ?(?:costs?|set) (?:me |us )?(?:back )?${MONEY} $`, 'u'),
  new RegExp(`^ (?:i|we) (?:would|could|will) lose ${MONEY} (?:with|on|if i lost|if we lost|without) ${THING} $`, 'u'),
  new RegExp(`^ (?:i|we) (?:get|make|earn|sell|have) ${MONEY} (?:from|for|of|in|out of|on) ${THING} $`, 'u'),
  new RegExp(`^ ${THING} (?:costs?|would cost|cost|sells for|brings|bring|brings in|bring in) (?:me |us )?${MONEY} (?:to replace|to lose|if lost|at market|at the market|in sales|when sold)? ?$`, 'u'),
  new RegExp(`^ ${THING} would be ${MONEY} to (?:replace|lose) $`, 'u'),
  new RegExp(`^ ${THING} (?:is|are) worth ${MONEY}(?: (?:and|,|, and) ${THING} [nm]\\d+)+ $`, 'u'),
  new RegExp(`^ (?:worth|value) (?:of )?${THING} (?:is |, |: )?${MONEY} $`, 'u'),
];
const REGROWS: readonly RegExp[] = [
  new RegExp(`^ ${THING} (?:takes?|needs?|would take|would need) (?:me |us )?(w\\d+) (?:to (?:regrow|grow back|grow again|be back|grow)|of regrowing|until i pick again)(?: (?:,|and|at|with|of|i pick|we pick|i sell|it gives|worth))* ${MONEY} (?:a|per|each|every) week $`, 'u'),
  new RegExp(`^ ${THING}(?: (?:is|are|:|,|would cost|would be|costs?))* (w\\d+) (?:at|of|x|times|,|with|and)(?: worth)? ${MONEY} (?:a|per|each|every) week $`, 'u'),
];
const HOUR = new RegExp(`^ (?:(?:an|my|one|each) hour(?: of (?:my|our) (?:time|work))?|(?:my|our) (?:time|work|labou?r)) (?:is|are) worth ${MONEY}(?: (?:an|per|each|every) hour)? $|^ (?:i|we) (?:count|value|price|reckon) (?:my|our) (?:time|hour|work) at ${MONEY}(?: (?:an|per) hour)? $`, 'u');
const COVERING = '(?:covering|to cover|putting (?:the )?@cover on|laying (?:the )?@cover|the covering|the @cover|@cover|to put (?:the )?@cover on|the trip|the whole trip|a trip|one trip|the job|going out(?: there)?(?: to cover| to @cover)?)';
const OF_THING = `(?: (?:(?:up|all|out) )*(?:${THING}|them|it|everything|all|there and back|@cover))?`;
const MINUTES: readonly RegExp[] = [
  new RegExp(`^ ${COVERING}${OF_THING} (?:always )?(?:takes?|costs?|is|lasts?|needs?|would take) (?:me |us )?(?:a good |another |all of |at least |up to )?(d\\d+)(?: (?:there and back|in all|altogether|to @cover|to cover|every time|each time|all told))*${OF_THING} $`, 'u'),
  /^ it (?:takes|costs) (?:me |us )?(?:a good )?(d\d+)(?: there and back| in all| altogether)? $/u,
  new RegExp(`^ (?:i|we) need (d\\d+) (?:to @cover|to cover|for (?:the )?(?:@cover|covering))${OF_THING} $`, 'u'),
  new RegExp(`^ it takes? (?:me |us )?(?:a good )?(d\\d+) to (?:cover|@cover|put (?:the )?@cover on)${OF_THING} $`, 'u'),
];
const TRIPS_SAID: readonly RegExp[] = [
  /^ (?:i|we) would (?:sooner |gladly |happily )?go out (?:there )?([nt]\d+)(?: times| nights)? (?:for nothing|in vain|needlessly|too often|without need|unnecessarily) (?:than|before|if it means not|and not) (?:i |we )?(?:lose|losing|losing out on) /u,
  /^ (?:one|a|each|n\d+) saved (?:bed|crop) is worth ([nt]\d+)(?: (?:needless|wasted|useless|vain|empty|extra))?(?: (?:trips?|walks?|calls?|nights?|call outs))?(?: for nothing| in vain)? $/u,
  /^ ([nt]\d+) (?:needless|wasted|useless|false|empty|vain|unneeded|unnecessary) (?:trips?|calls?|alarms?|walks?|nights?)(?: (?:are|is|would be))?(?: (?:fine|ok|all right|alright|no problem|worth it))?(?: (?:for|to save|per|and) (?:a|one|each|the|n\d+) (?:saved )?(?:bed|crop|%\d+))? $/u,
  /^ ([nt]\d+) trips? (?:for|per|a|to save|to) (?:a |one |each |the |n\d+ )?(?:saved )?(?:bed|crop|%\d+) $/u,
];

const cropsIn = ({ hits }: Message): readonly string[] => hits.flatMap(({ ids }) => ids.slice(0, 1));

/** What a message says of how readily its grower is to be called out; null where it says something else, or asks. */
export function toleranceSaid(message: Message): ToleranceSaid | null {
  const { form: whole, values } = numbered(message);
  const form = whole.replace(REQUEST, ' ').replace(/ \?(?= )/gu, '');
  if (ASKS_TO_BE_ASKED.test(form)) return { about: 'ask' };
  return message.asks ? (form === whole.replace(/ \?(?= )/gu, '') ? null : carefulSaid(form)) : (figureSaid(form, values, cropsIn(message)) ?? tripSaid(form) ?? carefulSaid(form));
}

/** "Could you be more careful?" asks for nothing but that. */
const REQUEST = /^ (?:can|could|would|will) you /u;

function figureSaid(form: string, values: readonly number[], crops: readonly string[]): ToleranceSaid | null {
  const value = (symbol: string | undefined): number => values[Number(symbol?.slice(1))] ?? 0;
  const first = (patterns: readonly RegExp[]): readonly (string | undefined)[] | null => patterns.map((pattern) => pattern.exec(form)?.slice(1)).find((found) => found !== undefined)?.filter((part) => part !== undefined) ?? null;
  const hour = first([HOUR]);
  if (hour !== null) return { about: 'hour', worth: value(hour[0]) };
  const regrown = first(REGROWS);
  if (regrown !== null) return { about: 'worth', worth: value(regrown[0]) * value(regrown[1]), crops };
  const trips = first(TRIPS_SAID);
  if (trips !== null) return { about: 'trips', trips: value(trips[0]) };
  const minutes = first(MINUTES);
  if (minutes !== null) return { about: 'minutes', minutes: value(minutes[0]), crops };
  const worth = first(WORTH);
  return worth === null ? null : { about: 'worth', worth: value(worth[0]), crops };
}

function tripSaid(form: string): Extract<ToleranceSaid, { about: 'trip' }> | null {
  const said = TRIPS.find(([, pattern]) => pattern.test(form.replace(/ , d\d+(?= )/u, '')));
  return said === undefined ? null : { about: 'trip', trip: said[0] };
}

function carefulSaid(form: string): Extract<ToleranceSaid, { about: 'careful' }> | null {
  if (NEVER_LOSE.test(form)) return { about: 'careful', careful: 'never-lose-it' };
  if (RELAXED.test(form)) return { about: 'careful', careful: 'relaxed' };
  if (USUAL.test(form)) return { about: 'careful', careful: 'normal' };
  if (LESS_CAREFUL.test(form)) return { about: 'careful', step: -1 };
  return MORE_CAREFUL.test(form) ? { about: 'careful', step: 1 } : null;
}

/** Joints at which a message may fall into several things said; "and" between two of which each has its number. */
const JOINT = /[.;!\n]|, |(?<=\d\S*(?: [a-z]+){0,2}) and (?=.* (?:is|are|takes?|costs?|needs?) )| but /iu;

/** Longer messages tell a story, and of what they hold not all is meant so. */
const MOST_LETTERS = 400;

/** One thing said, and the words that say it: another bed may be spoken of in the same message. */
export interface TolerancePart {
  readonly said: ToleranceSaid;
  readonly text: string;
}

/** All that a message says of it, as a whole or part by part. */
export function tolerancesIn(heard: Heard): readonly TolerancePart[] {
  if (heard.text.length > MOST_LETTERS) return [];
  const spelled = heard.text.replace(AND_ANOTHER, '. $1 is worth $2');
  const partOf = (text: string): readonly TolerancePart[] => {
    const said = toleranceSaid(readMessage({ ...heard, text }));
    return said === null ? [] : [{ said, text }];
  };
  const whole = spelled === heard.text ? partOf(spelled) : [];
  return whole.length > 0 ? whole : spelled.split(JOINT).flatMap(partOf);
}

const SUM = String.raw`[$\u00a3\u20ac]?\d+(?:[.,]\d+)?(?: (?:dollars|euros|pounds|bucks|quid))?`;
/** "The kale is worth 60 and the lettuce 40". */
const AND_ANOTHER = new RegExp(String.raw`(?<=\bworth\b.*)(?:, and | and |, )((?:the |my |our )?[a-z](?:(?!worth)[a-z ])*?) (${SUM})(?=\s*(?:$|[.,;!]| and ))`, 'giu');
const EACH_ITS_OWN = new RegExp(String.raw`([a-z][a-z ]*?):? (${SUM})(?=\s*(?:$|[.,;!]| and ))`, 'giu');

/** "Kale 60, lettuce 40", where their worth was asked for. */
export const worthsIn = (heard: Heard): readonly TolerancePart[] => tolerancesIn({ ...heard, text: heard.text.slice(0, MOST_LETTERS).replace(EACH_ITS_OWN, '$1 is worth $2') });

const OF_TRIPS: ReadonlySet<string | undefined> = new Set<ToleranceSaid['about']>(['trip', 'minutes']);

/** "I hate going out in the snow" tells of no snow on the roof, "covering takes 20 min" of no minimum. */
export const ofTrips = (message: Message): Intent | null => (OF_TRIPS.has(toleranceSaid(message)?.about) ? { kind: 'settings' } : null);

const HEDGES = '(?:(?:it|that|this|would|is|be|cost|me|us|i|we|think|guess|reckon|lose|in|all|altogether|at|least|most|a|good|takes?|set|back|worth) )*';
const ANSWER_WORTH = new RegExp(`^ ${HEDGES}${MONEY} (?:(?:or so|in all|altogether|in money|at least|at most|easily|to replace) )*$`, 'u');
const ANSWER_WEEKS = new RegExp(`^ ${HEDGES}(w\\d+) (?:(?:to|of|regrow|regrowing|grow|back|again|until|i|pick) )*(?:(?:at|of|x|times|,|with|and|worth|i|we|pick|sell|it|gives?) )*(?:${MONEY} (?:(?:a|per|each|every) week |weekly )?)?$`, 'u');
const ANSWER_WEEKLY = new RegExp(`^ ${HEDGES}${MONEY} (?:a|per|each|every) week (?:for|over|times|x|,) (w\\d+) $`, 'u');
const ANSWER_PER_WEEK = new RegExp(`^ ${HEDGES}${MONEY} (?:(?:a|per|each|every) week |weekly )?$`, 'u');
const ANSWER_MINUTES = / (d\d+) /u;
const ANSWER_BARE_MINUTES = /^ (?:(?:it|takes|me|us|a|good) )*(n\d+) $/u;
const ANSWER_TRIPS = /^ (?:(?:i|we|would|be|one|it|is|saved|bed|worth|think|guess|go|out|up|to|at|least|most) )*([nt]\d+)(?: (?:trips?|times|needless|wasted|or|so|for|nothing))* $/u;
const NAMED_CARE = { relaxed: /^ (?:i am |be )?(?:relaxed|not many|few|a few)(?: please)? $/u, normal: /^ (?:i am |be )?(?:normal|usual|average|medium|most|like most|normally careful)(?: please)? $/u, careful: /^ (?:i am |be |more )?(?:careful|cautious|many)(?: please)? $/u, 'never-lose-it': /^ (?:never|never lose it|never lose (?:a|the) bed|any number|as many as it takes|all of them)(?: please)? $/u } as const satisfies Record<CareSaid, RegExp>;

/** An answer to the question that was asked; null where it is none. */
export function toleranceAnswer(message: Message, asked: 'worth' | 'weekly' | 'trip' | 'trips'): ToleranceAnswer | null {
  if (message.asks) return null;
  const { form, values } = numbered(message);
  const value = (symbol: string | undefined): number => values[Number(symbol?.slice(1))] ?? 0;
  if (asked === 'trip') return tripAnswer(form, value);
  if (asked === 'trips') {
    const careful = (Object.keys(NAMED_CARE) as CareSaid[]).find((one) => NAMED_CARE[one].test(form));
    const number = ANSWER_TRIPS.exec(form)?.[1];
    return careful !== undefined ? { careful } : number === undefined ? null : { trips: value(number) };
  }
  const worth = (asked === 'weekly' ? ANSWER_PER_WEEK : ANSWER_WORTH).exec(form)?.[1];
  if (worth !== undefined) return { worth: value(worth) };
  const weekly = ANSWER_WEEKLY.exec(form);
  if (weekly !== null) return { weekly: value(weekly[1]), weeks: value(weekly[2]) };
  const weeks = ANSWER_WEEKS.exec(form);
  return weeks === null ? null : { weeks: value(weeks[1]), ...(weeks[2] === undefined ? {} : { weekly: value(weeks[2]) }) };
}

const LONGEST_TRIP_ANSWER = 8;

function tripAnswer(form: string, value: (symbol: string | undefined) => number): ToleranceAnswer | null {
  const minutes = ANSWER_MINUTES.exec(form)?.[1] ?? ANSWER_BARE_MINUTES.exec(form)?.[1];
  const words = ` ${form.replace(/ [dn]\d+(?= )/gu, '').trim()} `;
  const isShort = words.trim().split(' ').length <= LONGEST_TRIP_ANSWER;
  // "No hassle" and "not too bad" hold words for worse.
  const trip = (['easy', 'awful', 'annoying'] as const).find((one) => new RegExp(` (?:${ADVERSE[one]}) `, 'u').test(words));
  if (!isShort || (trip === undefined && minutes === undefined) || / not (?:\w+ )?(?:awful|annoying|easy|fine|ok) /u.test(words)) return null;
  return { ...(trip === undefined ? {} : { trip }), ...(minutes === undefined ? {} : { minutes: value(minutes) }) };
}
