import { isEverydayWord } from './everyday-words.js';
import type { Piece } from './piece.js';
import { stillTemperature } from './reading-talk.js';
import type { TempToken } from './value-grammar.js';
import { singular } from './word-forms.js';
import { wordings } from './wordings.js';

const list = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

/** "3 long weekends", "4 new raised beds": what may stand between a number and what it counts. */
const BETWEEN = list(`more new extra black big little small long whole full old good different other raised fresh huge blue red white green yellow brown grey gray
  front back fire great large tiny lovely poor dead young baby separate spare cold warm frozen hot wet dry`);
export const isBetween = (word: string): boolean => BETWEEN.has(word);
/** Plurals by themselves. */
const PLURALS = list(`people men women children kids feet teeth mice geese sheep pair pairs dozen lads bairns weans folk percent year yr kilometres miles quid
  grand bucks cups cms mms yards foot inch pair cup bit metre kilometre mile minute bale bag block box row bed bench pot tray`);
/** They end as plurals do and count nothing. */
const NO_NOUN = list(`degrees celsius this always perhaps outdoors indoors thanks plus across says shows reads feels looks seems yes versus lows highs less towards upwards afterwards sometimes besides downstairs upstairs
  drops falls hits goes gets stays holds means makes helps rises sinks dips climbs was is has as gas bless cheers regards congratulations kisses hugs
  sorry alas yours ours theirs hers his does sits stands starts ends lies hovers mornings evenings afternoons tonights overnights temps`);
/** Who is spoken to, at the end of what is said: "28 folks". */
const SPOKEN_TO = list('guys folks friends mates lads boys girls peeps pals people dears ladies gents team');
/** "All 4 lettuces", "lost 3 kales": without such a word the number before a crop may be a low with a question after it. */
const OF_CROPS = list('still had have got all the my our lost of only about picked these those other both last first planted killed');
/** "The 7 of us". */
const OF_PEOPLE = list('us them you those these my our');
/** Nothing after an age makes it a temperature. */
const AFTER_AGE = list('and but so now years ; , . this next with years-old said says thought thinks phoned called told tells rang came');

/** "Day 3", "page 12". */
const NUMBERED = wordings`
  ^(?:day|week|month|chapter|page|part|version|round|season|winter|channel|level|grade|step|platform|junction|route|lesson|episode|volume|plot|lot|bay|
  gate|year|class|form|room|flat|bus|road|highway|lane|unit)$
`;

const isPlural = (word: string): boolean =>
  PLURALS.has(word) || /(?:children|men|women|people)$/.test(word) || (word.length > 3 && word.endsWith('s') && !/(?:ss|us|is)$/.test(word) && !NO_NOUN.has(word) && isEverydayWord(word) && (isEverydayWord(singular(word)) || isEverydayWord(word.slice(0, -1))));

/** "Coming down with something, temp of 101". */
const ILL = / (?:fever|feverish|flu|coming down with|down with (?:a|the)|off sick|the doctor) /;
/** "The kids are 5 and 7". */
const AGE_OF = wordings`
  (?:kids|children|boys?|girls?|twins|son|daughter|sons|daughters|grandson|granddaughter|grandkids|grandchildren|nephew|niece|baby|dog|cat|wife|husband|
  mum|mom|dad|granny|grandad|grandma|grandpa) (?:is|are|was|were|turned|turns) (?:only |now |just |nearly |almost )?(?:#\d+ (?:and|,) )?$
`;
const AGE_REACH = 7;
const FIRST_YEAR = 1900;
const LAST_YEAR = 2100;

/** "Since 2021". */
export const isYear = (pieces: readonly Piece[], at: number, { sign, unit, degree, value }: TempToken): boolean =>
  sign === 'none' && unit === null && !degree && Number.isInteger(value) && value >= FIRST_YEAR && value <= LAST_YEAR && !/^(?:is|was|at|to|reads|says|shows|it)$/.test(pieces[at - 1]?.symbol ?? '');

