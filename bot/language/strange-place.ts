import { unclear, type Unclear } from './intent.js';
import type { Message } from './message.js';
import { ORDINARY_WORDS } from './ordinary-words.js';

const NO_PLACE = new Set(`look way run round door tshirt t-shirt shirt shorts pants underwear husband wife son daughter mum mom dad phone dial screen display readout
  needle pointer card scale rest lowest highest coldest warmest minimum maximum worst best peak start end beginning nose dot money button whole it
  that the this there here morning night evening afternoon day sun sunshine sunlight shade moment time noon midnight dawn sunrise sunset sunup
  dusk daybreak light dark bed beds middle center centre floor top bottom side back front corner air row present last bare zero freezing least
  about around all high low thermometer gauge probe sensor temperature plant plants leaf leaves canopy crop crops grower plastic film bench minute
  hour hours slippers pyjamas pajamas jammies pjs gown robe dressing boots wellies socks coat nightie jacket gloves rain snow wind storm fog a an
  my our one night's first now old new am pm`.split(/\s+/));

/** Where another thing may be spoken of than the number is of. */
const NEW_STRETCH = / (?=(?:[,;]|but|which|because|though|although|mind) )| (?=and (?!\w+ #|#))/;

/**
 * A number that is said to be of a place which is neither in the house nor a thermometer's own name ("29 in the kitchen")
 * must not be taken for the house.
 */
export function strangePlace(message: Message): Unclear | null {
  const { form } = message;
  const label = / (\w+) \*label /.exec(form);
  // What the soil of one bed, or its cover, has is told as soil and cover.
  if (label !== null && !(/^(?:beds?|rows?|bay|zone)$/.test(label[1] ?? '') && / (?:&soil|@cover) /.test(form))) {
    const at = message.pieces.findIndex(({ symbol }) => symbol === '*label');
    return unclear('which-place', { word: message.pieces.slice(Math.max(at - 1, 0), at + 1).map(({ written }) => written).join(' ') });
  }
  const ofNumbers = form.split(NEW_STRETCH).filter((stretch) => stretch.includes('#') || /^[,;] (?:in|at|by|near|on|under|beside|behind) /.test(stretch)).map((stretch) => `${stretch} `).join('');
  for (const found of ofNumbers.matchAll(/ (?:in|at|by|near|on|under|beside|behind|from) (?:the |my |our |a )(%\d+|[a-z]+) (?=([^ ]+ )?)/g)) {
    const [, word = '', after = ''] = found;
    if (NO_PLACE.has(word) || /^[&@$]/.test(after) || (word === 'box' && form.includes(' @stones '))) continue;
    const piece = message.pieces.find(({ symbol }) => symbol === word);
    // "Soil in the spinach bed": a bed is named by what grows in it.
    if (word.startsWith('%') && /^(?:beds?|rows?|patch) $/.test(after) && / (?:&soil|@cover) /.test(form)) continue;
    if (word.startsWith('%')) return unclear('which-place', { word: piece?.written ?? word });
    return unclear('which-place', { word });
  }
  const lead = /^ (?:the |my |our )?([a-z]+) (?:is |was |at |: |reads |says |had |got |has |hit )?#\d+ (?:[,;] .*)?$/.exec(form)?.[1];
  const trail = / #\d+ ([a-z]{3,}) $/.exec(form)?.[1];
  if (trail !== undefined && !NO_PLACE.has(trail) && !ORDINARY_WORDS.has(trail) && !KNOWN_LEADS.has(trail)) return unclear('which-place', { word: trail });
  if (lead !== undefined && OTHER_ROOMS.has(lead)) return unclear('which-place', { word: lead });
  if (lead !== undefined && lead.length > 2 && !NO_PLACE.has(lead) && !ORDINARY_WORDS.has(lead) && !KNOWN_LEADS.has(lead)) return unclear('which-place', { word: lead });
  return null;
}

const OTHER_ROOMS = new Set('kitchen garage shed barn basement cellar attic bedroom office fridge freezer car cabin coop stable workshop'.split(' '));

const KNOWN_LEADS = new Set(`says reads shows showing reading lowest highest coldest warmest currently down dropped bottomed peaked overnight about around roughly approx
  approximately exactly only still minimum maximum temperature thermometer tonight today yesterday hovering sitting holding temps recorded
  registered logged ish even windy calm foggy brr got hit was its yesterday approx out off and was the yes lol btw fyi thx bit yikes ouch brrr
  burr high plus touched says`.split(/\s+/));
