import type { Piece } from './piece.js';
import type { TempToken } from './value-grammar.js';
import { wordings } from './wordings.js';

const list = (words: string): ReadonlySet<string> => new Set(words.split(/\s+/));

/** Words that may stand with a bare number for it to be what a thermometer showed. Add a word here when growers put it there. */
const TALK = list(`a about actual actually after afternoon again air all almost already also am ambient an and anyway approx approximately are around as at average
  away back bad balmy bare barely be been before believe bench bit bleak bloody bottom bottomed bottoming brisk brr brrr brrrr btw burr but by
  calm came canopy center centre check checked checks chest chilly clear climbed climbing close cold colder coldest coming cool cooled cooler
  correctly cosy cozy crept crisp current currently damn dang dawn day daybreak deg degree degrees devil dial did digital dipped dipping display
  do does dont down drop dropped dropping early edged eek end ended even evening exact exactly expected fairly falling fast fell finally fine
  first flat floor foggy for freaking freezing friday frigid from frost frosty fyi gauge get gets getting give glass go goes going good gosh got
  guess had haha hanging has have he heck height held here hi high higher highest hit hits hmm holding holds hottest hour hours hovered hovering
  hung i in is ish it it's just keeping knee know last late leaf level log logged logging lol look looked looking looks low lower lowest made man
  maximum me measured meter midday midnight mild minimum minute minutes moment monday month morning much my near nearly next nice night nights
  nippy no noon not now of off ok old on only or ouch our out outta over overall overnight peak peaked phew plain plant please plummeted plunged
  plus pm point pretty probably probe quite ran reached read reading readings readout reads really reckon record recorded registered registering
  registers remember report reported reporting reports result right rising rose roughly round rounds sadly said same sank sat saturday saw say
  says see seeing sensor settled shade shaded she sheesh show showed showing shown shows side since sits sitting slightly slipped so somewhere
  started stayed steady still stuck sun sunday sunk sunlight sunny sunrise sunset sunshine sunup sure surprisingly table temperature than that the
  their then there thermometer think this thursday time to toasty today tonight too took top topped touch touched tuesday turned twice ugh under
  up us value very w waist warm warmed warmer warmest was we weather wednesday went were what when where whew while whopping why wind windy winter
  with woke wow yep yes yesterday yikes you`);

/** Words right after a number that leave it a temperature; any other plain word there is what it counts or measures ("28 plants"). */
const AFTER = list(`oh ah um er yeah aye thats which because though a an about after again air shade all already also am and anyway approx around as at ago back bad balmy before brr brrr brrrr burr but by
  chilly cold coldest colder current currently dang damn dawn day degrees degree down early even evening exactly falling flat first for
  freezing freaking friday from frost here high higher hot i in inside ish it just last late low lower lowest lol maximum midnight noon to an
  h l hi outdoors minimum monday morning min max night now off ok on only or out ouch outside overnight pm reading right rising roughly round
  saturday showing so steady still sun sunday sunny sunrise that the then there this thursday thermometer today tonight too tuesday under up
  was wednesday we went when where while windy with without yesterday yikes brisk not no instead sorry rather should please thanks haha hmm
  fyi btw eek ugh wow top bottom peak highest temperature read maybe give perhaps i you it they he she do does did what why how will should
  can has have had covered closed shut got woke went if my our your his her these those no yes ever yet lately still been being`);

/** Whether a number before this word may still be a temperature. */
export const stillTemperature = (word: string): boolean => AFTER.has(word);

/** What is measured or counted in numbers that are no temperatures, whatever stands beside them. */
const OTHER_MEASURES = list(`fever humidity rh windchill gust gusts mph kmh kph speed pressure mb hpa mbar barometer rain rainfall dewpoint code pin password invite invitation phone number zip postcode address plants heads trays
  power electricity mains propane gas people kids eggs chickens cost costs paid price priced bill spent cents version battery volt volts voltage
  chance odds age aged size page channel serial model account order invoice room flight bus route population lux ppm ph co2 co score points
  setpoint`);

/** Where thermometers hang that are not the grower's. */
const ELSEWHERE = list(`wireless news alps neighbor neighbors neighbour neighbours airport town city village valley car truck phone fridge freezer kitchen oven garage office bedroom
  forecast app website online internet tv radio weatherman accuweather bbc noaa wunderground metoffice metservice meteo apple android`);

/** Words of a wish or a rule: what should be, and not what was seen. */
const WISHES = list('want wants wanted need needs needed trying try aim aiming target prefer would ideal ideally require requires keep limit threshold');

/** Whether a number is what a thermometer showed by its own look. */
const isMarked = ({ sign, unit, degree, against }: Pick<TempToken, 'sign' | 'unit' | 'degree' | 'against'>): boolean => sign !== 'none' || unit !== null || degree || against !== null;

const NOTHING = { sign: 'none', unit: null, degree: false, against: null } as const;

