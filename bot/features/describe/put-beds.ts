import type { BedFact, CoverFact, NoneFact } from '../../language/house/house-fact.js';
import { THE_BEDS } from '../../text/describe-names.js';
import { areaOfSides, fileArea, fileWeight } from './file-quantities.js';
import type { DraftFile } from './state.js';
import { lacks, problem, put, type Measures, type Put } from './thing.js';

export type Bed = NonNullable<DraftFile['beds']>[number];
type Crop = NonNullable<Bed['crops']>[number];

const cropName = (crop: Crop): string => (typeof crop === 'string' ? crop : crop.crop);
/** Two ways of naming the same bed are one. */
const bedKey = (name: string): string => name.toLowerCase().replace(/^the /u, '').trim();
export const isBed = (name: string) => (bed: Bed): boolean => bedKey(bed.name) === bedKey(name);

export const cropsOf = (bed: Bed): readonly string[] => (bed.crops ?? []).map(cropName);

/** A cover for the beds that were named, for those that hold the crops that were named, or for all. */
export function putCover(file: DraftFile, fact: CoverFact, _said: Measures): Put {
  const weight = fact.weight === undefined ? fact.weightGsm : fileWeight(fact.weight);
  const beds = file.beds ?? [];
  const known = beds.find((bed) => bed.cover?.kind === fact.kind)?.cover;
  const kept = known?.kind === 'fabric' ? known.weight : undefined;
  const grams = weight ?? kept;
  if (fact.kind === 'fabric' && grams === undefined) return lacks('weight');
  const second = fact.second === undefined ? {} : { second: fact.second === 'fabric' ? { kind: 'fabric' as const, ...(grams === undefined ? {} : { weight: grams }) } : { kind: 'film-tunnel' as const } };
  const laid = { ...second, ...(fact.on === undefined ? {} : { on: fact.on }) };
  const cover: NonNullable<Bed['cover']> = fact.kind === 'film-tunnel' ? { kind: 'film-tunnel', ...laid } : { kind: 'fabric', ...(grams === undefined ? {} : { weight: grams }), ...laid };
  const holding = beds.filter((bed) => fact.crops.length > 0 && cropsOf(bed).some((crop) => fact.crops.includes(crop))).map(({ name }) => name);
  const wanted = fact.beds.length > 0 ? fact.beds : holding;
  const named = wanted.reduce<readonly Bed[]>((sofar, name) => (sofar.some(isBed(name)) ? sofar : [...withoutEmpty(sofar), { name, crops: [] }]), beds);
  const all = named.length > 0 ? named : [{ name: THE_BEDS, crops: [] }];
  return put({ ...file, beds: all.map((bed) => (wanted.length === 0 || wanted.some((name) => isBed(name)(bed)) ? { ...bed, cover } : bed)) });
}

/** The bed that stands for all is given up once one has a name, if nothing grows in it. */
const withoutEmpty = (beds: readonly Bed[]): readonly Bed[] => beds.filter((bed) => bed.name !== THE_BEDS || (bed.crops ?? []).length > 0);

/** Crops go into their bed. A bed that is new has a cover only where all beds were said to have one. */
export function putBed(file: DraftFile, fact: BedFact, { plain, isCovered }: Measures & { readonly isCovered: boolean }): Put {
  const beds = file.beds ?? [];
  if (fact.gone === true) return removeCrops(file, fact);
  // "A cover for the lettuce" speaks of lettuce that is known.
  const places = fact.bed === null && fact.crops.length > 0 && fact.area === undefined && fact.sides === undefined;
  if (places && fact.crops.every(({ name }) => beds.some((bed) => cropsOf(bed).includes(name)))) return put(file);
  const strange = fact.crops.find(({ known, hardiness }) => !known && hardiness === undefined);
  if (strange !== undefined) return lacks('hardiness');
  const name = fact.bed ?? (beds.length === 1 ? beds[0]!.name : beds.length === 0 ? THE_BEDS : null);
  if (name === null) return lacks('which-bed');
  const crops = fact.crops.map((crop): Crop => (crop.known || crop.hardiness === undefined ? crop.name : { crop: crop.name, hardiness: crop.hardiness }));
  const area = fact.area !== undefined ? fileArea(fact.area, plain) : fact.sides !== undefined ? areaOfSides(fact.sides, plain) : undefined;
  const covers = beds.map(({ cover }) => cover);
  const common = isCovered && covers.length > 0 && covers.every((cover) => cover !== undefined && JSON.stringify(cover) === JSON.stringify(covers[0])) ? covers[0] : undefined;
  const moved = fact.bed === null ? beds : leaveTheBeds(beds, crops.map(cropName), name);
  const existing = moved.find(isBed(name));
  const bed: Bed = {
    ...(existing ?? { name, ...(common === undefined ? {} : { cover: common }) }),
    crops: [...(existing?.crops ?? []), ...crops.filter((crop) => !(existing?.crops ?? []).some((old) => cropName(old) === cropName(crop)))],
    ...(area === undefined ? {} : { area }),
  };
  return put({ ...file, beds: existing === undefined ? [...moved, bed] : moved.map((one) => (one === existing ? bed : one)) });
}

/** Crops that were told for the beds as a whole move to the bed that is named now. */
function leaveTheBeds(beds: readonly Bed[], crops: readonly string[], name: string): readonly Bed[] {
  if (bedKey(name) === bedKey(THE_BEDS)) return beds;
  return withoutEmpty(beds.map((bed) => (bed.name === THE_BEDS ? { ...bed, crops: (bed.crops ?? []).filter((crop) => !crops.includes(cropName(crop))) } : bed)));
}

function removeCrops(file: DraftFile, fact: BedFact): Put {
  const names = fact.crops.map(({ name }) => name);
  const meant = (bed: Bed): boolean => fact.bed === null || isBed(fact.bed)(bed);
  const beds = file.beds ?? [];
  if (names.length === 0) {
    const kept = beds.filter((bed) => fact.bed === null || !isBed(fact.bed)(bed));
    return kept.length === beds.length || fact.bed === null ? problem({ code: 'not-there', what: fact.bed ?? '' }) : put({ ...file, beds: kept });
  }
  const absent = names.find((name) => !beds.some((bed) => meant(bed) && cropsOf(bed).includes(name)));
  if (absent !== undefined) return problem({ code: 'not-there', what: absent });
  return put({ ...file, beds: beds.map((bed) => (meant(bed) ? { ...bed, crops: (bed.crops ?? []).filter((crop) => !names.includes(cropName(crop))) } : bed)) });
}

/** Beds without their covers. */
export function removeCovers(file: DraftFile, fact: NoneFact): Put {
  const beds = (file.beds ?? []).map((bed): Bed => {
    if (fact.beds !== undefined && !fact.beds.some((name) => isBed(name)(bed))) return bed;
    const { cover: _gone, ...bare } = bed;
    return bare;
  });
  return put({ ...file, ...(beds.length > 0 ? { beds } : {}) });
}
