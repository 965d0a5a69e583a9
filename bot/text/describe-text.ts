import { PLACE_ATTRIBUTION } from './attribution.js';
import { METRES_PER_FOOT } from '../../engine/index.js';
import type { Ask, Topic } from '../features/describe/state.js';
import type { FoundPlace } from '../ports.js';
import { cautionText } from './caution-text.js';
import { lengthsWords, lengthWords } from './describe-lines-text.js';

/** What a question may speak of. */
export interface QuestionWords {
  readonly primary: 'ft' | 'm';
  readonly temperatureUnits: 'C' | 'F';
  /** The crop that the table does not know. */
  readonly strangeCrop: string | null;
  readonly beds: readonly string[];
  readonly places: readonly FoundPlace[];
  /** Plain numbers of the size, whose unit is open. */
  readonly plainSize: readonly number[];
  readonly likelyHeightM: number | null;
  readonly flame: 'flame-vented' | 'flame-unvented';
  readonly layersAre: string | null;
}

export interface Choice {
  readonly label: string;
  /** The words that the button stands for. */
  readonly says: string;
}

export interface Question {
  readonly text: string;
  readonly choices?: readonly (readonly Choice[])[];
  readonly asksForLocation?: boolean;
}

const choice = (label: string, says = label.toLowerCase()): Choice => ({ label, says });
const SKIP = choice('Skip');
const NO_OR_SKIP = [choice('No'), SKIP];

export const INTRODUCTION = [
  'I am Duskward: each evening I tell you what to do for the plants in your plastic greenhouse.',
  'I work from a forecast and a model, so it is an estimate and no promise: nobody\'s safety should rest on it.',
].join(' ');
export const WELCOME_BACK = 'Welcome back. I kept what you told me.';
export const NOW_TONIGHT = 'That is enough for a first night: the advice comes now.';
export const PAUSED = 'We stop here for now. I keep what you told me: write anything to go on.';
export const ALL_ASKED = 'That is all I ask.';
export const CHANGED = 'Changed.';
export const KNOWN_ALREADY = 'I have that already.';
export const NOT_UNDERSTOOD = 'I did not understand that.';
export const STARTED_OVER = 'We start anew: what you told me is gone.';
export const ASK_START_OVER = 'Shall I forget what you told me and start anew? Answer yes or no.';
export const WHAT_TO_CHANGE = 'What has changed? Say it in plain words.';
export const THE_REST = 'the end of your long message';
export const SAY_SKIP = 'Say "skip" to leave this out.';
export const NEEDED_FIRST = 'I cannot do without this one: no advice stands without it.';
export const TELL_MORE = 'Tell me more, please.';
export const NO_BACK = 'This is the first question.';

/** GeoNames data through the weather service's search; its licence asks for a word where places are shown. */
export { PLACE_ATTRIBUTION };

