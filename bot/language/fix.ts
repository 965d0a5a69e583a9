import { unclear, type Intent, type Statistic } from './intent.js';
import type { Message } from './message.js';
import { readingMark } from './reading-marks.js';
import { temperature } from './temperature.js';
import { wordings } from './wordings.js';

const WITHDRAWS = wordings`
  ^ (?:please |sorry |no |nah |nope |naw |ah |hang on |hold on |never mind |oops |can you |actually |wait |wrong |thermometer |one |number |reading )*(?:undo|scratch|strike|ignore|disregard|scrap|
  delete|remove|erase|drop|forget|cancel|withdraw|take back|take that back|take that last one back|take (?:that|the|my) (?:last )?(?:reading|number|one) (?:out|off|away)(?: \S+)*|take (?:the|my|that) (?:last |reading |number |
  one )+back|discard|throw out)(?: (?:that|the|my|it|last|one|reading|number|temperature|please|entry|previous|this|message|out|off|away|value|low|#\d+|just|
  sent|gave|i|today|morning|what|said|wrote|told|you))* $
`;
/** "Ignore that, grandpa read the wrong one". */
const IGNORES = wordings`
  ^ (?:please |sorry |no |oops |actually |never mind |wait )*(?:ignore|disregard|scratch|scrap|strike|undo|delete|discard|bin) (?:that|it|this|that one|
  the last (?:one|reading|number)|my last(?: one| reading| number)?|what i (?:just )?(?:said|sent))(?: \S+)* $
`;
const WRONG = wordings`
  ^ (?:the |my |that )*(?:last |previous )?(?:reading|number|temperature|one) (?:is |was |i sent |i gave )*(?:wrong|bad|off|incorrect|not right|
  a mistake|a typo)(?: sorry)* $
`;
const CORRECTS = wordings`
  scratch|(?:that|this|the) #\d+ (?:was|is|were|came)|correction|corrected|meant|should be|should have been|should say|should read
  (?:that|this) was supposed to be|make (?:it|that|this) (?:a |to )?#\d+|make (?:the |my )?(?:last|previous)
  i (?:just )?(?:put|wrote|typed|said|sent|gave) (?:it |that |the )*#\d+ (?:, |; )?but|change it|change that|change the last|typo|mistake|misread
  mistyped|miskeyed|oops|whoops|woops|sorry (?:(?!for|about|to|been|am|late|but|only|just|still|can )\S+ ){0,3}?#\d+|typed|wrote|wrong|change #\d+ to|(?<! is )actually
  rather(?! (?:cold|warm|chilly|cool|mild))|i mean|not right|instead|amend|correct|edit
  my (?:bad|mistake)(?! (?:i |for |we )*(?:forgot|late|am|was|to|not|missing|the delay))|fat fingered|fat fingers|mis typed|slip of the (?:thumb|finger)
  (?:forgot|left off|left out|missed|dropped|missing|without|lost) (?:the |a |my )?(?:minus|negative|sign)
`;
/** The sign that was left out must stand there now: "forgot the minus, 3" may be either. */
const SIGN_LEFT_OUT = / (?:forgot|left off|left out|missed|dropped|missing|without|lost) (?:the |a |my )?(?:minus|negative|sign) /;
/** A stretch of regret, however long, belongs to the number beside it. */
const REGRETS = wordings`
  (?:typed|wrote|sent|put|gave|entered|got|read|keyed) (?:it |that |the |this |one |last |number |reading )*(?:wrong|incorrectly|badly|backwards)
  (?:forgot|left off|left out|missed|dropped|missing) (?:the |a |my )?(?:minus|negative|sign)
  (?:that|this|it|last one|reading) (?:was|is) (?:wrong|a typo|a mistake|not right)
`;
const STARTS_NO = /^ no (?:(?:it|that|the|was|is|low|high|minimum|maximum|,|;|actually) )*#\d/;
const STARRED = /^ \* #\d+ $|^ #\d+ \* $/;
const THAT_WAS = wordings`
  ^ (?:(?:no|ah|oh|wait|sorry|oops|whoops|bad|mistake|silly|me|[,;]|actually|the|my|last|one|reading|number|it|that|this|previous|what|which|have|you|i|
  gave|sent|told|reported|put|typed|texted|just|now|first|second|temperature|value) )*(?:was|is|should be|should have been|meant|i meant|i mean|
  were)(?: (?:for|the|in|from|my|a|taken|actually|of|at|as|read|meant|to|be|on|off|overnight|night|morning|real|actual))* (?:&\w+|@cover|@water|@stones|
  @tube|under the @cover|under @cover|\$\d+|low|high|minimum|maximum)(?: (?:one|reading|temperature|thermometer|probe|sensor|sorry|gauge|though|current|
  daytime|overnight|one|reading|not|&\w+|low|high|\$\d+|@cover|of|the|night|last|now|overnight|what|it|is|from|right|currently|present|current))* $
`;
/** Words that take back what was said before them. "Oh no" and "sorry" may be of anything. */
const REGRET = /^ (?:(?:ah|argh|um|er|sorry|hm|oh dear|oh|dear|damn|darn|shoot|crap|shit|bugger|bollocks|goodness|gosh|apologies|pardon|just|please|ok|hey|actually|well|[,;:-]) )*(?:(?<!oh )no|nope|nah|naw|wait|hold on|hang on|hold up|hold your horses|oops|oopsie|oopsy|oopsies|whoops|woops|whoopsie|my bad|my mistake|my error|silly me|correction|scratch that|strike that|stop press|misread|mistake|wrong|doh|duh|i made a mistake|i lied|forgive me|not quite|i tell a lie|false alarm) (?!(?:power|electricity|snow|frost|heater|gas|propane|worries|problem|bother|thanks|way|more|one|not yet) )/;
/** "Oh no, it's 28 in here" and "yeah nah" take nothing back. */
const DISMAY = /\b(?:oh|yeah|aye|yea|yes) (?:no|nah|naw)\b/;
/** What a correction says: the last number, with what it was. */
const IT_WAS = wordings`
  (?:that|it|this|those|these|they|one|reading|number|low|high|temperature|i meant|meant|make|should|&\w+|@cover) (?:(?:was|is|were|should|be|have|been|
  read|say|reads|said|actually|really|only|to|at|in|a|the|got|went|down|meant|meant to be) )*#\d+
`;
const FEW_BESIDE = 4;
/** "That was outside", after words of regret or against what it was not. */
const WAS_OF = wordings`
  (?:that|it|this|those|these|they|one|ones|reading|readings|number|numbers|last|meant|mean|thermometer|should|said|\w+ing) .*(?:&\w+|@cover|@water|
  @stones|@tube|\$\d+|low|high|minimum|maximum|now|current|currently)
  (?:&\w+|@cover|\$\d+|low|high|minimum|maximum) (?:i mean|i meant|not|one|it was|that was)
`;
const NOT_OF = / not (?:the |from |of |in |my )*(?:&\w+|@cover|@water|@stones|@tube|low|high|minimum|maximum|now|current|overnight|night) /;
const SELF = / (?:i mean|i meant|should have (?:said|put|written|been)|(?:meant|supposed) to (?:say|put|write|send|be)) /;
const THAT_ONE = wordings`
  ^ (?:that|this|the|my) (?:last |first |second |previous )?(?:one|reading|number) (?:was |is |came )?(?:the |from |for |of |my |in )*(?:&\w+|@cover|
  @water|@stones|@tube|\$\d+|low|high|minimum|maximum)(?: \w+)? $
`;
const NOT_MINE = wordings`
  wrong (?:thermometer|one|number|house|&inside|person|chat|message|text)|(?:that|it) (?:was|is) (?:the )?neighbou?rs?(?: is)?
  not (?:mine|ours|my thermometer)|someone else|somebody else
`;
/** What speaks of the house and not of a reading. */
const OF_HOUSE = wordings`
  power|electricity|snow|frost|door|doors|gas|propane|fuel|blower|if|will|would|tonight|tomorrow|%\d+|@(?!cover |water |stones |tube )\w+|covered|closed
  shut|forgot|survive|survived|cold|freezing
`;
/** A present reading, where what it was not is set aside. */
const OF_NOW = / (?:now|current|currently|present|at the moment) /;

