import peggy from 'peggy';

/**
 * An island grammar for the words of somebody who describes a greenhouse: measures with or without a unit are taken
 * wherever they stand, all the rest is words and marks. Unlike the grammar of messages about a night, a bare number
 * here is a size or a count and never a temperature.
 */
export const MEASURE_GRAMMAR = String.raw`
{{
  const SPELLED = { zero: 0, one: 1, two: 2, three: 3, four: 4, five: 5, six: 6, seven: 7, eight: 8, nine: 9, ten: 10,
    eleven: 11, twelve: 12, thirteen: 13, fourteen: 14, fifteen: 15, sixteen: 16, seventeen: 17, eighteen: 18, nineteen: 19,
    twenty: 20, thirty: 30, forty: 40, fourty: 40, fifty: 50, sixty: 60, seventy: 70, eighty: 80, ninety: 90 };
  const TENS = 20;
  const PARTS = { '½': 0.5, '¼': 0.25, '¾': 0.75 };
}}
{
  const placed = (token) => { const { start, end } = range(); return { ...token, start, end, text: input.slice(start, end).trim() }; };
  const before = () => { const at = offset(); return at === 0 ? '' : input[at - 1]; };
}

Message = list:(Blank @Token)* Blank { return list; }
Blank = [ \t\r]*
Token = Measure / Word / Mark

Measure
  = m:FeetInches { return placed({ type: 'measure', ...m }); }
  / ("an" / "a") [ ]+ u:BulkUnit { return placed({ type: 'measure', value: 1, unit: u }); }
  / [$€£] Blank v:Value !Letter { return placed({ type: 'measure', value: v, unit: 'money' }); }
  / v:Value Blank "-"? u:Unit { return placed({ type: 'measure', value: v, unit: u }); }
  / v:Value End { return placed({ type: 'measure', value: v, unit: null }); }
FeetInches
  = f:Number "'" Blank i:Number ('"' / "''" / Blank InchWord) &{ return i < 12; } { return { value: f + i / 12, unit: 'ft' }; }
  / f:Number "'" i:Number !Digit &{ return i < 12; } !(Blank ("'" / FootWord / [x*] / "by" !Letter)) { return { value: f + i / 12, unit: 'ft' }; }
  / f:Number Blank FootWord Blank ("and" Blank)? i:Number Blank InchWord &{ return i < 12; } { return { value: f + i / 12, unit: 'ft' }; }
Value
  = n:Number Blank? "k" !Letter { return n * 1000; }
  / n:Number { return n; }
  / &{ return !/[0-9a-z]/.test(before()); } "-" n:Number { return -n; }
  / "minus" Blank n:Number { return -n; }
  / ("half" / "1/2") Blank "a" Blank "dozen" !Letter { return 6; }
  / ("half" Blank "an"? "a"?) !Letter { return 0.5; }
  / s:Spelled Blank "and" Blank "a" Blank "half" !Letter { return s + 0.5; }
  / s:Spelled Blank "dozen" !Letter { return s * 12; }
  / ("a" Blank)? "dozen" !Letter { return 12; }
  / "a" Blank ("couple" / "pair") (Blank "of")? !Letter { return 2; }
  / "a" Blank "hundred" !Letter { return 100; }
  / s:Spelled { return s; }
Number
  = t:$([0-9]+ ("," Digit Digit Digit)+) !Digit { return +t.replace(/,/g, ''); }
  / w:Digits [ -] f:Fraction { return w + f; }
  / w:Digits p:[½¼¾] { return w + PARTS[p]; }
  / w:Digits Blank "and" Blank "a" Blank "half" !Letter { return w + 0.5; }
  / f:Fraction { return f; }
  / p:[½¼¾] { return PARTS[p]; }
  / t:$([0-9]+ "." [0-9]+) !([.] Digit) { return +t; }
  / i:$[0-9]+ "," d:$(Digit Digit?) !Digit !("," Digit) { return +(i + '.' + d); }
  / t:$("." [0-9]+) { return +t; }
  / n:Digits { return n; }
Digits = t:$[0-9]+ { return +t; }
Fraction = a:[1-9] "/" b:[2-9] !Digit { return +a / +b; }
Spelled
  = tens:SpelledWord ("-" / " ") ones:SpelledWord &{ return SPELLED[tens] >= TENS && SPELLED[ones] >= 1 && SPELLED[ones] < 10; } !Letter { return SPELLED[tens] + SPELLED[ones]; }
  / w:SpelledWord !Letter { return SPELLED[w]; }
SpelledWord = w:$[a-z]+ &{ return Object.hasOwn(SPELLED, w); } { return w; }

Unit
  = SquareUnit
  / CubicUnit
  / OtherUnit
  / LengthUnit
  / &{ return /[0-9½¼¾]/.test(before()); } "'" !"'" { return 'ft'; }
  / ('"' / "''") { return 'in'; }
  / ("in" "."? End &(Blank (![^] / [,;x.)*0-9] / ("by" / "wide" / "tall" / "high" / "long" / "deep" / "thick" / "diameter" / "dia" / "pipe" / "pipes" / "tube" / "tubes" / "round" / "foam" / "of") !Letter))) { return 'in'; }
BulkUnit
  = CubicUnit
  / FootWord End { return 'ft'; }
  / ("yard" / "yd") End { return 'yd'; }
  / ("gallon" / "gal") End { return 'gal'; }
  / ("tonne") End { return 'tonne'; }
  / ("ton") End { return 'ton'; }
SquareUnit
  = ("square" / "sq."/ "sq") Blank ("feet" / "foot" / "ft."/ "ft") End { return 'sq ft'; }
  / ("ft2" / "ft²" / "sqft" / "sf") End { return 'sq ft'; }
  / ("square" / "sq." / "sq") Blank ("metres" / "metre" / "meters" / "meter" / "m") End { return 'm2'; }
  / ("m2" / "m²" / "sqm") End { return 'm2'; }
CubicUnit
  = ("cubic" Blank FootWord / "cu" "."? Blank FootWord / "cuft" / "ft3" / "ft³" / "cft") Blank ("per" / "a") Blank "minute" End { return 'cfm'; }
  / ("cubic" / "cu." / "cu") Blank FootWord End { return 'cu ft'; }
  / ("cuft" / "ft3" / "ft³" / "cft") End { return 'cu ft'; }
  / ("cubic" / "cu." / "cu") Blank ("yards" / "yard" / "yds" / "yd") End { return 'cu yd'; }
  / ("yd3" / "yd³") End { return 'cu yd'; }
  / (("cubic" / "cu." / "cu") Blank MetreWord / "m3" / "m³" / "cbm") Blank ("/" / "per" / "an") Blank ("hours" / "hour" / "hr" / "h") End { return 'm3/h'; }
  / ("cmh" / "m3h") End { return 'm3/h'; }
  / (("cubic" / "cu." / "cu") Blank MetreWord / "m3" / "m³" / "cbm" / "cubes" / "cube") End { return 'm3'; }
OtherUnit
  = ("gallons" / "gallon" / "galons" / "galon" / "gallns" / "gals" / "gal." / "gal") End { return 'gal'; }
  / ("litres" / "litre" / "liters" / "liter" / "ltrs" / "ltr" / "lts" / "lt") End { return 'l'; }
  / "l" Blank ("/" / "per") Blank ("second" / "sec" / "s") End { return 'l/s'; }
  / "l" End { return 'l'; }
  / ("kwh" / "kilowatt" "-"? Blank "hours" / "kilowatt" "-"? Blank "hour") End { return 'kwh'; }
  / ("wh" / "watt" "-"? Blank "hours" / "watt" "-"? Blank "hour") End { return 'wh'; }
  / ("ah" / "amp" "-"? Blank "hours" / "amp" "-"? Blank "hour") End { return 'ah'; }
  / ("volts" / "volt" / "v") End { return 'v'; }
  / ("kilowatts" / "kilowatt" / "kw") End { return 'kw'; }
  / ("watts" / "watt" / "wats" / "wat" / "w") End { return 'w'; }
  / ("btus" / "btu") (Blank ("/" / "per" / "an") Blank ("hours" / "hour" / "hr" / "h"))? End { return 'btu'; }
  / ("btuh") End { return 'btu'; }
  / ("g" / "grams" / "gram") Blank ("/" / "per" / "a") Blank ("square" / "sq")? Blank ("m2" / "m²" / MetreWord) End { return 'g/m2'; }
  / ("gsm" / "grams" / "gram" / "gr" / "g") End { return 'g/m2'; }
  / ("ounces" / "ounce" / "oz.") End { return 'oz'; }
  / "oz" (Blank ("/" / "per") Blank ("yd2" / "yard" / "sq" Blank "yd" / "square" Blank "yard"))? End { return 'oz'; }
  / ("mils" / "mil") End { return 'mil'; }
  / ("microns" / "micron" / "um" / "gauge") End { return 'micron'; }
  / ("kilograms" / "kilogram" / "kilos" / "kilo" / "kgs" / "kg") End { return 'kg'; }
  / ("pounds" / "pound" / "lbs" / "lb") End { return 'lb'; }
  / ("tonnes" / "tonne") End { return 'tonne'; }
  / ("tons" / "ton") End { return 'ton'; }
  / ("cfm") End { return 'cfm'; }
  / ("percent" / "per cent" / "%") End { return 'percent'; }
  / ("°" / "degrees" / "degree" / "deg") Blank ("fahrenheit" / "f") End { return 'F'; }
  / ("°" / "degrees" / "degree" / "deg") Blank ("celsius" / "celcius" / "c") End { return 'C'; }
  / ("fahrenheit" / "f") End { return 'F'; }
  / ("celsius" / "celcius" / "c") End { return 'C'; }
  / ("°" / "degrees" / "degree" / "deg") End { return 'degree'; }
  / ("minutes" / "minute" / "mins") End { return 'minute'; }
  / ("hours" / "hour" / "hrs" / "hr") End { return 'hour'; }
  / ("days" / "day") End { return 'day'; }
  / ("weeks" / "week" / "wks") End { return 'week'; }
  / ("months" / "month") End { return 'month'; }
  / ("years" / "year" / "yrs") End { return 'year'; }
  / ("dollars" / "bucks" / "euros" / "cents" / "pence") End { return 'money'; }
LengthUnit
  = FootWord End { return 'ft'; }
  / ("inches" / "inch" / "in.") End { return 'in'; }
  / ("millimetres" / "millimeters" / "mm") End { return 'mm'; }
  / ("centimetres" / "centimeters" / "centimetre" / "centimeter" / "cms" / "cm") End { return 'cm'; }
  / MetreWord End { return 'm'; }
  / ("yards" / "yard" / "yds" / "yd") End { return 'yd'; }
FootWord = "feets" / "feet" / "foots" / "foot" / "fts" / "ft." / "ft"
InchWord = "inches" / "inch" / "ins" / "in"
MetreWord = "metres" / "metre" / "meters" / "meter" / "mtrs" / "mtr" / "m"

Word = "x" &(Blank [0-9]) { return placed({ type: 'word' }); }
  / $(([a-z] / [0-9]+ [a-z]) ([a-z0-9]* ("'" [a-z]+)*)) { return placed({ type: 'word' }); }
Mark = [^] { return placed({ type: 'mark' }); }
End = !Letter / &("x" Blank [0-9])
Digit = [0-9]
Letter = [a-z]
`;

