import peggy from 'peggy';

/**
 * An island grammar: values are taken wherever they stand, and all the rest is words and marks, so that no order of
 * words can break it. Alternatives are tried from the longest meaning to the shortest; a number that belongs to a
 * clock, a day, an amount or a difference is never left over to be taken for a temperature.
 */
export const VALUE_GRAMMAR = String.raw`
{{
  const SPELLED = { zero: 0, nought: 0, naught: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10,
    eleven: 11, twelve: 12, thirteen: 13, fourteen: 14, fifteen: 15, sixteen: 16, seventeen: 17, eighteen: 18, nineteen: 19,
    twenty: 20, thirty: 30, thrity: 30, thirdy: 30, forty: 40, fourty: 40, twnety: 20, tweny: 20, twenny: 20, fiften: 15, forteen: 14, ninteen: 19, eigth: 8, eihgt: 8, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90 };
  const NOUNS = new Set(('foils sheets skins percent gallons gallon gals gal litres litre liters liter l kilowatts kilowatt kw watts watt w btus btu kilos kilo kgs kg pounds pound lbs lb tons ton tonnes tonne '
    + 'gsm g/m2 grams gram gr g ounces ounce oz mils mil microns micron mm cm metres metre meters meter m feet foot ft inches inch mph kph kmh km/h knots people heads bunches bags crates bins punnets armfuls '
    + 'minutes minute mins hours hour hrs hr h days day nights night weeks week wks wk months month years year yrs yr times dollars dollar bucks euros euro eur quid').split(' '));
  // A word that opens no value goes by at once: most of a message is such words.
  const OPENING = new Set([...Object.keys(SPELLED), 'a', 'half', 'quarter', 'plus', 'minus', 'negative', 'neg', 'http', 'https', 'www',
    'january', 'february', 'march', 'april', 'june', 'july', 'august', 'september', 'october', 'november', 'december', 'jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sept', 'sep', 'oct', 'nov', 'dec']);
  const clock = (hour, minute, meridiem, exact) => ({
    type: 'clock', minute,
    hour: meridiem === 'p' && hour < 12 ? hour + 12 : meridiem === 'a' && hour === 12 ? 0 : hour,
    exact: exact || meridiem !== null || hour > 12 || hour === 0 });
}}
{
  const placed = (token) => { const { start, end } = range(); return { ...token, start, end, text: input.slice(start, end) }; };
  const before = () => { const at = offset(); return at === 0 ? '' : input[at - 1]; };
}

Message = list:(Blank @Token)* Blank { return list; }
Blank = [ \t\r]*
Token = Plain / Foreign / Clock / Day / Difference / Amount / Temp / Word / Mark

Plain = $PlainForm { return placed({ type: 'word' }); }
PlainForm = w:$[a-z]+ &([ \t\r\n?!;:] / [.,] ([ \t\r\n] / ![^]) / ![^]) &{ return !OPENING.has(w); }

// What holds digits and is never a value: addresses, handles, codes, telephone numbers, dates in figures, sizes.
Foreign = $ForeignForm { return placed({ type: 'foreign' }); }
ForeignForm
  = ("http" "s"? "://" / "www.") [^ \t\r\n]+
  / "@" [a-z] [a-z0-9_]+
  / "#" [a-z0-9_]+
  / t:$("+" Digit+ ([ .-]? "("? Digit+ ")"?)+) &{ return t.replace(/[^0-9]/g, '').length >= 7; }
  / "("? Digit Digit Digit ")"? [ .-]+ Digit Digit Digit+ ([ .-] Digit Digit Digit+)* !Letter
  / Digit12 "/" Digit12 "/" Digit Digit (Digit Digit)? !Digit
  / Digit12 "." Digit12 "." Digit Digit (Digit Digit)? !Digit
  / Decimal Blank ("x" / "*" / "×") Blank Decimal !Digit !Letter
  / Decimal (Blank Length)? Blank ("by" / "x" / "×") Blank Decimal Blank Length !Letter
  / run:$([a-z0-9'.,/-]+) &{ return /[a-z][0-9]+[a-z]*[.,\/-][a-z]?[0-9]/.test(run); }
  / Digit "/" Digit !Digit !(Blank (DegreeUnit / Against))
  / [a-z0-9-]* "_" [a-z0-9_-]*
  / &([a-z]* Digit+ [a-z]+ [a-z0-9-]* Digit) [a-z0-9-]+

Length = "feet" / "foot" / "ft" / "metres" / "meters" / "m" / "'"

Clock = c:ClockForm { return placed(c); }
ClockForm
  = h:$("1" [0-9] / "2" [0-3] / "0"? [0-9]) ":" m:Minute (":" Minute)? p:(Blank @Meridiem)? !Digit { return clock(+h, m, p, h.length === 2 && h[0] === '0'); }
  / h:$("1" [3-9] / "2" [0-3]) "h" m:Minute? !Letter !Digit { return clock(+h, m ?? 0, null, true); }
  / h:Hour12 "." m:Minute Blank p:Meridiem { return clock(h, m, p, true); }
  / h:Hour12 Blank p:Meridiem { return clock(h, 0, p, true); }
  / h:Hour12 p:$[ap] !Letter { return clock(h, 0, p, true); }
  / h:Hour12 Blank ("o'clock" / "oclock" / "o clock") !Letter { return clock(h, 0, null, false); }
  / h:SpelledHour [ \t]+ p:Meridiem { return clock(h, 0, p, true); }
  / h:SpelledHour [ \t]+ m:SpelledMinute p:([ \t]+ @Meridiem)? !([ \t-]* (DegreeUnit / Against)) { return clock(h, m, p, false); }
  / "half" Blank ("past" Blank)? h:HourWord { return clock(h, 30, null, false); }
  / "quarter" Blank ("past" / "after") Blank h:HourWord { return clock(h, 15, null, false); }
  / "quarter" Blank ("to" / "of" / "till") Blank h:HourWord { return clock(h === 1 ? 12 : h - 1, 45, null, false); }
  / h:$([01] [0-9] / "2" [0-3]) m:Minute Blank ("hrs" / "hours" / "hr" / "h") !Letter { return clock(+h, m, null, true); }
  / h:$("0" [0-9]) m:Minute !Digit !Letter !([.,] Digit) { return clock(+h, m, null, true); }
Hour12 = h:$("1" [0-2] / "0"? [1-9]) !Digit { return +h; }
SpelledHour = w:SpelledWord &{ return SPELLED[w] >= 1 && SPELLED[w] <= 12; } { return SPELLED[w]; }
// Quarters of an hour: "ten twenty" may be two temperatures.
SpelledMinute = ("fifteen" !Letter) { return 15; } / ("thirty" !Letter !([ -] Ones)) { return 30; } / "forty" [ -] "five" !Letter { return 45; }
Ones = w:SpelledWord &{ return SPELLED[w] >= 1 && SPELLED[w] <= 9; }
HourWord = Hour12 / w:SpelledWord &{ return SPELLED[w] >= 1 && SPELLED[w] <= 12; } { return SPELLED[w]; }
Minute = m:$([0-5] [0-9]) { return +m; }
Meridiem = a:$[ap] ("m" !Letter / ".m." / ".m" !Letter / Blank "m" !Letter) { return a; }

Day
  = MonthName "."? Blank Digit12 Ordinal? !Degree !Letter !Digit !([.,:] Digit) { return placed({ type: 'day' }); }
  / Digit12 Ordinal? Blank ("of" Blank)? MonthName !Letter { return placed({ type: 'day' }); }
  / Digit Digit Digit Digit "-" Digit12 "-" Digit12 !Digit { return placed({ type: 'day' }); }
  / n:Digit12 Ordinal { return placed({ type: 'ordinal', value: +n }); }
Digit12 = $([0-3] [0-9] / [0-9])
Ordinal = ("st" / "nd" / "rd" / "th") !Letter
MonthName = ("january" / "february" / "march" / "april" / "june" / "july" / "august" / "september" / "october" / "november" / "december"
  / "jan" / "feb" / "mar" / "apr" / "may" / "jun" / "jul" / "aug" / "sept" / "sep" / "oct" / "nov" / "dec") !Letter

Difference
  = ("+" / "-")? Value (Blank DegreeUnit)? Blank ("warmer" / "colder" / "cooler" / "hotter" / ("higher" / "lower" / "more" / "less") Blank "than") !Letter { return placed({ type: 'difference' }); }
  / ("+" / "-")? Value Blank DegreeWord Blank ("off" / "out" / "too" !(Blank ("cold" / "chilly")) / "higher" / "lower" / "difference" / "apart" / "of" Blank ("difference" / "protection")) !Letter { return placed({ type: 'difference' }); }

Amount
  = [$€£] v:Quantity { return placed({ type: 'amount', value: v, noun: '$' }); }
  / v:Spelled [ \t]+ noun:Noun !Letter &{ return noun.length > 2; } { return placed({ type: 'amount', value: v.value, noun }); }
  / v:Quantity Blank "-"? noun:Noun !Letter { return placed({ type: 'amount', value: v, noun }); }
Quantity = t:$([0-9]+ ("," Digit Digit Digit)+) !Digit { return +t.replace(/,/g, ''); } / Decimal
Noun = "%" / "per cent" / w:$([a-z] [a-z0-9/]*) &{ return NOUNS.has(w); } !(&{ return w === 'h' || w === 'l'; } Blank [:=]? Blank [-+]? Digit) { return w; }

Temp
  = sign:Sign v:Numeral u:(Blank @DegreeUnit)? b:(Blank @Against)? w:(Blank @Unit)? Ish? !Letter { return placed({ type: 'temp', ...v, sign, ...(u ?? { unit: null, degree: false }), ...(w === null ? {} : { unit: w }), against: b }); }
  / v:Numeral Blank Degree Blank "frost" !Letter !(Blank "on") { return placed({ type: 'temp', ...v, sign: 'none', unit: null, degree: true, against: 'below-freezing' }); }
  / v:(Part / Numeral) u:(Blank @DegreeUnit)? b:(Blank @Against)? w:(Blank @Unit)? Ish? !Letter &{ return !v.lone || u !== null || b !== null; } { return placed({ type: 'temp', ...v, sign: 'none', ...(u ?? { unit: null, degree: false }), ...(w === null ? {} : { unit: w }), against: b }); }
Sign
  = &{ return /[a-z]/.test(before()); } "-" &Numeral { return 'joined'; }
  / &{ return /[0-9°]/.test(before()); } "-" &Numeral { return 'range'; }
  / "-" &Numeral { return 'minus'; }
  / "-" [ \t]+ &Numeral { return 'loose'; }
  / "+" Blank &Numeral { return 'plus'; }
  / "plus" [ \t]+ &(Numeral Blank (DegreeUnit / [.,;!?\n] / ![^] / ("inside" / "outside" / "in" / "out" / "under" / "overnight" / "at" / "on" / "now" / "this" / "last" / "and" / "but" / "for" / "today") !Letter)) { return 'plus'; }
  / ("minus" / "negative" / "neg.") [ \t]* "-"? &Numeral { return 'minus'; }
  / "neg" [ \t]+ "-"? &Numeral { return 'minus'; }
Numeral
  = v:Decimal half:Half? { return { value: v + (half ?? 0), comma: false, spelled: false, lone: false }; }
  / t:$(Digit Digit?) "," Digit Digit !Digit { return { value: +t, comma: true, spelled: false, lone: false }; }
  / "½" { return { value: 0.5, comma: false, spelled: false, lone: true }; }
  / &{ return /(?:minus|negative) $/.test(input.slice(0, offset())); } "a"? Blank "half" !Letter { return { value: 0.5, comma: false, spelled: true, lone: true }; }
  / v:Spelled half:Half? { return { value: v.value + (half ?? 0), comma: false, spelled: true, lone: v.lone }; }
// "Half a degree below": after a sign, "-1/2" may be two numbers.
Part
  = "1/2" !Digit { return { value: 0.5, comma: false, spelled: false, lone: true }; }
  / "half a" &([ \t]+ DegreeWord) { return { value: 0.5, comma: false, spelled: true, lone: true }; }
  / "a" &([ \t]+ DegreeWord Blank Against) { return { value: 1, comma: false, spelled: true, lone: true }; }
Value = Decimal / v:Spelled { return v.value; }
Decimal
  = t:$([0-9]+ "." [0-9]+) !([.:] Digit) { return +t; }
  / i:$[0-9]+ "," d:$Digit !Digit !([.,] Digit) { return +(i + '.' + d); }
  / t:$("." [0-9]+) { return +t; }
  / t:$[0-9]+ !("," Digit Digit !Digit) !(":" Digit) { return +t; }
Half = "½" { return 0.5; } / "¼" { return 0.25; } / "¾" { return 0.75; }
  / [ \t]+ "and" [ \t]+ ("a" [ \t]+)? "half" !Letter { return 0.5; } / [ \t]+ "and" [ \t]+ "a" [ \t]+ "quarter" !Letter { return 0.25; } / [ \t]+ "and" [ \t]+ "three" [ \t]+ "quarters" !Letter { return 0.75; } / " 1/2" !Digit { return 0.5; }
Spelled
  = whole:Whole " " ("point" / "comma" / "komma") " " tenth:SpelledWord &{ return SPELLED[tenth] < 10; } !Letter { return { value: whole + SPELLED[tenth] / 10, lone: false }; }
  / whole:Whole { return { value: whole, lone: whole === 1 }; }
Whole
  = many:SpelledWord ("-" / " ") "hundred" !Letter rest:((" and")? " " @Below100)? &{ return SPELLED[many] >= 1 && SPELLED[many] <= 9; } { return 100 * SPELLED[many] + (rest ?? 0); }
  / "a hundred" !Letter { return 100; }
  / Below100
Below100
  = tens:SpelledWord ("-" / " ") ones:SpelledWord &{ return SPELLED[tens] >= 20 && SPELLED[ones] >= 1 && SPELLED[ones] < 10; } { return SPELLED[tens] + SPELLED[ones]; }
  / w:SpelledWord { return SPELLED[w]; }
SpelledWord = w:$[a-z]+ &{ return Object.hasOwn(SPELLED, w); } { return w; }
DegreeUnit
  = degree:Degree Blank unit:Unit { return { unit, degree: true }; }
  / Degree { return { unit: null, degree: true }; }
  / unit:Unit { return { unit, degree: true }; }
Degree = "°" / DegreeWord
DegreeWord = ("degrees" / "degree" / "degs" / "degr." / "degr" / "deg." / "dgrs" / "grados" / "grader" / "graden" / "grad" / "degres" / "gradi") !Letter / "deg" !Letter
Unit
  = ("fahrenheit" / "farenheit" / "fahrenhiet" / "fahrenhite" / "farenhite" / "fahreinheit" / "ferenheit" / "fahrenheight" / "farenhiet" / "fahr" / "f") !Letter { return 'F'; }
  / ("celsius" / "celcius" / "celsuis" / "celcious" / "celsious" / "selsius" / "centigrades" / "centigrade" / "c") !Letter { return 'C'; }
Against
  = ("below" / "under") Blank ("zero" / "0" !Digit) !Letter { return 'below-zero'; }
  / ("below" / "under") Blank ("freezing" Blank "point" / "freezing" / "frost" Blank "point") !Letter { return 'below-freezing'; }
  / ("above" / "over") Blank ("zero" / "0" !Digit) !Letter { return 'above-zero'; }
  / ("above" / "over") Blank "freezing" !Letter { return 'above-freezing'; }
  / "above" !Letter !(Blank ("the" / "what" / "normal" / "average" / "your" / "you" / "forecast" / "that" / "it" / "last" / "ground" / "outside" / "inside") !Letter)  { return 'above-zero'; }
  / "of" Blank "frost" !Letter { return 'below-freezing'; }
  / "below" !Letter !(Blank ("the" / "what" / "normal" / "average" / "your" / "you" / "forecast" / "that" / "it" / "last" Blank !("night" / "nite")) !Letter) { return 'below-zero'; }

Word = $(([a-z] / [0-9]+ [a-z]) ([a-z0-9]* ("'" [a-z]+ / "-" [a-z]+)*)) { return placed({ type: 'word' }); }
Mark = [^] { return placed({ type: 'mark' }); }
Ish = "-"? "ish"
Digit = [0-9]
Letter = [a-z]
`;

