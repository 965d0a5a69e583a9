import { ITEM_BY_PHRASE } from '../item-words.js';
import { singular } from '../word-forms.js';

/** What a phrase stands for in somebody's description of a greenhouse. Longer phrases win; what is not here is looked up among the items of a night. */
const HOUSE_WORDS = {
  hoops: 'hoop house|hoophouse|hooped house|hoop|high tunnel|hi tunnel|poly tunnel|polytunnel|tunnel|walk in tunnel|caterpillar tunnel|caterpillar',
  'half-round': 'half round|halfround|round|round top|round roof|rounded|quonset|semicircle|semi circle|semicircular|arched|arch|round arch|hooped',
  gothic: 'gothic|gothic arch|pointed|pointed arch|pointed top|peaked arch|gothic style|gothick',
  gable: 'gable|gabled|gable roof|gable end|pitched roof|peaked roof|pitched|apex|apex roof|a frame|aframe|house shaped|barn shaped|barn style|straight sided|stick built',
  'lean-to': 'lean to|leanto|lean 2|lean too|attached to the house|attached to our house|attached to my house|attached to the barn|attached to the garage|built against the house|built against the barn',
  dome: 'dome|geodesic dome|geodome|geodesic|yurt|sphere|pyramid',
  house: 'greenhouse|green house|glasshouse|glass house|house|structure|building',
  double: 'double|dual|doubled|twin',
  two: 'double layer|double layered|two layered|double poly|double plastic|double film|double skin|double skinned|double polythene|double polyethylene|double covering|double covered|double walled|twin skin|twin layer|2 ply|two ply',
  single: 'single|single layer|single layered|single poly|single plastic|single film|single skin|single skinned|single polythene|single ply|one ply',
  layer: 'layer|skin|ply|layer of film|layer of plastic|layer of poly|layer of polythene|layer of polyethylene|layer of covering|sheet of plastic|sheet of poly|sheet of film|covering',
  second: 'second layer|2nd layer|second skin|second film|second sheet|second layer of film|second layer of plastic|second layer of poly|another layer|another layer of plastic|another layer of film|another layer of poly|inner layer|inner skin|inner film|extra layer',
  film: 'plastic|poly|film|standard|standard film|standard plastic|ordinary film|ordinary plastic|plain film|plain plastic|polythene|polyethylene|greenhouse film|greenhouse plastic|greenhouse poly|clear plastic|plastic film|poly film|plastic sheeting|pe film',
  thermal: 'thermal film|thermal plastic|eva|eva film|thermal poly|thermal polythene|thermic film',
  ir: 'ir film|ir|infrared film|infrared|ir poly|ir plastic|ir coated|ir barrier|infrared plastic',
  glass: 'glass|glas|glass pane|pane|glazed|glazing',
  panels: 'twin wall|twinwall|twin walled|polycarbonate|poly carbonate|polycarb|twin wall polycarbonate|twinwall polycarbonate|multiwall|multi wall|double wall polycarbonate|polycarbonate panel|twin wall panel|polycarbonate sheet',
  blower: 'blower|inflated|inflation|inflation fan|inflation blower|air inflated|inflate|blown apart|inflator|air between',
  lowtunnel: 'low tunnel|low tunnels of plastic|inner tunnel|inner hoop|low hoop|cloche|caterpillar cover|mini tunnel|plastic tunnel|film tunnel|plastic low tunnel|poly low tunnel|plastic cloche',
  cover: 'row cover|rowcover|floating cover|floating row cover|bed cover|crop cover|fleece|garden fleece|winter fleece|frost cloth|frost cover|frost fabric|garden fabric|fabric|spunbond|spun bond|spunbonded fabric|blanket|frost blanket|sheet|bed sheet|cloth',
  light: 'light|lightweight|thin|light weight|summer weight',
  medium: 'medium|mid weight|medium weight|midweight|regular|normal|standard weight|all purpose',
  heavy: 'heavy|heavyweight|heavy weight|thick|heavy duty|winter weight',
  drum: 'drum|oil drum|steel drum|barrel|tote|ibc|ibc tote|ibc tank|jug|milk jug|bucket|pail|water bottle|bottle|water tank|tank|water drum|water barrel|water tote|water jug|barrel of water|drum of water|jug of water|bucket of water|jerry can|jerrycan|carboy|rain barrel|water butt|butt',
  water: 'water',
  stonebox: 'stone box|rock box|glazed stone box|glazed box|glazed rock box|box of stone|box of rock|glass box of stone|solar box|box of gravel|rock bin|stone bin',
  gravel: 'gravel|pea gravel|pale gravel|crushed stone|pebble',
  brick: 'brick|paver|brick paver',
  concrete: 'concrete|concrete block|cinder block|cinderblock|breeze block|concrete paver|concrete wall|block',
  rock: 'rock|stone|boulder|river rock|field stone|fieldstone|cobble|flagstone|rock pile|pile of rock|masonry|masonry store',
  wall: 'north wall|back wall|rear wall|insulated wall|insulated north wall|solid wall|solid north wall|solid back wall|north side wall|insulated back wall|stone wall|brick wall|masonry wall|block wall|west wall|east wall|south wall|house wall|barn wall|straw bale wall|heated wall',
  anywall: 'wall|wall height',
  side: 'side|side wall|sidewall|eave|knee wall|kneewall|hip|shoulder|upright|straight side|hip board|eaves height|gutter',
  edge: 'edge insulation|perimeter insulation|foundation insulation|perimeter foam|edge foam|foam around the edge|foam around the outside|foam around the perimeter|foam around the foundation|frost skirt|insulated skirt|skirt|foam skirt|insulated foundation|foundation foam|buried foam|foam in the ground|foam board in the ground|foam board around the edge|foam board around the perimeter|foam board around the foundation',
  foam: 'foam|wall insulation|foam board|foamboard|rigid foam|insulation|insulated|polystyrene|styrene board|insulation board',
  tube: 'tube|ground tube|earth tube|air tube|buried tube|buried pipe|ground pipe|underground pipe|underground tube|underground duct|pipe|duct|drain pipe|drain tile|climate battery|earth pipe|pipe in the ground|tube in the ground|pipe under the bed|tube under the bed',
  airfan: 'circulation fan|circulating fan|circulator fan|haf fan|haf|box fan|ceiling fan|stirring fan|mixing fan|air circulation fan|horizontal airflow fan|air circulator|circulator',
  fan: 'fan|inline fan|duct fan|inline duct fan|bilge fan|computer fan|blower fan|tube fan',
  battery: 'battery',
  sunfan: 'solar|solar panel|solar powered|panel powered|pv|sun powered|sun only',
  mains: 'mains|grid|plugged in|plug in|wall power|house power|mains power|grid power|house current|outlet',
  compost: 'compost heap|compost pile|compost|hot bed|hotbed|manure|manure pile|manure heap|muck heap|heap|horse manure|compost bin|hot compost|compost heater|pile of compost|heap of compost|pile of manure|heap of manure|compost mound',
  piped: 'piped|pipe through it|pipes through it|with pipes in it|pipes in it',
  electric: 'electric|electrical|electrc|elec',
  eheater: 'oil radiator|oil filled heater|convector|convector heater|infrared heater|ceramic heater|tube heater|tubular heater|electric heater|space heater|oil filled radiator|fan heater|heat mat|radiator|electric radiator',
  propane: 'propane|lpg|lp|butane|bottled gas|bottle gas|gas bottle|propane heater|lp gas|propane tank|cylinder',
  kerosene: 'kerosene|paraffin|kero|heating oil|diesel|oil|kerosene heater|paraffin heater|oil heater|diesel heater|oil burner',
  gas: 'gas',
  gasheater: 'gas heater|gas burner|gas furnace|gas stove|gas boiler',
  naturalgas: 'natural gas|mains gas|town gas|piped gas|gas from the main',
  wood: 'wood stove|woodstove|wood burner|wood burning stove|wood heater|pellet stove|wood fire|log burner|firewood|rocket stove|barrel stove|wood fired',
  candle: 'candle|tea light|tealight|tea lite|flower pot heater|flowerpot heater|candle in a pot|candle heater|terracotta heater|tea candle|beeswax candle|clay pot heater',
  heater: 'heater|heating|stove|furnace|burner|unit heater|boiler|heat source|back up heat|backup heat|backup heater|back up heater|heat lamp',
  vented: 'vented|vented outside|flue|chimney|direct vent|direct vented|vent to the outside|exhaust pipe|with a flue|stack|stove pipe|stovepipe|vented heater',
  unvented: 'unvented|un vented|ventless|vent free|ventfree|not vented|no flue|no chimney|no vent|without a flue|without flue|without a chimney|flueless|portable|no exhaust|no pipe|non vented|free standing',
  thermostat: 'thermostat|thermostatic|thermostatically controlled',
  thermometer: 'thermometer|sensor|probe|temperature sensor|temperature probe|min max|minimum maximum|minimum maximum thermometer|temperature gauge|temp gauge|data logger|logger|thermo|gauge|weather station',
  curtain: 'curtain|thermal curtain|energy curtain|thermal screen|energy screen|inner curtain|heat curtain|night curtain|shade curtain|thermal blanket overhead',
  foil: 'foil|aluminised|aluminized|reflective|aluminium|aluminum|silver|metallised|metallized',
  vent: 'vent|ridge vent|roof vent|side vent|end vent|louver|louvre|roll up side|rollup side|rollup|roll up|drop side|vent window|window|ridge window|roof window',
  opener: 'opener|automatic opener|vent opener|auto opener|wax opener|automatic vent opener|opens by itself|automatic|self opening|auto',
  bed: 'bed|bench|border|plot|raised bed|growing bed|ground bed|strip',
  path: 'path|walkway|aisle|pathway',
  soil: 'soil|ground|dirt|earth|garden soil|native soil',
  sand: 'sand|sandy|sandy soil|gritty',
  loam: 'loam|loamy|sandy loam|silt loam|clay loam|silty loam|silt|silty|garden loam|ordinary soil|normal soil|average soil|good garden soil',
  clay: 'clay|clayey|heavy clay|clay soil|gumbo soil',
  peat: 'peat|peaty|peat moss|muck soil|bog soil|potting mix|potting soil|potting compost',
  rich: 'compost rich|rich in compost|lot of compost|full of compost|compost amended|mostly compost|organic matter|humus|rich soil|composted|black soil|plenty of compost|compost based|lots of compost in it|very rich',
  dry: 'dry|bone dry|dusty',
  moist: 'moist|damp|watered|well watered',
  wet: 'wet|soggy|waterlogged|soaked|saturated',
  sun: 'sun|sunny|in the sun|full sun|in full sun|sunlight|sunlit|sunshine',
  shade: 'shade|shady|shaded|in the shade|out of the sun|not in the sun|shielded|in a screen|in shade|out of direct sun|no sun|never in the sun|radiation shield',
  touching: 'touching|side by side|shoulder to shoulder|packed together|stacked|stacked up|tight together|pushed together|next to each other',
  black: 'black|blackened|painted black|black painted|dark|painted dark',
  outside: 'outside|outdoor|out of door|out side',
  eastwest: 'east west|east to west|e w|west to east|west east|east and west|ew',
  northsouth: 'north south|north to south|n s|south to north|south north|north and south|ns',
  tight: 'tight|airtight|air tight|well sealed|sealed up|sealed well|draft free|draught free|very tight',
  leaky: 'leaky|drafty|draughty|leak|full of gap|lot of gap|some gap|big gap|gap at|gap under|gap around|gap in|gap everywhere|air leak|hole in it',
  open: 'open field|open country|out in the open|wide open|exposed|windy spot|top of a hill|hilltop|on a hill|flat open|prairie|windswept|very windy',
  wooded: 'wooded|wood around|in the wood|tree around|surrounded by tree|forest|woodland|hedge|hedgerow|windbreak|in a clearing|sheltered',
  town: 'in town|back yard|backyard|suburb|suburban|village|in the city|allotment|among house',
} as const;