const NOT_THERE = /^ (?:sorry , |no , )?not (?:the |&|@|low|high)\S*(?: [,;] | but | )(?:the |it was )?(?:&\w+|@\w+|low|high|minimum|maximum) $/;
/** "I said inside but it was under the cover": what was said first is what it was not. */
const SAID_BUT = /^ (?:i (?:just )?(?:said|put|wrote|typed|sent|gave)) (?:it was |the |it |that )*(?:&\w+|@\w+|low|high) (?:, )?but /;
const OLD_NUMBER = / (?:not|instead of|rather than|change|from|wrote|said|typed|put) (?:it |that |the |was )*#(\d+) /;

/** "#0 not #1", "not #1 but #0", "change #1 to #0": which of the numbers is the new one. */
function newNumber(message: Message): number | null {
  // "Not 19" alone says what it was not.
  if (message.temps.length <= 1) return / not (?:a |the )?#0 /.test(message.said) ? null : 0;
  const old = / not (?:a |the )?#(\d+) /.exec(message.said)?.[1] ?? OLD_NUMBER.exec(message.said)?.[1] ?? / #(\d+) (?:should (?:be|have been|read) #|(?:was|is) (?:wrong|a typo|a mistake|not right) )/.exec(message.said)?.[1];
  const rest = message.temps.map((_, at) => at).filter((at) => `${at}` !== old);
  return old !== undefined && rest.length === 1 ? (rest[0] ?? null) : null;
}