interface Spot {
  readonly text: string;
  /** Offsets in the text that was read. */
  readonly start: number;
  readonly end: number;
}

export interface ClockToken extends Spot {
  readonly type: 'clock';
  readonly hour: number;
  readonly minute: number;
  /** False where only "morning or evening" is open: "6:40", "7 o'clock". */
  readonly exact: boolean;
}

export interface TempToken extends Spot {
  readonly type: 'temp';
  readonly value: number;
  /** joined: "low-2"; loose: "inside - 2"; range: the second of "28-29". In these three the dash may be no sign. */
  readonly sign: 'none' | 'minus' | 'plus' | 'joined' | 'loose' | 'range';
  readonly unit: 'C' | 'F' | null;
  readonly degree: boolean;
  readonly against: 'below-zero' | 'below-freezing' | 'above-zero' | 'above-freezing' | null;
  /** "28,31": a decimal, or two numbers. */
  readonly comma: boolean;
  readonly spelled: boolean;
}

export interface AmountToken extends Spot {
  readonly type: 'amount';
  readonly value: number;
  readonly noun: string;
}

export interface OrdinalToken extends Spot {
  readonly type: 'ordinal';
  readonly value: number;
}

export interface OtherToken extends Spot {
  readonly type: 'day' | 'difference' | 'foreign' | 'word' | 'mark';
}

export type Token = ClockToken | TempToken | AmountToken | OrdinalToken | OtherToken;

// Compiled once at load: a parser source in the tree would have to be kept in step by hand.
const parser = peggy.generate(VALUE_GRAMMAR);

/** The values, words and marks of a plain text, in order. */
export function readTokens(plain: string): readonly Token[] {
  const tokens: unknown = parser.parse(plain);
  return tokens as readonly Token[];
}