interface Spot {
  readonly text: string;
  /** Offsets in the text that was read. */
  readonly start: number;
  readonly end: number;
}

/** Units as the grammar names them; those of the greenhouse file are written the same way there. */
export type MeasureUnit =
  | 'ft' | 'in' | 'm' | 'cm' | 'mm' | 'yd'
  | 'sq ft' | 'm2'
  | 'cu ft' | 'cu yd' | 'm3' | 'gal' | 'l'
  | 'kg' | 'lb' | 'ton' | 'tonne'
  | 'g/m2' | 'oz' | 'mil' | 'micron'
  | 'w' | 'kw' | 'btu' | 'wh' | 'kwh' | 'ah' | 'v'
  | 'cfm' | 'm3/h' | 'l/s'
  | 'C' | 'F' | 'degree' | 'percent' | 'money'
  | 'minute' | 'hour' | 'day' | 'week' | 'month' | 'year';

export interface MeasureToken extends Spot {
  readonly type: 'measure';
  readonly value: number;
  readonly unit: MeasureUnit | null;
}

export interface WordToken extends Spot {
  readonly type: 'word' | 'mark';
}

export type HouseToken = MeasureToken | WordToken;

// Compiled once at load: a parser source in the tree would have to be kept in step by hand.
const parser = peggy.generate(MEASURE_GRAMMAR);

/** The measures, words and marks of a plain text, in order. */
export function readMeasures(plain: string): readonly HouseToken[] {
  const tokens: unknown = parser.parse(plain);
  return tokens as readonly HouseToken[];
}
