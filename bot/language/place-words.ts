import { singular } from './word-forms.js';
import { listed } from './wordings.js';

export type KnownPlace = 'inside' | 'outside' | 'soil' | 'cover';

const PLACE_WORDS: Readonly<Record<KnownPlace, string>> = {
  inside: `
    inside|open house|in the open house|open tunnel|aisle|in the aisle|by the path|in here|in there|greenhouse|green house|hoophouse|hoop house|hoop|hoop tunnel|high tunnel|polytunnel
    poly tunnel|tunnel|glasshouse|house|caterpillar tunnel|inside air|inner|interior|serre|plastic house|growing house|polyhouse|poly house
    tunnelhouse|tunnel house|hothouse|hot house|plastic tunnel|plastic greenhouse|cloche tunnel|grow tunnel|grow house|growhouse|growtunnel
    film house|film tunnel|foil tunnel|foil house|foil greenhouse|polythene tunnel|polly tunnel|hoop greenhouse|walk in tunnel|cat tunnel
    in the caterpillar|inside the caterpillar|under glass|in the dome|lean to|high hoop
  `,
  outside: `
    outside|out there|out here|out side|yard|outside air|exterior|lawn|yard|back yard|backyard|front yard|porch|back porch|front porch|veranda
    verandah|patio|paddock|driveway|drive way|deck|back step|front step|back stoop|stoop|open air|in the garden|out in the garden|field
    in the field|out in the field|at the field|in the orchard|in the open|on the line|up the allotment|on the allotment|at the allotment
    out back|out front|round the back|weather station|on the terrace|terrace|balcony|on the balcony|under the eaves|carport|under the carport
  `,
  soil: 'soil|ground|dirt|earth',
  cover: 'underneath|under there|under it|under them',
};

/** "By the shed", "on the gate post": beside these one stands in the open. */
const LANDMARKS = listed(`
  shed|woodshed|garden shed|barn|garage|fence|fence post|gate|gate post|hedge|pond|car|truck|tree|apple tree|washing line|clothesline|coop
  chook house|hen house|henhouse|mailbox|letterbox|back door|front door|kitchen window|back of the house|back wall of the house
  north side of the house|woodpile|wood pile|bins|road|barbecue|bird table|bird feeder|rain gauge|well|pump|flagpole|mast
`);
const BESIDES = ['by', 'on', 'near', 'beside', 'behind', 'outside', 'against', 'next to', 'at', 'under'].flatMap((beside) => LANDMARKS.flatMap((landmark) => ['the', 'my', 'our'].map((which) => `${beside} ${which} ${landmark}`)));

/** Phrases for the places that are no item; covers, drums, stones and tubes are places by their item words. */
export const PLACE_BY_PHRASE: ReadonlyMap<string, KnownPlace> = new Map(
  ([...Object.entries(PLACE_WORDS), ['outside', BESIDES.join('|')]] as [KnownPlace, string][]).flatMap(([place, phrases]) => listed(phrases).map((phrase) => [phrase.split(' ').map(singular).join(' '), place] as const)),
);