/** What the channels send is plain: letters of other alphabets, as in names of places, are written in their nearest plain form. */
export const plainName = (name: string): string => name.normalize('NFD').replace(/\p{M}/gu, '').replace(/[’‘`]/gu, "'").replace(/[^\x20-\x7e]/gu, '?');

export const placeWords = ({ name, region, country }: FoundPlace): string => plainName([name, region, country].filter((part) => part !== null).join(', '));
export const placeName = ({ name, region }: FoundPlace): string => plainName([name, region].filter((part) => part !== null).join(', '));

export const lookingFor = (town: string): string => `I am looking for ${plainName(town)}.`;
export const leftOver = (words: readonly string[]): string => `I did not use: ${words.map((word) => `"${plainName(word)}"`).join(', ')}. If it matters, say it in other words.`;

/** The words for one question: what is asked stands first, then an example. */
export function questionText(ask: Ask, words: QuestionWords): Question {
  const feet = words.primary === 'ft';
  // Tubes, a heap and a box of stones have fans too.
  if (ask.detail === 'airflow' || ask.detail === 'battery') return airQuestion(ask, feet);
  switch (ask.topic) {
    case 'place':
      return ask.detail === 'choice' ? whichPlace(words.places) : { text: 'Where is the greenhouse? Share your location, or write the nearest town, for example "Alder Bench, Vermont". Coordinates such as "45.10, -72.20" do too. I keep the place to about 100 m.', asksForLocation: true };
    case 'size':
      return sizeQuestion(ask, words);
    case 'layers':
      return ask.detail === 'count'
        ? { text: `One layer ${words.layersAre === null ? '' : `of ${words.layersAre} `}or two?`, choices: [[choice('One layer'), choice('Two layers')]] }
        : { text: 'How many layers of film are on it: one or two? For example "two layers with a blower". If it is glass or twin-wall panels, say that.', choices: [[choice('One layer'), choice('Two layers')], [choice('Twin-wall panels'), choice('Glass', 'one layer of glass')]] };
    case 'covers':
      return ask.detail === 'weight'
        ? { text: 'How heavy is the fabric: light, medium or heavy? Light is about 17 g/m2 (0.5 oz), medium 30 (0.9 oz), heavy 50 (1.5 oz).', choices: [[choice('Light'), choice('Medium'), choice('Heavy')], [SKIP]] }
        : { text: 'Do you have covers to lay over the beds at night? For example "medium row cover on all beds" or "plastic low tunnels". Or say "no".', choices: [NO_OR_SKIP] };
    case 'water':
      return waterQuestion(ask, feet);
    case 'soil':
      return { text: 'What is the soil in the beds: sand, loam, clay, peat, or full of compost? And is it dry, moist or wet? For example "loam, moist".', choices: [[choice('Sand'), choice('Loam'), choice('Clay'), choice('Full of compost')], [SKIP]] };
    case 'air':
      return airQuestion(ask, feet);
    case 'compost':
      if (ask.detail === 'volume') return { text: `How big is the heap? For example "${feet ? '1 cubic yard' : '1 m3'}" or "${feet ? '4 x 4 x 4 feet' : '1 x 1 x 1 m'}".`, choices: [[SKIP]] };
      if (ask.detail === 'started') return { text: 'When was it heaped up? For example "three weeks ago" or "20 October". A heap fades within weeks.', choices: [[SKIP]] };
      return { text: `Is there a heap of compost or manure that warms it? For example "${feet ? '1 cubic yard' : '1 m3'} against the north bed, started three weeks ago". Or say "no".`, choices: [NO_OR_SKIP] };
    case 'heater':
      return heaterQuestion(ask, words);
    case 'crops':
      if (ask.detail === 'hardiness') return { text: `How much cold does ${plainName(words.strangeCrop ?? 'it')} stand? I do not know it. Answer tender, half-hardy, hardy or very hardy.`, choices: [[choice('Tender'), choice('Half-hardy')], [choice('Hardy'), choice('Very hardy')], [SKIP]] };
      if (ask.detail === 'which-bed') return { text: `Which bed is it in: ${words.beds.join(', ')}?`, choices: [words.beds.slice(0, 4).map((bed) => choice(bed, `in ${bed}`))] };
      return { text: 'What grows in there, and in which bed? For example "kale and spinach in the north bed, lettuce in the south bed". Without beds is fine too.', choices: [[SKIP]] };
    case 'thermometers':
      return ask.detail === 'hang'
        ? { text: `How high does it hang, and in sun or shade? For example "${feet ? '5 feet' : '1.5 m'}, shade".`, choices: [[SKIP]] }
        : { text: `Where do your thermometers hang, how high, in sun or shade? For example "one in the middle, ${feet ? '5 feet' : '1.5 m'} high, in the shade". Or say "none".`, choices: [[choice('None'), SKIP]] };
    case 'evening':
      return { text: 'When do you want the evening message? For example "16:30". With "skip" it comes early enough for the work in it.', choices: [[choice('16:30'), choice('18:00')], [SKIP]] };
    case 'units':
      return { text: `Shall I speak of ${words.temperatureUnits === 'F' ? 'Fahrenheit' : 'Celsius'} and ${feet ? 'feet' : 'metres'}? If not, say "${words.temperatureUnits === 'F' ? 'Celsius' : 'Fahrenheit'}" or "${feet ? 'metric' : 'feet'}".`, choices: [[choice('Yes'), choice(words.temperatureUnits === 'F' ? 'Celsius' : 'Fahrenheit')]] };
  }
}

function whichPlace(places: readonly FoundPlace[]): Question {
  if (places.length === 1) return { text: `Do you mean ${placeWords(places[0]!)}? Answer yes, or write another town.\n${PLACE_ATTRIBUTION}`, choices: [[choice('Yes')]] };
  const lines = places.map((place, at) => `${at + 1} ${placeWords(place)}`);
  return { text: ['Which of these is it? Answer with its number, or write another town.', ...lines, PLACE_ATTRIBUTION].join('\n'), choices: places.map((place, at) => [choice(`${at + 1} ${placeWords(place)}`, String(at + 1))]) };
}

const SHAPES = [[choice('Half-round hoops', 'half-round'), choice('Gothic')], [choice('Gable'), choice('Lean-to')]];
const SHAPE_HELP = 'Gothic is a pointed arch, gable a straight roof on both sides, lean-to one slope from a solid wall.';

function sizeQuestion({ detail }: Ask, words: QuestionWords): Question {
  const feet = words.primary === 'ft';
  switch (detail) {
    case 'height':
      return { text: `How tall is it at the peak? For example "${feet ? '9 feet' : '2.7 m'}".` };
    case 'height-shape':
      return { text: `How tall is it at the peak, and what shape is it? For example "${feet ? '9 feet' : '2.7 m'}, half-round". I know half-round hoops, gothic, gable and lean-to.` };
    case 'shape':
      return { text: `What shape is it: half-round hoops, gothic, gable or lean-to? ${SHAPE_HELP}`, choices: SHAPES };
    case 'side':
      return { text: `How high are its upright side walls? For example "${feet ? '4 feet' : '1.2 m'}", or 0 if the roof starts at the ground.`, choices: [[SKIP]] };
    case 'plain-unit':
      return { text: `Is ${words.plainSize.map(String).join(' by ')} in feet or in metres? In feet it is ${lengthsWords(words.plainSize.map((value) => value * METRES_PER_FOOT), 'ft')}. In metres it is ${lengthsWords(words.plainSize, 'm')}.`, choices: [[choice('Feet'), choice('Metres')]] };
    case 'likely-height':
      return { text: `Shall I count on ${lengthWords(words.likelyHeightM ?? 0, words.primary)} at the peak? Hoops are often about half as tall as they are wide. Answer yes, or say how tall.`, choices: [[choice('Yes')]] };
    default:
      return { text: `How big is it, and what shape? For example "20 by 48 hoop house, 9 feet tall" or "6 by 15 m tunnel, 3 m tall". I know half-round hoops, gothic, gable and lean-to.` };
  }
}

function waterQuestion({ detail }: Ask, feet: boolean): Question {
  switch (detail) {
    case 'count':
      return { text: 'How many of them are there? For example "4".', choices: [[SKIP]] };
    case 'each':
      return { text: 'How much water does one of them hold? For example "55 gallons" or "200 litres".', choices: [[choice('55 gallons'), choice('200 litres')], [SKIP]] };
    case 'amount':
      return { text: `How much stone is it in all? For example "${feet ? '1 cubic yard' : '1 m3'}" or "2 tons".`, choices: [[SKIP]] };
    case 'glazed':
      return { text: `How big is the pane over the stones? For example "${feet ? '10 sq ft' : '1 m2'}".`, choices: [[SKIP]] };
    default:
      return { text: `Is there water or stone in it to hold heat? For example "4 drums of ${feet ? '55 gallons' : '200 litres'}" or "a ton of black stones". Or say "no".`, choices: [NO_OR_SKIP] };
  }
}

function airQuestion({ detail }: Ask, feet: boolean): Question {
  switch (detail) {
    case 'length':
      return { text: `How long is one tube? For example "${feet ? '40 feet' : '12 m'}".`, choices: [[SKIP]] };
    case 'airflow':
      return { text: 'How much air does the fan move? It stands on its label, for example "90 cfm" or "150 m3/h".', choices: [[SKIP]] };
    case 'battery':
      return { text: 'How much does its battery hold? For example "1200 Wh" or "100 Ah 12 V".', choices: [[SKIP]] };
    case 'area':
      return { text: `How big are the vents when fully open? For example "${feet ? '20 sq ft' : '2 m2'}" or "${feet ? '3 by 48 ft' : '1 by 15 m'}, both sides".`, choices: [[SKIP]] };
    case 'depth':
      return { text: `How deep does the foam reach into the ground? For example "${feet ? '2 ft' : '0.6 m'}".`, choices: [[SKIP]] };
    case 'curtain-kind':
      return { text: 'What is the curtain made of: film, fabric or foil?', choices: [[choice('Film', 'film curtain'), choice('Fabric', 'fabric curtain'), choice('Foil', 'foil curtain')], [SKIP]] };
    default:
      return { text: `Is there a fan, or tubes in the ground that a fan blows through? For example "2 tubes, ${feet ? '40 ft long, 2 ft deep, 90 cfm fan' : '12 m long, 0.6 m deep, fan of 150 m3/h'}". Or say "no".`, choices: [NO_OR_SKIP] };
  }
}

function heaterQuestion({ detail }: Ask, { flame }: QuestionWords): Question {
  switch (detail) {
    case 'fuel':
      return { text: 'What does the heater run on: electricity, propane, kerosene, natural gas, wood or candles?', choices: [[choice('Electric'), choice('Propane'), choice('Kerosene')], [choice('Natural gas'), choice('Wood', 'wood stove'), choice('Candles')], [SKIP]] };
    case 'flue':
      return { text: 'Do its fumes go outside through a flue? Answer yes or no.', choices: [[choice('Yes, a flue', 'with a flue'), choice('No flue', 'no flue')], [SKIP]] };
    case 'power':
      return { text: 'How strong is the heater? It stands on its plate, for example "1500 W" or "30000 BTU".', choices: [[SKIP]] };
    case 'candles':
      return { text: 'How many candles burn at once? For example "6".', choices: [[SKIP]] };
    case 'safety':
      return { text: `Please read this and answer "I have read it". ${cautionText(flame)} ${flame === 'flame-unvented' ? 'It comes into no plan of mine. When it burns all the same, say "heater on" and I count its heat.' : 'Without your answer I never advise this heater.'}`, choices: [[choice('I have read it')], [choice('Not now', 'skip')]] };
    default:
      return { text: 'Is there a heater? For example "1500 W electric", "propane, 30000 BTU, no flue" or "6 candles". Or say "no".', choices: [NO_OR_SKIP] };
  }
}

/** Why a thing is asked, for whoever wants to know. */
export const WHY: Readonly<Record<Topic, string>> = {
  place: 'The forecast and the sun are those of your place. A town nearby is good enough to begin with.',
  size: 'Big houses cool more slowly than small ones, and the shape says how much film the sky sees. A tape or a few steps will do.',
  layers: 'A second film with air between holds much of the heat. Pull at the film: two layers slide on each other.',
  covers: 'A cover can be worth several degrees at the leaves. I tell you on which nights it is needed.',
  water: 'Water and stones take in heat by day and give it back at night.',
  soil: 'Most of the heat of the night comes out of the ground. Moist soil holds and brings more of it than dry soil.',
  air: 'A fan through the ground brings heat up on some nights and costs heat on others.',
  compost: 'A heap gives heat for some weeks. Its size and age say how much.',
  heater: 'I tell you on which nights it is worth running, and how much it will use.',
  crops: 'Each crop has its own limit. I tell you which of them are in danger.',
  thermometers: 'A thermometer in the sun or high up reads other than the plants feel. I learn your house from its readings.',
  evening: 'The work should be done before dark, and you should have time for it.',
  units: 'Say what you like to read.',
};
