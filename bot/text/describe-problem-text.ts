import type { Problem } from '../features/describe/thing.js';
import { plainName } from './describe-text.js';

/** Fields of the greenhouse file as a grower would name them, with an example of right. */
const FIELD_WORDS: readonly (readonly [RegExp, string, string])[] = [
  [/^size\.width/u, 'The width', '"20 ft wide" or "6 m wide"'],
  [/^size\.length/u, 'The length', '"48 ft long" or "15 m long"'],
  [/^size\.height/u, 'The height', '"9 ft tall" or "2.7 m tall"'],
  [/^sideHeight/u, 'The side wall', '"4 ft sides" or "1.2 m sides"'],
  [/^beds$/u, 'The beds', '"north bed, 60 sq ft"'],
  [/^beds.*area/u, 'The area of the bed', '"60 sq ft" or "6 m2"'],
  [/^beds.*cover/u, 'The cover', '"row cover of 30 g/m2" or "1 oz"'],
  [/^drums.*litres/u, 'The water in one vessel', '"55 gallons" or "200 litres"'],
  [/^drums.*count/u, 'The number of vessels', '"4 drums"'],
  [/^stones/u, 'The stones', '"1 cubic yard" or "2 tons"'],
  [/^stoneBox/u, 'The stone box', '"half a cubic metre under 1 m2 of glass"'],
  [/^tubes/u, 'The tubes', '"2 tubes, 40 ft long, 4 inch, 2 ft deep"'],
  [/^fan|\.fan/u, 'The fan', '"90 cfm" or "150 m3/h"'],
  [/^compost/u, 'The heap', '"1 cubic yard, started 20 October"'],
  [/^heater\.power/u, 'The power of the heater', '"1500 W" or "30000 BTU"'],
  [/^heater\.set/u, 'The setting of the heater', '"at 36F" or "at 2C"'],
  [/^heater/u, 'The heater', '"1500 W electric"'],
  [/^vents/u, 'The vents', '"20 sq ft" or "2 m2"'],
  [/^solidWall/u, 'The wall', '"6 ft high, 2 in of foam"'],
  [/^edgeInsulation/u, 'The foam in the ground', '"2 ft deep, 2 in thick"'],
  [/^blower/u, 'The blower', '"two layers with a blower"'],
  [/^grower/u, 'The time', '"16:30"'],
  [/^place/u, 'The place', '"45.10, -72.20"'],
  [/^name/u, 'The name', '"call it Wren Hollow"'],
];

const SEARCH_FAILURES: Readonly<Record<string, string>> = {
  network: 'cannot be reached', 'time-out': 'does not answer', 'cut-off': 'broke off', 'not-json': 'sent something else', server: 'is out of order', refused: 'refused', limited: 'has had too many questions', resting: 'is resting', unusable: 'sent something unusable',
};

const THING_WORDS: Readonly<Record<string, string>> = { covers: 'covers', water: 'water', stones: 'stones', 'stone-box': 'stone box', wall: 'solid wall', edge: 'foam in the ground', curtain: 'curtain', vents: 'vents', tubes: 'tubes', fan: 'stirring fan', compost: 'heap', heater: 'heater', blower: 'blower' };

/** What was wrong, what was expected, an example. */
export function problemText(found: Problem): string {
  switch (found.code) {
    case 'layers':
      return `I can count on one or two layers, not ${found.count}. For example "two layers".`;
    case 'unknown-shape':
      return `I do not know the shape "${plainName(found.words)}". I know half-round hoops, gothic, gable and lean-to: say which comes nearest, for example "half-round".`;
    case 'no-house':
      return 'That makes no greenhouse, in feet or in metres. For example "20 by 48, 9 feet tall" or "6 by 15 m, 3 m tall".';
    case 'not-there':
      return `I have no ${plainName(THING_WORDS[found.what] ?? found.what)} on my list, so nothing is changed.`;
    case 'fault': {
      const [, name, example] = FIELD_WORDS.find(([field]) => field.test(found.field)) ?? [null, 'That', '"20 by 48, 9 feet tall"'];
      const expected = plainName(found.message.split(/[,;] for example/u)[0]!).replace(/"/gu, "'");
      const got = /got (.+)$/u.exec(found.message)?.[1]?.replace(/"/gu, '');
      return `${name} does not fit${got === undefined ? '' : ` (${got})`}: ${expected}. For example ${example}.`;
    }
    case 'place-name':
      return `I found no place called "${plainName(found.town)}". Write a bigger town nearby, or coordinates such as "45.10, -72.20".`;
    case 'place-search':
      return `I cannot look for "${plainName(found.town)}" just now: the search ${SEARCH_FAILURES[found.failure] ?? 'failed'}. Share your location, write coordinates such as "45.10, -72.20", or try the town again later.`;
    case 'bad-coordinates':
      return 'Those are no coordinates: the first number goes from -90 to 90, the second from -180 to 180. For example "45.10, -72.20".';
    case 'bad-choice':
      return `There are ${found.most} to choose from: answer with a number from 1 to ${found.most}.`;
    case 'no-evening':
      return `The evening message comes between ${found.from} and ${found.until}. For example "16:30" or "5 pm".`;
  }
}
