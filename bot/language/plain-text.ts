const COMPOSED: readonly (readonly [RegExp, string])[] = [
  [/[’‘ʼ´`′]/g, "'"],
  [/[“”]/g, '"'],
  [/[\u00a0\u2007\u2009\u202f]/g, ' '],
  [/[ºª˚∘]/g, '°'],
  // "low27": the thumb missed the blank.
  [/\b(low|lo|min|max|high|inside|outside|out|temp|soil|was|is)(?=\d)/gi, '$1 '],
  [/\by\s*\/\s*n\b/gi, 'yes or no'],
  [/\bw\/o\b/gi, 'without'],
  [/\bw\/(?=\s|$)/gi, 'with'],
  [/[\u{1F44D}\u{1F44C}\u{1F64F}](?=\s*$)/gu, ' ok '],
  // "Ran out there and it is 36": where somebody went is no place of a number.
  [/\b(ran|went|popped|nipped|stepped|dashed|been|came|walked|headed|trudged) out (?=there|here)/gi, '$1 over '],
  // "28o", "28*F": a degree sign on a keyboard that has none.
  [/(\d)o(?=[cf]?\b)(?!')/gi, '$1°'],
  [/(\d)\*(?=[cf]\b)/gi, '$1°'],
  [/(?<=\d)[·∙](?=\d)/g, '.'],
  [/℃/g, '°c'],
  [/℉/g, '°f'],
  // Phones write a minus as any of these. Which of them is a sign is for the grammar to say.
  [/[−–—‒‐‑﹣－]/g, '-'],
];

/** Faces and snowflakes say nothing here; their room is kept, so that all else stays in its place. */
const PICTURES = /[\p{Extended_Pictographic}\u{1F1E6}-\u{1F1FF}\u{1F3FB}-\u{1F3FF}\u200d\ufe0e\ufe0f]+/gu;

/** A picture between words parts them as a comma does. */
const pauseFor = (pictures: string, after: string): string => (/^\s*[\p{L}\d]/u.test(after) ? ','.padStart(pictures.length) : ' '.repeat(pictures.length));

const YES = '[✅✔☑🆗]\\ufe0f?';
const NO = '[❌✖✗✘🚫⛔]\\ufe0f?';
const YES_THEN = new RegExp(`${YES}\\s*([^✅✔☑🆗❌✖✗✘🚫⛔]*)`, 'gu');
const NO_THEN = new RegExp(`${NO}\\s*([^✅✔☑🆗❌✖✗✘🚫⛔]*)`, 'gu');

/** "Covers ✅ heater ❌", "✅ covers ❌ heater": ticks and crosses as the words that they stand for. */
function withTicksSaid(text: string): string {
  if (!/[✅✔☑🆗❌✖✗✘🚫⛔]/u.test(text)) return text;
  if (!/\p{L}/u.test(text)) return text.replace(new RegExp(YES, 'gu'), ' done ').replace(new RegExp(NO, 'gu'), ' not done ');
  const leads = new RegExp(`^\\s*(?:${YES}|${NO})`, 'u').test(text);
  if (leads) return text.replace(YES_THEN, ', did $1').replace(NO_THEN, ', no $1').replace(/^, /, '');
  return text.replace(new RegExp(YES, 'gu'), ' did, ').replace(new RegExp(NO, 'gu'), ' not done, ');
}

/** Where other scripts' digits begin: wide, Arabic, Persian, Devanagari. */
const ZEROS = [0xff10, 0x660, 0x6f0, 0x966];

function withPlainDigits(text: string): string {
  return text.replace(/[\uff10-\uff19\u0660-\u0669\u06f0-\u06f9\u0966-\u096f]/g, (digit) => {
    const code = digit.charCodeAt(0);
    return `${code - (ZEROS.find((zero) => code >= zero && code < zero + 10) ?? code)}`;
  });
}

/** The message in lower case with one form for each quote, dash, blank and degree sign, and without accents. */
export function plainText(text: string): string {
  const oneForm = COMPOSED.reduce((sofar, [found, instead]) => sofar.replace(found, instead), withPlainDigits(withTicksSaid(text)));
  return oneForm.replace(PICTURES, (pictures, at: number, whole: string) => pauseFor(pictures, whole.slice(at + pictures.length))).normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
