import type { Fact, Thing } from '../../language/house/house-fact.js';
import type { Line } from './state.js';

const OF_THING: Readonly<Record<Thing, Line>> = {
  covers: 'covers', water: 'water', stones: 'water', 'stone-box': 'water', wall: 'other', edge: 'other', curtain: 'other', vents: 'other', tubes: 'air', fan: 'air', compost: 'compost', heater: 'heater', thermometers: 'thermometers', blower: 'layers', crops: 'crops',
};

/** The line that a fact belongs to. */
export function lineOf(fact: Fact): Line {
  switch (fact.about) {
    case 'coordinates':
    case 'town':
      return 'place';
    case 'size':
    case 'shape':
      return 'size';
    case 'layers':
      return 'layers';
    case 'cover':
      return 'covers';
    case 'water':
    case 'stones':
    case 'stone-box':
      return 'water';
    case 'soil':
      return 'soil';
    case 'tubes':
    case 'fan':
      return 'air';
    case 'compost':
      return 'compost';
    case 'heater':
      return 'heater';
    case 'bed':
      return 'crops';
    case 'thermometer':
      return 'thermometers';
    case 'times':
      return 'evening';
    case 'units':
      return 'units';
    case 'wall':
    case 'edge':
    case 'curtain':
    case 'vents':
    case 'site':
      return 'other';
    case 'none':
      return OF_THING[fact.thing];
  }
}