/** Whether a bare number counts something that is no degree: "3 weekends", "2 pair of socks", "the 7 of us", "I'm 81". */
export function countsSomething(pieces: readonly Piece[], at: number, temp: TempToken): boolean {
  const isOfFrost = NUMBERED.test(pieces[at - 1]?.symbol ?? '') && temp.sign === 'none' && temp.against === 'below-freezing' && !/deg|°/.test(temp.text);
  if (isOfFrost) return true;
  if (temp.sign !== 'none' || temp.unit !== null || temp.degree || temp.against !== null || temp.comma || !Number.isInteger(temp.value)) return false;
  const symbolAt = (where: number): string => pieces[where]?.symbol ?? '';
  const before = symbolAt(at - 1);
  const after = symbolAt(at + 1);
  if (/^(?:i am|he is|she is|who is|he turned|she turned|i turned)$/.test(`${symbolAt(at - 2)} ${before}`) && (after === '' || AFTER_AGE.has(after) || /^(?:today|yesterday|tomorrow|soon)$/.test(after))) return true;
  if (NUMBERED.test(before) && !/^(?:last|this|all|the|that|per|a|every|each|first|cold)$/.test(symbolAt(at - 2))) return true;
  if (/^(?:we|there) are$/.test(`${symbolAt(at - 2)} ${before}`) && (after === '' || AFTER_AGE.has(after) || after === 'of')) return true;
  if (after === 'too' && /^(?:old|young)$/.test(symbolAt(at + 2))) return true;
  if (before === 'to' && /^(?:lived|live|lives)$/.test(symbolAt(at - 2))) return true;
  if (/^(?:spend|spent|spending|pay|paid|cost|costs|budget|save|saved|invest|worth)$/.test(before)) return true;
  if (before === 'turned' && symbolAt(at - 2) !== 'it' && (after === '' || AFTER_AGE.has(after) || /^(?:today|yesterday|tomorrow|soon)$/.test(after))) return true;
  if (AGE_OF.test(` ${pieces.slice(Math.max(at - AGE_REACH, 0), at).map(({ symbol }) => symbol).join(' ')} `)) return true;
  if (ILL.test(` ${pieces.map(({ symbol }) => symbol).join(' ')} `) && !pieces.some(({ symbol }) => /^[&$@]/.test(symbol))) return true;
  // "All 6 about the same", "since 2021", "happy birthday to me, 70 today".
  if (before === 'all' && !/^(?:is|was|are|were|at|it)$/.test(symbolAt(at - 2))) return true;
  if (pieces.some(({ symbol }) => symbol === 'birthday') && temp.value > 0 && !pieces.some(({ symbol }) => /^[&$@]/.test(symbol))) return true;
  if (after === 'of' && OF_PEOPLE.has(symbolAt(at + 2))) return true;
  const noun = [at + 1, at + 2, at + 3].find((where) => !BETWEEN.has(symbolAt(where))) ?? at + 1;
  const named = symbolAt(noun);
  // "The 3 basil pots", "planted out 12 leeks".
  if (named.startsWith('%') && isPlural(symbolAt(noun + 1)) && !stillTemperature(symbolAt(noun + 1))) return true;
  if (named.startsWith('%')) return (OF_CROPS.has(before) || pieces.slice(Math.max(at - 3, 0), at).some(({ symbol }) => /^(?:planted|sowed|sown|transplanted|potted|growing|grow|bought)$/.test(symbol))) && /s$/i.test(pieces[noun]?.written ?? '');
  if (SPOKEN_TO.has(named) && /^(?:[;,?]|)$/.test(symbolAt(noun + 1))) return false;
  // "It got to 28 hours ago" and the like were read as amounts already.
  return /^[a-z]/.test(named) && isPlural(named) && !stillTemperature(named);
}
