import type { CompostFact, EdgeFact, StoneBoxFact, StonesFact, WallFact, WaterFact } from '../../language/house/house-fact.js';
import { celsiusOf, fileArea, fileLength, fileLitres, fileLitresEach, fileVolume, volumeOfSides, type FileQuantity } from './file-quantities.js';
import { fanOf } from './put-air.js';
import { isBed } from './put-beds.js';
import type { DraftFile } from './state.js';
import { lacks, put, type Measures, type Put } from './thing.js';

const at = <T>(list: readonly T[] | undefined, from: number): readonly T[] => (list ?? []).slice(from);

/** Drums are told as a whole: what is said takes the place of what was known, but for "two more" and "and ten buckets". */
export function putWater(file: DraftFile, fact: WaterFact, said: Measures & { readonly adds: boolean }): Put {
  const known = said.adds ? undefined : file.drums?.[0];
  const otherKind = known !== undefined && fact.more === true && fact.each !== undefined && fileLitres(fact.each, said.habits) !== known.litres;
  if (otherKind) return putWater(file, fact, { ...said, adds: true });
  const count = fact.count === undefined ? known?.count : fact.more === true && known !== undefined ? known.count + fact.count : fact.count;
  if (count === undefined) return lacks('count');
  const litres: FileQuantity | null = fact.inAll !== undefined ? fileLitresEach(fact.inAll, count, said.habits) : fact.each !== undefined ? fileLitres(fact.each, said.habits) : ((known?.litres) ?? null);
  if (litres === null) return lacks('each');
  const drums = { ...known, litres, count, ...(fact.touching === true ? { touching: true } : {}), ...(fact.sunny === undefined ? {} : { sunny: fact.sunny }) };
  return put({ ...file, drums: said.adds ? [...(file.drums ?? []), drums] : [drums, ...at(file.drums, 1)] });
}

export function putStones(file: DraftFile, fact: StonesFact, said: Measures & { readonly adds: boolean }): Put {
  const known = said.adds ? undefined : file.stones?.find(({ kind }) => (kind ?? 'rock') === fact.kind);
  const volume = fact.amount === undefined ? (known?.volume) : fileVolume(fact.amount, fact.kind);
  if (volume === undefined || volume === null) return lacks('amount');
  const stones = {
    ...known,
    kind: fact.kind,
    volume,
    ...(fact.exposed === undefined ? {} : { exposed: fileArea(fact.exposed, said.plain) }),
    ...(fact.blackened === undefined ? {} : { blackened: fact.blackened }),
    ...(fact.sunny === undefined ? {} : { sunny: fact.sunny }),
  };
  return put({ ...file, stones: [...(file.stones ?? []).filter((one) => one !== known), stones] });
}

export function putStoneBox(file: DraftFile, fact: StoneBoxFact, said: Measures): Put {
  const known = file.stoneBox;
  const volume = fact.amount === undefined ? (known?.volume) : fileVolume(fact.amount, fact.kind);
  const glazed = fact.glazed === undefined ? (known?.glazed) : fileArea(fact.glazed, said.plain);
  if (volume === undefined || volume === null) return lacks('amount');
  if (glazed === undefined) return lacks('glazed');
  const fan = fact.fan === undefined ? null : fanOf(known?.fan, fact.fan);
  if (fan !== null && 'lacks' in fan) return lacks(fan.lacks);
  return put({ ...file, stoneBox: { ...known, volume, glazed, ...(fact.kind === undefined ? {} : { kind: fact.kind }), ...(fan === null ? {} : { fan: fan.fan }) } });
}

export function putWall(file: DraftFile, fact: WallFact, { plain, habits }: Measures): Put {
  const wall = {
    ...file.solidWall,
    ...(fact.height === undefined ? {} : { height: fileLength(fact.height, plain) }),
    ...(fact.foam === undefined ? {} : { foam: fileLength(fact.foam, plain) }),
    ...(fact.masonry === undefined ? {} : { masonry: fileLength(fact.masonry, plain) }),
    ...(fact.stone === undefined ? {} : { stone: fact.stone }),
    ...(fact.blackened === undefined ? {} : { blackened: fact.blackened }),
    ...(fact.faces === undefined ? {} : { faces: fact.faces }),
    ...(fact.behind === undefined ? {} : { behind: celsiusOf(fact.behind, habits.temperature) }),
  };
  return put({ ...file, solidWall: wall });
}

export function putEdge(file: DraftFile, fact: EdgeFact, { plain }: Measures): Put {
  const depth = fact.depth === undefined ? (file.edgeInsulation?.depth) : fileLength(fact.depth, plain);
  if (depth === undefined) return lacks('depth');
  return put({ ...file, edgeInsulation: { ...file.edgeInsulation, depth, ...(fact.thickness === undefined ? {} : { thickness: fileLength(fact.thickness, plain) }) } });
}

/** A heap: how big, since when; against a bed that is known, or outside with air blown through it. */
export function putCompost(file: DraftFile, fact: CompostFact, { plain }: Measures): Put {
  const known = file.compost;
  const volume = fact.volume !== undefined ? fileVolume(fact.volume) : fact.sides !== undefined ? volumeOfSides(fact.sides, plain) : ((known?.volume) ?? null);
  if (volume === null) return lacks('volume');
  const started = fact.started ?? known?.started;
  if (started === undefined) return lacks('started');
  const fan = fact.fan !== undefined || fact.piped === true ? fanOf(known?.fan, fact.fan ?? {}) : null;
  if (fan !== null && 'lacks' in fan) return lacks(fan.lacks);
  const beds = file.beds ?? [];
  const asked = fact.against ?? known?.against;
  const against = asked === undefined ? undefined : (beds.find(isBed(asked))?.name ?? asked);
  const withBed = against === undefined || beds.some(isBed(against)) ? beds : [...beds, { name: against, crops: [] }];
  return put({ ...file, ...(withBed.length > 0 ? { beds: withBed } : {}), compost: { ...known, volume, started, ...(against === undefined ? {} : { against }), ...(fan === null ? {} : { fan: fan.fan }) } });
}

