import type { Greenhouse } from '../../../engine/index.js';

/** Which thermometer a reading is of. */
export interface Thermometer {
  /** A place of the house, as the engine knows it. */
  readonly place: string;
  /** Its own name, where the greenhouse tells of it. */
  readonly name: string | null;
  readonly bed?: string;
  readonly hangs?: 'sun' | 'shade';
}

const PLACES: ReadonlySet<string> = new Set(['inside', 'outside', 'cover', 'soil', 'water', 'stones', 'tube']);

/** Names that a message may call a thermometer by; a plain place is understood anyway. */
export const thermometerNames = ({ thermometers }: Greenhouse): readonly string[] => thermometers.map(({ name }) => name).filter((name) => !PLACES.has(name));

/** The thermometer of a place or name that was said; nothing said is the one inside. The only one of a place needs no name. */
export function thermometerSaid(said: string | undefined, { thermometers }: Greenhouse): Thermometer {
  const wanted = said ?? 'inside';
  const named = thermometers.find(({ name }) => name === wanted);
  const there = thermometers.filter(({ place }) => place === wanted);
  const found = named ?? (there.length === 1 ? there[0] : undefined);
  if (found === undefined) return { place: wanted, name: null };
  return { place: found.place, name: found.name, ...(found.bed === undefined ? {} : { bed: found.bed }), ...(found.hangs === undefined ? {} : { hangs: found.hangs }) };
}

/** What tells two thermometers apart in the store. */
export const keyOf = ({ place, thermometer }: { readonly place: string; readonly thermometer: string | null }): string => thermometer ?? place;
