import type { ClockToken, TempToken, Token } from './value-grammar.js';
import { anyLine } from './wordings.js';

const BEFORE_HOUR = new Set(['at', '@', 'by', 'after', 'before', 'since', 'until', 'till', 'til']);
/** "Today at 11": a day goes on with its hour. */
const DAY_BEFORE = /\b(?:today|yesterday|tonight|tomorrow|morning|afternoon|evening|last night|\w+day) $/;
/** After these a bare number is an hour, whatever else is said. */
const ONLY_HOURS = new Set(['since', 'until', 'till', 'til']);
const AFTER_HOUR = /^\s*(?:this morning|in the morning|last night|at night|tonight|every (?:morning|day|night|evening)|each (?:morning|day|night)|most (?:mornings|days|nights)|this evening|in the evening|in the afternoon|this afternoon|yesterday)\b/;
// "inside at 3", "holding at 3", "heater at 3": what is at 3 is a temperature.
const HELD_AT = /(?:\binside|\boutside|\bcovers?|\bsoil|\bground|\bheaters?|\bheat|\bthermostat|\bset|\bsitting|\bholding|\bsteady|\bsat|\bhovering|\bit is|\bit's|\bwas|\bis) $/;
// "I'll cover at 6": a deed has an hour and no temperature.
const DEED_BEFORE = /\b(?:i'll|i will|we'll|we will|going to|gonna|will|covered|closed|shut|picked|turned|opened|uncovered|pulled|put|drew|rolled|lit|ran|started|came|went (?:on|off|over|in|out)|took)\b/;
/** "The air is at 8": what is at 8 is a temperature, whatever was done before. */
const STANDS = /\b(?:air|inside|outside|water|soil|temperature|thermometer|probe|stones?|tube) (?:[a-z]+ ){0,4}(?:is|was|sits|sat|stands|stood|reads) $/;
/** "See you at 7", "the bus leaves at 8": what has an hour and no temperature, whatever else is said. */
const MEETS_AT = new RegExp(String.raw`\b(?:${anyLine(String.raw`
  see (?:you|ya|u|ye)|meet|meeting|call(?: me| you)?|ring(?: me| you)?|leaves?|leaving|starts?|opens?|closes?|closing|shuts?|dinner|lunch|breakfast|tea
  supper|train|bus|school|work|church|appointment|dentist|doctor|alarm|kicks? off|kick-?off|match|game|football|shift|class|show|finish(?:es)?
  get up|gets up|be up|got me up|woke me up|woke me|bed|bedtime|arrive|arrives
`)}) (?:is )?(?:at|about|around|by) $`);
const INSTEAD = /\b(?:instead of|rather than|and not|not) $/;
/** "Can't sleep past five". */
const UNTIL = /\b(?:sleep|slept|awake|up|open|wait|waiting|work|worked|working|lie in) (?:past|till|until|til) $|\b(?:on|running|lit|going|low|high|full)(?: [a-z]+)? (?:from|since) $/;
const DEED_DONE = /\b(?:tucked|wrapped|buttoned|zipped|locked|finished|rolled|watered|fed|covered|closed|shut|lit|put|pulled|drew|opened|picked)\b(?!.*\bto $)/;
const CLAUSE_END = /[,;\n]|\band\b|\bbut\b/;

// "Woke at 5 and it was 28": what somebody does has an hour.
const DONE_AT = /\b(?:woke(?: up)?|got up|getting up|am up|was up|went out|went in|looked|checked|got in|got there) (?:at|around|about) $/;

const isBareHour = (token: Token): token is TempToken =>
  token.type === 'temp' && token.sign === 'none' && token.unit === null && !token.degree && token.against === null && (token.spelled ? token.value >= 1 && token.value <= 12 && Number.isInteger(token.value) : /^(?:1[0-2]|[1-9])(?:\.[0-5]\d)?$/.test(token.text));

/** Turns a bare "at 7" into a clock where another number is there to be the temperature. */
export function settleBareHours(plain: string, tokens: readonly Token[]): readonly Token[] {
  const temps = tokens.filter((token) => token.type === 'temp');
  const clauseOf = (token: Token): string => `${plain.slice(0, token.start).split(CLAUSE_END).length}`;
  return tokens.map((token, index): Token => {
    const before = tokens[index - 1];
    if (!isBareHour(token) || before === undefined) return token;
    // "At 6 instead of 8".
    const isOtherHour = INSTEAD.test(plain.slice(0, token.start)) && (tokens[index - 3]?.type === 'clock' || tokens[index - 2]?.type === 'clock' || /\bat $/.test(plain.slice(0, tokens[index - 3]?.start ?? 0)));
    if (isOtherHour || UNTIL.test(plain.slice(0, token.start))) return asClock(token);
    const loose = !DONE_AT.test(plain.slice(0, token.start)) && /^(?:around|about)$/.test(before.text);
    if (!loose && !BEFORE_HOUR.has(before.text)) return token;
    const others = temps.filter((other) => other !== token);
    const inClause = others.filter((other) => clauseOf(other) === clauseOf(token) && !(isBareHour(other) && tokens[tokens.indexOf(other) - 1]?.text === 'at'));
    const heldAt = HELD_AT.test(plain.slice(0, before.start)) && !inClause.some((other) => other.start < token.start);
    const standsAlone = tokens.filter((other) => clauseOf(other) === clauseOf(token) && other.type !== 'mark').length === 2;
    // "27 around 5", "at about 5": an hour only after a temperature and at the end of what is said.
    const looseHour = AFTER_HOUR.test(plain.slice(token.end)) || (inClause.some((other) => other.end < before.start) && /^\s*(?:$|[,.;!])/.test(plain.slice(token.end)));
    // "Lit the heater about 9".
    if (loose) return looseHour || (temps.length === 1 && DEED_DONE.test(plain.slice(0, before.start))) ? asClock(token) : token;
    const led = plain.slice(0, token.start);
    const beforeAt = plain.slice(0, before.start);
    const saysSo = MEETS_AT.test(led) || ONLY_HOURS.has(before.text) || DAY_BEFORE.test(beforeAt) || AFTER_HOUR.test(plain.slice(token.end));
    const isBesideAnother = others.length > 0 && (DONE_AT.test(led) || standsAlone);
    const isOfDeed = others.length === 0 && !STANDS.test(beforeAt) && DEED_BEFORE.test(beforeAt) && !/\bheat/.test(plain);
    const isHour = saysSo || isBesideAnother || (!heldAt && inClause.length > 0) || isOfDeed;
    return isHour ? asClock(token) : token;
  });
}

function asClock(token: TempToken): ClockToken {
  const [hour = '0', minute = '0'] = (token.spelled ? `${token.value}` : token.text).split('.');
  return { type: 'clock', hour: Number(hour), minute: Number(minute), exact: false, start: token.start, end: token.end, text: token.text };
}