const DEEDS = list('tucked covered put pulled laid threw spread draped wrapped drew');
/** Things whose own temperature is not the house's. */
const NO_AIR = /^@(?:compost|wall|film|layer|curtain|vents|fan)$/;
/** What goes on after a heater was spoken of. */
const STORY = list('it got dropped fell bottomed went still');

const EVIDENCE = list('topped maxed peaked low lowest coldest minimum high highest maximum thermometer temperature degrees bottomed dropped dipped probe sensor gauge sun sunny shade');

/** How many unknown words a number bears that is plainly a temperature by its mark, its place or its thermometer. */
const UNKNOWN_WORDS = 4;
const UNKNOWN_WORDS_WHERE_BARE = 2;

/** "Soil in the spinach bed": a bed is named by what grows in it. */
const isBedOf = (symbols: readonly string[], crop: string): boolean => /^(?:beds?|rows?|patch)$/.test(symbols[symbols.indexOf(crop) + 1] ?? '') && symbols.some((symbol) => /^(?:&soil|@cover)$/.test(symbol));

/** Whether a stretch speaks of somebody else's house, or of a time long ago. */
export const isOfOthers = (symbols: readonly string[]): boolean =>
  OLD_TALE.test(` ${symbols.join(' ')} `) || SOMEBODYS.test(` ${symbols.join(' ')} `) || symbols.some((symbol, at) => /^(?:[&%]|stuff$|plants$|crops$|lot$)/.test(symbol) && OTHERS_OWN.test(symbols[at - 1] === 'is' ? (symbols[at - 2] ?? '') : (symbols[at - 1] ?? '')));

/** What a stretch of talk makes of its numbers: temperatures, something else that is measured, or nobody knows. */
export function numbersIn(stretch: readonly Piece[], temps: readonly TempToken[]): 'temperatures' | 'other' | 'unknown' {
  const symbols = stretch.map(({ symbol }) => symbol);
  const isBare = (symbol: string): boolean => symbol.startsWith('#') && !isMarked(temps[Number(symbol.slice(1))] ?? NOTHING);
  // "Outside it is four below, on my husband's phone": what comes after a number that says what it is of changes nothing.
  const told = upToCore(symbols);
  if (told.some((symbol) => OTHER_MEASURES.has(symbol) || ELSEWHERE.has(symbol)) && !(symbols.some((symbol) => /^(?:sensor|probe|thermometer|logger)$/.test(symbol)) && symbols.some((symbol) => /^(?:app|phone)$/.test(symbol)))) return 'other';
  if (symbols.some((symbol) => WISHES.has(symbol) && !(symbol === 'keep' && symbols.includes('thermometer'))) || told.some((symbol) => symbol.startsWith('%') && !isBedOf(symbols, symbol))) return 'unknown';
  if (symbols.some((symbol) => NO_AIR.test(symbol)) && !symbols.some((symbol) => /^(?:[&$]|@(?:cover|water|stones|tube)$)/.test(symbol))) return 'unknown';
  // A number at a heater is what it is set to, where no place is said.
  const heater = symbols.indexOf('@heater');
  const first = symbols.findIndex((symbol) => symbol.startsWith('#'));
  if (heater >= 0 && heater < first && !symbols.slice(heater, first).some((symbol) => STORY.has(symbol)) && !symbols.some((symbol) => /^[&$]/.test(symbol) || symbol === 'thermometer')) return 'unknown';
  if (symbols.some((symbol, at) => isBare(symbol) && isCounting(symbols[at + 1]))) return 'unknown';
  if (isOfOthers(symbols)) return 'other';
  // "Tucked the beds in with the cover about 5" has an hour.
  if (symbols.some((symbol) => DEEDS.has(symbol)) && symbols.includes('@cover') && symbols.every((symbol) => !EVIDENCE.has(symbol) && (!symbol.startsWith('#') || isBare(symbol)))) return 'unknown';
  const unknown = unknownWords(inCores(symbols));
  const numbers = symbols.flatMap((symbol) => (symbol.startsWith('#') ? (temps[Number(symbol.slice(1))] ?? []) : []));
  const isPlain = numbers.every(isMarked) || symbols.some((symbol) => EVIDENCE.has(symbol) || /^[&$@]/.test(symbol));
  return symbols.includes('*foreign') || unknown > (numbers.every(isMarked) ? UNKNOWN_WORDS : isPlain ? UNKNOWN_WORDS_WHERE_BARE : 0) ? 'unknown' : 'temperatures';
}

