import { singular } from './word-forms.js';
import { listed } from './wordings.js';
import type { Item } from './intent.js';

const ITEM_WORDS: Readonly<Record<Item, string>> = {
  cover: `
    cover|cloth|layer of fleece|layer of remay|layer of row cover|layer of cover|layer of fabric|layer of frost cloth|row cover|rowcover
    floating cover|frost cover|plant cover|bed cover|fleece|horticultural fleece|frost cloth|frost blanket|frost fabric|remay|reemay|blanket
    sheet|low tunnel|inner tunnel|inner hoop|low hoop|cloche|fabric|quilt|tarp|tarpaulin|bed sheet|frost sheet|garden fabric|garden blanket
    spunbond|spun bond|agribon|agrofleece|agro fleece|insulation fleece|row cover hoop|floating row cover|duvet|bedspread|moving blanket
    drop cloth|mini tunnel|mini hoop|caterpillar cover|bedclothes
  `,
  curtain: `
    curtain|bubble wrap curtain|thermal curtain|energy curtain|thermal screen|screen curtain|shade cloth curtain|energy blanket|thermal blanket
    energy screen|inner curtain|heat curtain|night curtain|shade curtain
  `,
  heater: `
    heater|thermostat|heat|heating|propane heater|electric heater|space heater|gas heater|paraffin heater|kerosene heater|oil heater|wood stove
    stove|furnace|burner|heat lamp|heat mat|boiler|radiator|rad|fan heater|oil radiator|rocket stove|pellet stove|woodstove|wood burner
    woodburner|log burner|gas burner|propane burner|propane stove|propane torch|kerosene stove|torpedo heater|salamander|heating cable
    heat cable|soil cable|heating mat|patio heater|convector
  `,
  fan: 'fan|circulation fan|circulating fan|haf fan|box fan|ceiling fan|stir fan|mixing fan|haf|circulator|air mover',
  vents: `
    vent|ridge vent|roof vent|side vent|end vent|louver|louvre|roll up side|roll-up side|rollup side|rollup|side|sidewall|side wall|flap
    side flap|end flap|roof flap|window|roof window|skylight|ventilator|vent door|drop down side
  `,
  water: `
    water drum|water barrel|water jug|water tank|water bottle|water tote|barrel of water|drum of water|jug of water|drum|barrel|jug|tote
    water butt|butt|butt of water|ibc|ibc tank|cask|water container|water jar|milk jug|water wall|carboy|demijohn|rain barrel|rain butt|water
  `,
  stones: `
    stone|rock|boulder|brick|masonry|black stone|cobble|paver|gravel|rock pile|flagstone|paving slab|paving stone|pavestone|rock bed
    concrete block|cinder block
  `,
  layer: `
    second sheet of plastic|second sheet of film|second sheet of poly|another sheet of plastic|second layer|2nd layer|third layer|another layer
    extra layer|double layer|inner layer|more layer|second film|second skin|double film|double skin|double poly|double plastic|second sheet
    second wall of plastic|twin layer|inner skin|inner film|inner plastic|third skin|layer|second plastic|layer of plastic|layer of film
    layer of poly|second layer of plastic|second layer of film|second layer of poly|another layer of plastic|another layer of film
    another layer of poly|extra layer of plastic|extra layer of film|extra layer of poly|more layer of film|more layer of plastic
    more layer of poly
  `,
  film: `
    film|foil|plastic foil|greenhouse foil|greenhouse film|ir film|new film|plastic film|poly film|greenhouse plastic|new plastic|plastic|poly
    polythene|polyethylene|polycarbonate|glazing|bubble wrap
  `,
  wall: `
    north wall|back wall|insulated wall|insulated north wall|insulation|wall insulation|foam board|rigid foam|straw bale|hay bale
    straw bale wall|stone wall|brick wall|insulating board|foil board|styrofoam|wall
  `,
  tube: `
    tube|tube in ground|tube in the ground|pipe in the ground|pipe in ground|ground tube|earth tube|air tube|buried tube|buried pipe|ground pipe|underground pipe|underground tube|tube fan|buried tube fan
    buried pipe fan|underground tube fan|underground pipe fan|pipe fan|duct fan|ground pipe fan|ground tube fan|earth tube fan|climate battery
    pipe|duct|geothermal tube|geo tube|underground tubing|ground loop
  `,
  compost: 'compost|compost heap|compost pile|hot bed|hotbed|manure|manure pile|manure heap|muck heap|heap',
  harvest: 'harvest',
};

/** One more sheet on the house, in whatever words. */
const MORE_FILM = ['one more', 'another', 'second', 'extra', 'additional', 'third'].flatMap((more) => ['film', 'foil', 'plastic', 'poly', 'polythene', 'sheet', 'skin', 'layer', 'cover of plastic'].flatMap((sheet) => [`${more} ${sheet}`, `${more} layer of ${sheet}`, `${more} sheet of ${sheet}`]));

/** Words that say how many of an item there are when a number stands before them. */
export const COUNTED_ITEMS: ReadonlySet<Item> = new Set(['cover', 'curtain', 'heater', 'fan', 'water', 'stones', 'layer', 'film', 'tube', 'wall']);

/** Item phrases by their words in the singular, joined by blanks. */
export const ITEM_BY_PHRASE: ReadonlyMap<string, Item> = new Map(
  ([...Object.entries(ITEM_WORDS), ['layer', MORE_FILM.join('|')]] as [Item, string][]).flatMap(([item, phrases]) => listed(phrases).map((phrase) => [phrase.split(' ').map(singular).join(' '), item] as const)),
);
