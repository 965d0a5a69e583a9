import type { NoneFact } from '../../language/house/house-fact.js';
import { removeCovers } from './put-beds.js';
import type { DraftFile } from './state.js';
import { put, type Put } from './thing.js';

const FIELD = { water: 'drums', stones: 'stones', 'stone-box': 'stoneBox', wall: 'solidWall', edge: 'edgeInsulation', curtain: 'curtain', vents: 'vents', tubes: 'tubes', fan: 'fan', compost: 'compost', heater: 'heater', blower: 'blower' } as const satisfies Partial<Record<NoneFact['thing'], keyof DraftFile>>;

/** The file without a thing that is not there, or no longer. */
export function remove(file: DraftFile, fact: NoneFact): Put {
  if (fact.thing === 'covers') return removeCovers(file, fact);
  if (fact.thing === 'thermometers' || fact.thing === 'crops') return put(file);
  const without = { ...file };
  delete without[FIELD[fact.thing]];
  return put(without);
}

/** Whether the file has it. */
export function has(file: DraftFile, thing: NoneFact['thing']): boolean {
  if (thing === 'covers') return (file.beds ?? []).some(({ cover }) => cover !== undefined);
  if (thing === 'thermometers' || thing === 'crops') return true;
  const value = file[FIELD[thing]];
  return Array.isArray(value) ? value.length > 0 : value !== undefined && value !== false;
}