export type HouseWord = keyof typeof HOUSE_WORDS;

/** Items of a night by the word that they have here. */
const FROM_ITEM: Readonly<Record<string, HouseWord | null>> = {
  cover: 'cover', curtain: 'curtain', heater: 'heater', fan: 'fan', vents: 'vent', water: 'drum', stones: 'rock', layer: 'layer', film: 'film', wall: 'wall', tube: 'tube', compost: 'compost', harvest: null,
};

const byPhrase = (phrases: string): readonly string[] => phrases.split('|').map((phrase) => phrase.split(' ').map(singular).join(' '));

const PHRASES: ReadonlyMap<string, HouseWord> = new Map([
  ...[...ITEM_BY_PHRASE].flatMap(([phrase, item]): [string, HouseWord][] => {
    // "Heat" is mostly no device here: stones hold it, and a house has none.
    const word = phrase === 'heat' ? null : FROM_ITEM[item];
    return word === null || word === undefined ? [] : [[phrase, word]];
  }),
  ...(Object.entries(HOUSE_WORDS) as [HouseWord, string][]).flatMap(([word, phrases]) => byPhrase(phrases).map((phrase): [string, HouseWord] => [phrase, word])),
]);

export const LONGEST_PHRASE = Math.max(...[...PHRASES.keys()].map((phrase) => phrase.split(' ').length));

/** What a phrase in the singular stands for, if it is one. */
export const houseWord = (phrase: string): HouseWord | null => PHRASES.get(phrase) ?? null;

/** Single words of the phrases, for spelling: a slip in one of them is still understood. */
export const HOUSE_KEY_WORDS: ReadonlySet<string> = new Set([...PHRASES.keys()].flatMap((phrase) => phrase.split(' ')).filter((word) => word.length >= 4));
