import { nightMeant } from './night.js';
import { unclear, type Intent, type Unclear } from './intent.js';
import type { Message } from './message.js';
import { ORDINARY_WORDS } from './ordinary-words.js';
import { listed, wordings } from './wordings.js';

const FATE_WORDS = wordings`
  ^(?:survive|survives|ok|fine|safe|live|alive|die|dies|dying|dead|freeze|freezing|frozen|hold|cope|coping|hurt|damage|damaged|nipped|hit|burn|burnt|
  burned|trouble|danger|risk|last|lasts|handle|stand|toast|lost|lose|losing|good|fare|take|struggle|suffer|harmed|harm|killed|kill|kills|endangered|
  hardy|tolerate|withstand|happy|worry|worried|worrying|chance|chances|odds|gone|goner|goners|protected|doomed|bear|bears|support|supports|perish|
  perishes|wilt|wilts|cooked|done|mind|minds|tough|cope|copes|fares|faring|surviving|freezes|limit|mush|thrive|suffering|screwed|stuffed|croak|resist|
  resists|endure|endures|manage|cark|vulnerable|sensitive|jeopardy)$
`;
const FATE_PHRASES = wordings`
  how (?:is|are|will|does|do|would|they|it) .*(?:do|doing|look|looking|like)|(?:make|makes|making) it|(?:hold|holds) (?:up|out)
  (?:pull|come|get|getting) through|all right|be there|happen to|how (?:cold|low) can (?:the |my |our )?%\d+|(?:hang|hanging) (?:in|on|&inside)
  stick it out|ride it out|(?:worried|nervous|worry|anxious|concerned) about|how (?:bad|safe|risky|dangerous|rough) is it for
  (?:lowest|coldest) (?:temperature |that |for |the |my |can )*%\d+|how much (?:cold|frost)
  (?:lowest|coldest|minimum) (?:temperature )?(?:for|of) (?:the |my )?%\d+|see the morning|see morning|kick the bucket|bite the dust|give up the ghost
  say goodbye|kiss goodbye|goodbye to|too cold|cold enough|warm enough|through the night|bounce back|stick it|in trouble|at risk
  (?:be|come (?:up|out)) right|cop it|hack it|take the cold|be a goner
`;

const speaksOfFate = (said: string): boolean => FATE_PHRASES.test(said) || said.split(' ').some((word) => FATE_WORDS.test(word));

const NOT_CROPS = new Set(`tonight tomorrow yesterday forecast outlook history settings record she he her him it they them this that these those everything anything
  all plants plant crops crop stuff things house greenhouse night something we i you there beds bed garden veg veggies vegetables greens lot
  we're there's not yes no yet frost weather temperature snow wind power forecast message one what how fire`.split(/\s+/));
const ALL_OF_THEM = new Set('everything anything all plants plant crops crop stuff things beds bed garden veg veggies vegetables greens lot'.split(' '));
const FATE_VERB = `(?:${listed(`
  survive|make it|make it through|be ok|be fine|be safe|be all right|live|die|freeze|hold up|cope|pull through|come through|get through
  be hurt|be damaged|get hurt|get damaged|get nipped|handle|stand|take|last|fare|do tonight|ok|fine|safe|in danger|at risk|all right|going to
  doing|do|look|looking|still be there|care|mind|suffer
`).join('|')})`;
// "It" may be the weather: "will it freeze", "will it last".
const IT_LIVES = / it (?:survive|live|die|make it|pull through|come through|be ok|be fine|be safe|be all right|be hurt|be damaged|get hurt|get nipped) /;
const UNKNOWN: readonly RegExp[] = [
  new RegExp(`^ (?:will|would|is|are|can|could|should|do|does|how will|how is|how are|how would) (?:the |my |our |those |these |any of the |all the |all my )?([a-z][a-z ]*?) ${FATE_VERB} `),
  wordings`
    ^ (?:how about|what about|and|is it too cold for|too cold for|will i lose|am i going to lose|worried about) (?:the |my |our |
    those )?([a-z]+)(?: tonight| tomorrow| tomorrow night)? (?:\? )?$
  `,
  /^ (?:the |my |our )?([a-z]+)(?: tonight| tomorrow| ok| safe| fine| tomorrow night| ok tonight)* \? $/,
];