/** What was once, or at somebody's. */
const OLD_TALE = wordings`
  last (?:year|winter|season|january|february|march|december|november)|years? ago|(?:in|of) \*year|back in|on record|in the old days
  when (?:i|we) (?:was|were) (?:a )?(?:kids?|young|little|boys?|girls?|small)|at (?:his|her|their) (?:place|house|farm|end|way)|(?:in|at) (?:his|hers|theirs)
  (?:sister|brother|mate|buddy|friend|cousin|uncle|aunt|auntie|dad|mum|mom|folks|parents|son|daughter|colleague|neighbou?rs?) (?:back |over |down |up |
  out )?(?:in|from|across|at) (?:the )?[a-z]+ (?:[a-z]+ )?(?:had|got|has|hit|was|saw|recorded)
  my own temperature|once $
`;
/** "His tunnel". */
const OTHERS_OWN = /^(?:his|her|their|your|neighbou?rs?|laws?|dads|mums|moms|grandads|grandpas|nans|grannys|uncles|aunts|sisters|brothers|mates|buddys|friends|sons|daughters|bosses)$/;
/** "Trev's greenhouse hit 19", with its "is" written out. */
const SOMEBODYS = / (?!it |that |there |here |this |what |who |which |thermometer |she |he )[a-z]+ is &inside (?:(?!is |in )[a-z]+ (?:in |at )?(?:the )?){0,3}(?:was|hit|had|got|went|dropped|fell|bottomed|only) /;
/** Makes of a core that it says what it is of, and of when. */
const OF_HOUSE = /^(?:[&$]|@(?:cover|water|stones)$|low$|lowest$|minimum$|high$|highest$|maximum$)/;
/** A story before a number is none of a thermometer where somebody only wishes or does not know. */
const DOUBT = list('not never no without if wish wished like would should could might until till unless than as');

/**
 * The part of a stretch that is spoken of a thermometer: the words around each number up to the first that nobody says of one,
 * where those alone say which temperature it is. "Davie had a sore back so the low inside was 4" is a story and a reading.
 */
function cores(symbols: readonly string[]): readonly Core[] {
  const isTold = (symbol: string): boolean => unknownWords([symbol]) === 0 && !/^[%=*]/.test(symbol);
  const found = symbols.flatMap((symbol, at): readonly Core[] => {
    if (!symbol.startsWith('#')) return [];
    let [from, to] = [at, at];
    while (from > 0 && isTold(symbols[from - 1] ?? '')) from--;
    while (to < symbols.length - 1 && isTold(symbols[to + 1] ?? '')) to++;
    return [{ from, to, symbols: symbols.slice(from, to + 1) }];
  });
  const areAll = found.every((core) => core.symbols.some((symbol) => OF_HOUSE.test(symbol))) && !symbols.slice(0, (found.at(-1)?.to ?? 0) + 1).some((symbol) => DOUBT.has(symbol));
  return areAll ? found : [];
}

interface Core {
  readonly from: number;
  readonly to: number;
  readonly symbols: readonly string[];
}

const inCores = (symbols: readonly string[]): readonly string[] => {
  const found = cores(symbols);
  return found.length === 0 ? symbols : found.flatMap((core) => core.symbols);
};

const upToCore = (symbols: readonly string[]): readonly string[] => symbols.slice(0, (cores(symbols).at(-1)?.to ?? symbols.length) + 1);

/** How many words of a stretch nobody says of a thermometer. */
export const unknownWords = (symbols: readonly string[]): number => symbols.filter((symbol) => /^[a-z0-9'*-]/.test(symbol) && symbol !== '*day' && symbol !== '*year' && symbol !== '*label' && !TALK.has(symbol) && !AFTER.has(symbol)).length;

const SUBJECTS = list('my our the his her he she they we i a your their us');
/** After a number these say where it is of. */
const BESIDE = list('above below under over beside near next behind between by on at in beneath underneath along round around');

/** Words of when and how a thermometer was read. */
const READ_AT = / (?:last night|overnight|this morning|right now|at the moment|currently|reads|shows|showing|says|dropped|bottomed) /;
/** Whether a stretch with a number speaks of something that is no thermometer, no place and no wish: "the dog is 14 today". */
export const speaksOfOther = (symbols: readonly string[], temps: readonly TempToken[]): boolean =>
  unknownWords(symbols) > (symbols.some((symbol) => SUBJECTS.has(symbol)) ? 0 : 1) && !READ_AT.test(` ${symbols.join(' ')} `) && !symbols.some((symbol, at) => BESIDE.has(symbol) && (symbols[at - 1]?.startsWith('#') === true || /^(?:the|my|our|her|his|their|a)$/.test(symbols[at + 1] ?? ''))) && !symbols.some((symbol) => EVIDENCE.has(symbol) || WISHES.has(symbol) || /^[&$@%]/.test(symbol) || (symbol.startsWith('#') && isMarked(temps[Number(symbol.slice(1))] ?? NOTHING)));

/** Whether a stretch says of its numbers what they are of. */
export const showsWhat = (symbols: readonly string[], temps: readonly TempToken[]): boolean =>
  symbols.some((symbol) => EVIDENCE.has(symbol) || /^[&$@]/.test(symbol) || (symbol.startsWith('#') && isMarked(temps[Number(symbol.slice(1))] ?? NOTHING)));

const isCounting = (after: string | undefined): boolean => after !== undefined && (after.startsWith('%') || (/^[a-z]/.test(after) && !AFTER.has(after)));