/** What stands beside a number, and short words of regret before or after it: a longer stretch speaks of something else. */
function nearNumbers(form: string): string {
  const stretches = form.split(/ [,;] /).map((stretch) => stretch.trim());
  return ` ${stretches.filter((stretch) => stretch.includes('#') || stretch.split(' ').length <= SHORT_WORDS || WRONG.test(` ${stretch} `) || REGRETS.test(` ${stretch} `)).join(' ')} `;
}
const SHORT_WORDS = 3;

/** "That was celsius", "sorry, I meant in fahrenheit": the unit of what was sent, and none of the house's. */
const MEANT_UNIT = wordings`
  (?:(?:that|this|it|they|those|these|last one|the last|reading|number|temperature|low|high|readings|numbers) (?:is|was|were|are|should be|
  should have been)|meant|mean|sent it|gave it|typed it|read it) (?:all |in |meant |actually |as |really |it |that |to be |be |said )*(celsius|
  fahrenheit|centigrade|c|f|degrees c|degrees f) (?:not (?:celsius|fahrenheit|centigrade|c|f) |though |sorry |by the way |btw )*$
`;

/** Which unit the last reading was in. */
export function unitOfReading({ said, temps, asks }: Message): Intent | null {
  const word = temps.length === 0 && !asks ? MEANT_UNIT.exec(said)?.[1] : undefined;
  return word === undefined ? null : { kind: 'fix', unit: /^(?:f|fahrenheit|degrees f)$/.test(word) ? 'F' : 'C' };
}