/** The crop word that is not in the table: a wrong crop would be worse than a question. */
function unknownCrop({ form }: Message): Unclear | null {
  for (const pattern of UNKNOWN) {
    const name = pattern.exec(form)?.[1]?.trim();
    if (name === undefined || name === '') continue;
    const words = name.split(' ');
    const last = words.at(-1) ?? '';
    if (ALL_OF_THEM.has(last) || /^(?:it|they|them|those|these)$/.test(last)) return pattern === UNKNOWN[0] && (last !== 'it' || IT_LIVES.test(form)) ? unclear('which-crop', ALL_OF_THEM.has(last) ? { word: last } : {}) : null;
    if (NOT_CROPS.has(last) || words.some((word) => NOT_CROPS.has(word)) || words.length > 3) continue;
    if (pattern !== UNKNOWN[0] && (ORDINARY_WORDS.has(last) || last.length < 3)) continue;
    if (pattern === UNKNOWN[0] && ORDINARY_WORDS.has(last) && !ORDINARY_PLANTS.has(last)) continue;
    return unclear('which-crop', { word: name });
  }
  return null;
}

const ORDINARY_PLANTS = new Set(['herbs', 'herb', 'flowers', 'seeds', 'seedlings', 'trees', 'plants', 'fruit', 'clover', 'heather', 'grass', 'roots', 'leaves']);

/** The crops that are named; asks where a name is claimed by several. */
export function namedCrops(message: Message): readonly string[] | Unclear {
  const ids: string[] = [];
  for (const { ids: claimed, words } of message.hits) {
    const [only] = claimed;
    if (only === undefined || claimed.length > 1) return unclear('which-crop', { word: words, choices: claimed });
    if (!ids.includes(only)) ids.push(only);
  }
  // "30 strawberry plants ... are the strawberries safe" asks of one.
  const named = ids.filter((id) => !ids.some((family) => id.startsWith(`${family}_`)));
  // "Basil seedlings" are basil.
  const plants = named.filter((id) => !id.startsWith('seedling_'));
  return plants.length > 0 ? plants : named;
}

/** "18 ft of carrots with no cover on. Will they be ok?": of the crops named before, where a question names none itself. */
export function cropsNamedBefore(question: Message, whole: Message): Intent | null {
  const crops = namedCrops(whole);
  const night = nightMeant(question);
  const [only, ...more] = 'kind' in crops ? [] : crops;
  if (only === undefined || 'kind' in night || !/ (?:they|them|it|those|these) /.test(question.said)) return null;
  return more.length === 0 ? { kind: 'crop', crop: only, night: night.night } : { kind: 'crop', crops: [only, ...more], night: night.night };
}

const ONLY_CROPS = /^ (?:(?:%\d+|and|or|the|my|our|about|how|is|are|what|of|tonight|tomorrow|night|overnight|for|on|this|plus|also|then|all|\w+day|baby|young|little|,|\/) )*(?:\? )?$/;
const NEEDS = / (?:do|does|will) (?:i |we )?(?:need|have) to /;

/** Whether a crop will come through a night. */
export function cropQuestion(message: Message): Intent | null {
  const { said, form } = message;
  const hasFate = speaksOfFate(said);
  if (message.hits.length === 0) return message.asks && !NEEDS.test(said) ? unknownCrop(message) : null;
  const ahead = / (?:worried|worry|worrying|nervous|concerned) (?:about|for) /.test(said) || (/ (?:tonight|tomorrow|overnight|going to|will) /.test(said) && hasFate);
  if (!message.asks && !ahead) return null;
  if (!(ONLY_CROPS.test(form) || hasFate)) return null;
  const crops = namedCrops(message);
  if ('kind' in crops) return crops;
  const night = nightMeant(message);
  if ('kind' in night) return night;
  const [only, ...more] = crops;
  if (only === undefined) return null;
  return more.length === 0 ? { kind: 'crop', crop: only, night: night.night } : { kind: 'crop', crops, night: night.night };
}