/** A correction of the last reading, or its withdrawal. */
export function fix(message: Message): Intent | null {
  const { said, form } = message;
  if (message.asks && !/ (?:what|which|the one) (?:i|that i) (?:have |had |just )*(?:sent|gave|told|put|typed|texted|reported) /.test(said) && !/ make (?:it|that) #| (?:change|correct|edit) (?:the |that |my |it )*(?:from )?#\d+ /.test(said)) return null;
  if (/ (?:tonight|tomorrow|forecast) /.test(said) && message.temps.length > 0) return null;
  const isDismay = DISMAY.test(message.plain);
  const regrets = REGRET.test(form) && !isDismay;
  if (message.temps.length === 0 && !message.asks && IGNORES.test(said)) return { kind: 'fix' };
  if (WRONG.test(said) || (WITHDRAWS.test(said) && !/ [,;:] .*#/.test(form))) return { kind: 'fix' };
  const last = ` ${form.split(/ [,;] /).at(-1)?.trim() ?? ''} `;
  const hasNumber = message.temps.length > 0;
  const saysWhere = (THAT_WAS.test(said) || THAT_WAS.test(last) || NOT_THERE.test(form)) && / (?:that|last|meant|mean|reading|sorry|no|not|oops|actually|this|number) /.test(said);
  const saysWhose = !OF_HOUSE.test(said) && WAS_OF.test(said) && (regrets || SELF.test(said) || THAT_ONE.test(said) || (NOT_OF.test(said) && / (?:that|it|this|those|these|one|meant|mean|said) /.test(said)));
  const aboutPlace = !hasNumber && (saysWhere || saysWhose);
  const numberOf = ` ${form.split(/ [,;] /).find((stretch) => stretch.includes('#'))?.trim() ?? ''} `;
  const regretsNumber = regrets && message.temps.length === 1 && !OF_HOUSE.test(numberOf) && (IT_WAS.test(numberOf) || numberOf.trim().split(' ').length <= FEW_BESIDE);
  const saysOther = CORRECTS.test(nearNumbers(form)) || (STARTS_NO.test(form) && !isDismay) || STARRED.test(form) || / (?:#\d+ (?:, )?)?not #\d+ /.test(form);
  const corrects = hasNumber && (regretsNumber || saysOther);
  if (regrets && !aboutPlace && message.temps.length === 0 && NOT_MINE.test(said)) return { kind: 'fix' };
  const insteadOf = SAID_BUT.exec(form);
  if (!aboutPlace && !corrects && insteadOf === null) return null;
  const from = insteadOf === null ? 0 : insteadOf[0].trim().split(' ').length;
  const marks = message.pieces.map((_, at) => (at < from ? {} : readingMark(message, at)));
  const notAt = message.pieces.findIndex(({ symbol }) => symbol === 'not');
  // "Outside not inside" and "not inside, outside": what follows the "not" up to the next stop is what it was not.
  const stopAt = message.pieces.findIndex(({ symbol }, at) => at > notAt && /^(?:[,;]|but)$/.test(symbol));
  const kept = marks.filter((_, at) => !((aboutPlace || !message.pieces[notAt + 1]?.symbol.startsWith('#')) && notAt >= 0 && at > notAt && (stopAt < 0 || at < stopAt)));
  const places = [...new Set(kept.flatMap(({ place }) => place ?? []))];
  const stats = [...new Set(kept.flatMap(({ stat }): readonly Statistic[] => (stat === undefined ? [] : [stat])))];
  if (places.length > 1) return unclear('which-place', { choices: places });
  const [place] = places;
  const isNow = stats.length === 0 && aboutPlace && OF_NOW.test(` ${message.pieces.filter((_, at) => !(notAt >= 0 && at > notAt && (stopAt < 0 || at < stopAt))).map(({ symbol }) => symbol).join(' ')} `);
  const [stat] = isNow ? (['now'] as const) : stats;
  const shown = { ...(stat === undefined || stats.length > 1 ? {} : { stat }), ...(place === undefined ? {} : { place }) };
  if (message.temps.length === 0) return { kind: 'fix', ...shown };
  if (SIGN_LEFT_OUT.test(said) && !message.temps.every(({ sign }) => sign === 'minus')) return unclear('which-sign', { word: message.temps.map(({ text }) => text.trim()).join(', ') });
  const at = newNumber(message);
  const token = at === null ? undefined : message.temps[at];
  if (token === undefined) return unclear('which-number', { choices: message.temps.map(({ text }) => text.trim()) });
  const found = temperature(token, { ...message, among: [token], canBeWarm: stat === 'high' });
  return 'kind' in found ? found : { kind: 'fix', c: found.c, ...shown };
}
