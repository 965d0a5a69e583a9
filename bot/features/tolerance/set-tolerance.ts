import { bedStakes, carefulBy, checkGreenhouse, cropFamilyOf, findCrop, MOST_TRIPS, nextCareWord, toleranceOf, tripsHeld, type BedStake, type CareWord, type Greenhouse, type GreenhouseFile, type ToleranceNights } from '../../../engine/index.js';
import { bedsNamed } from '../../language/beds-named.js';
import type { TolerancePart, ToleranceSaid } from '../../language/tolerance.js';
import { PRICE_OF_CALLS, TOLERANCE_NOTED, TOLERANCE_REFUSED } from '../../text/tolerance-text.js';

type Bed = NonNullable<GreenhouseFile['beds']>[number];
type Crop = NonNullable<Bed['crops']>[number];
type Grower = NonNullable<GreenhouseFile['grower']>;

/** What is meant beside the words: the bed that was asked about, when it was said, and what nights had taught until then. */
export interface ToleranceMeant {
  readonly nights: ToleranceNights;
  readonly bed?: string;
  readonly nowS: number;
}

type Meant = ToleranceMeant & Pick<TolerancePart, 'text'>;

export interface ToleranceSet {
  readonly file: GreenhouseFile;
  readonly notes: readonly string[];
}

/** The file with what was said of how readily to call, and what was noted of it. */
export const withTolerance = (file: GreenhouseFile, parts: readonly TolerancePart[], meant: ToleranceMeant): ToleranceSet =>
  parts.reduce<ToleranceSet>((sofar, { said, text }) => {
    const { file: next, notes } = withOne(sofar.file, said, { ...meant, text });
    return { file: next, notes: [...sofar.notes, ...notes] };
  }, { file, notes: [] });

function withOne(file: GreenhouseFile, said: ToleranceSaid, meant: Meant): ToleranceSet {
  switch (said.about) {
    case 'trips':
      return withTrips(file, said.trips, meant);
    case 'careful':
      return 'step' in said ? stepped(file, said.step, meant) : withWord(file, said.careful, meant);
    case 'trip':
      return { file: withGrower(file, { trip: said.trip, tripSince: instant(meant) }), notes: [TOLERANCE_NOTED.trip(said.trip)] };
    case 'hour':
      return { file: withGrower(file, { hourWorth: Math.min(MOST_HOUR_WORTH, said.worth) }), notes: [TOLERANCE_NOTED.hour(Math.min(MOST_HOUR_WORTH, said.worth))] };
    case 'minutes':
      return withMinutes(file, said, meant);
    case 'worth':
      return withWorth(file, said, meant);
    case 'ask':
      return { file, notes: [] };
  }
}

/** The most that a file takes. */
const MOST_HOUR_WORTH = 500;
/** Beds are covered between noon and dark, which is four hours in the middle of winter, less a reply and a quarter to spare (decision rule of this project). */
const MOST_MINUTES = 180;

const withGrower = (file: GreenhouseFile, change: Partial<Grower>): GreenhouseFile => ({ ...file, grower: { ...file.grower, ...change } });

const instant = ({ nowS }: ToleranceMeant): string => new Date(nowS * 1000).toISOString();

/** What calls and losses have taught until now counts no more. */
const since = (meant: ToleranceMeant): Pick<Grower, 'carefulSince'> => ({ carefulSince: instant(meant) });

/** A number counts with the share that holds when the first one is said: then who says the number that is shown moves nothing. */
function withTrips(file: GreenhouseFile, said: number, meant: Meant): ToleranceSet {
  const before = tripsHeld(checked(file), meant.nights);
  const next = withGrower(file, { careful: Math.min(MOST_TRIPS, said), tripShare: before.tripShare, ...since(meant) });
  const { trips } = tripsHeld(checked(next));
  return { file: next, notes: [TOLERANCE_NOTED.trips(said), ...(trips === Math.round(said) ? [] : [TOLERANCE_NOTED.bound(trips, said)]), ...(trips === before.trips ? [] : [TOLERANCE_NOTED.counted(trips, before.trips)])] };
}

/** Who must never lose a bed is not called less than before, who is relaxed not more. */
function withWord(file: GreenhouseFile, word: CareWord, meant: Meant): ToleranceSet {
  const next = withGrower(file, { careful: carefulBy(word, file.grower ?? {}), ...since(meant) });
  const change = moved(file, next, meant);
  if (word === 'never-lose-it' && change <= 0) return { file, notes: [TOLERANCE_NOTED.most(heldBy(file, meant))] };
  if (word === 'relaxed' && change >= 0) return { file, notes: [TOLERANCE_NOTED.least(heldBy(file, meant))] };
  return { file: next, notes: [change === 0 ? TOLERANCE_NOTED.same(heldBy(file, meant)) : TOLERANCE_NOTED.step(tripsHeld(checked(next)).trips, heldBy(file, meant), change > 0)] };
}

/** What nights have taught stays. */
function stepped(file: GreenhouseFile, step: 1 | -1, meant: Meant): ToleranceSet {
  const word = nextCareWord(checked(file).grower, step);
  const next = word === undefined ? file : withGrower(file, { careful: carefulBy(word, file.grower ?? {}) });
  const now = heldBy(file, meant);
  if (moved(file, next, meant, meant.nights) * step <= 0) return { file, notes: [step === 1 ? TOLERANCE_NOTED.most(now) : TOLERANCE_NOTED.least(now)] };
  return { file: next, notes: [TOLERANCE_NOTED.step(heldBy(next, meant), now, step === 1), ...(step === 1 ? [] : [PRICE_OF_CALLS])] };
}

const heldBy = (file: GreenhouseFile, { nights }: Meant): number => tripsHeld(checked(file), nights).trips;

/** Weights that came about by division. */
const SAME_WEIGHT = 1e-9;

/** By how much losses weigh more than before. */
function moved(file: GreenhouseFile, next: GreenhouseFile, { nights }: Meant, nightsAfter?: ToleranceNights): number {
  const more = toleranceOf(checked(next).grower, nightsAfter).lossWeight - toleranceOf(checked(file).grower, nights).lossWeight;
  return Math.abs(more) < SAME_WEIGHT ? 0 : more;
}

function withMinutes(file: GreenhouseFile, { minutes, crops }: Extract<ToleranceSaid, { about: 'minutes' }>, meant: Meant): ToleranceSet {
  if (minutes > MOST_MINUTES) return { file, notes: [TOLERANCE_REFUSED.tooLong(MOST_MINUTES)] };
  const stakes = bedStakes(checked(file));
  const named = bedsNamed(meant.text, stakes.map(({ name }) => name));
  const isMeant = ({ name, crops: grown }: BedStake): boolean => (named !== null ? named.includes(name) : crops.length === 0 || grown.some((crop) => crops.some((id) => isOf(crop.asked, id))));
  const covered = stakes.filter((bed) => bed.coverMinutes !== null && isMeant(bed));
  const now = covered.reduce((sum, bed) => sum + bed.coverMinutes!, 0);
  if (covered.length === 0) return { file, notes: [TOLERANCE_REFUSED.noCover] };
  // Told for several beds together: each takes its part of it.
  const partOf = (bed: BedStake): number => rounded(now > 0 ? (minutes * bed.coverMinutes!) / now : minutes / covered.length);
  const beds = (file.beds ?? []).map((bed, at): Bed => {
    const stake = covered.find((one) => one === stakes[at]);
    return stake === undefined ? bed : { ...bed, coverMinutes: partOf(stake) };
  });
  return { file: { ...file, beds }, notes: [TOLERANCE_NOTED.minutes(minutes, named === null && crops.length === 0 ? null : covered.map(({ name }) => name))] };
}

const rounded = (value: number): number => Math.round(value * 100) / 100;

/** Crops by their name, in the bed that was named if one was; a bed where no crop was. */
function withWorth(file: GreenhouseFile, { worth, crops }: Extract<ToleranceSaid, { about: 'worth' }>, meant: Meant): ToleranceSet {
  const all = file.beds ?? [];
  const named = meant.bed === undefined ? bedsMeant(meant.text, all) : [meant.bed];
  const isIn = ({ name }: Bed): boolean => named === null || named.includes(name);
  const isMeant = (crop: Crop): boolean => crops.some((id) => isOf(cropName(crop), id));
  if (crops.length === 0) {
    const beds = all.filter((bed) => named !== null && isIn(bed));
    if (beds.length === 0) return { file, notes: [TOLERANCE_REFUSED.unknown] };
    const each = EACH.test(meant.text) ? worth : rounded(worth / beds.length);
    return { file: { ...file, beds: all.map((bed) => (beds.includes(bed) ? { ...bed, crops: (bed.crops ?? []).map(withoutWorth), worth: each } : bed)) }, notes: [TOLERANCE_NOTED.worth(each * beds.length, beds.map(({ name }) => name), beds.length > 1 ? each : null)] };
  }
  const places = all.filter(isIn).reduce((sum, { crops: grown }) => sum + (grown ?? []).filter(isMeant).length, 0);
  if (places === 0) return { file, notes: [TOLERANCE_REFUSED.unknown] };
  const each = rounded(worth / places);
  const beds = all.map((bed): Bed => (isIn(bed) ? { ...bed, crops: (bed.crops ?? []).map((crop) => (isMeant(crop) ? { ...asObject(crop), worth: each } : crop)) } : bed));
  const words = [...new Set(all.filter(isIn).flatMap(({ crops: grown }) => (grown ?? []).filter(isMeant).map((crop) => `the ${cropName(crop)}`)))];
  return { file: { ...file, beds }, notes: [TOLERANCE_NOTED.worth(worth, words, places > 1 ? each : null)] };
}

const EACH = /\b(?:each|every|a) bed\b/iu;
const ALL = /\b(?:each|every|a) bed\b|\bbeds\b/iu;

/** Those that were named; of a house with one bed that, and where all are meant all; null where no bed is. */
function bedsMeant(text: string, beds: readonly Bed[]): readonly string[] | null {
  const named = bedsNamed(text, beds.map(({ name }) => name));
  return named ?? (ALL.test(text) || (beds.length === 1 && /\bbed\b/iu.test(text)) ? beds.map(({ name }) => name) : null);
}

const cropName = (crop: Crop): string => (typeof crop === 'string' ? crop : crop.crop);
const asObject = (crop: Crop): Exclude<Crop, string> => (typeof crop === 'string' ? { crop } : crop);

function withoutWorth(crop: Crop): Crop {
  if (typeof crop === 'string') return crop;
  const { worth: _, ...rest } = crop;
  return Object.keys(rest).length === 1 ? rest.crop : rest;
}

/** A crop of the file by an id of the crop table, or of a family. */
function isOf(asked: string, id: string): boolean {
  const row = findCrop(asked)?.row.id;
  return asked === id || row === id || (row !== undefined && cropFamilyOf(row)?.name === id);
}

export function checked(file: GreenhouseFile): Greenhouse {
  const check = checkGreenhouse(file);
  if (!check.ok) throw new Error(`a stored greenhouse fails its check: ${check.faults.map(({ field, message }) => `${field}: ${message}`).join('; ')}`);
  return check.greenhouse;
}

/** The file with what another version of it has of this: a description that goes on knows nothing of it. */
export function keepingTolerance(file: GreenhouseFile, before: GreenhouseFile): GreenhouseFile {
  const { trip, careful, tripShare, carefulSince, tripSince, carefulAsked, hourWorth } = before.grower ?? {};
  const kept = Object.fromEntries(Object.entries({ trip, careful, tripShare, carefulSince, tripSince, carefulAsked, hourWorth }).filter(([, value]) => value !== undefined)) as Partial<Grower>;
  const beds = file.beds?.map((bed): Bed => {
    const old = before.beds?.find(({ name }) => name === bed.name);
    if (old === undefined) return bed;
    const worths = new Map((old.crops ?? []).flatMap((crop) => (typeof crop === 'string' || crop.worth === undefined ? [] : [[crop.crop, crop.worth] as const])));
    const crops = bed.crops?.map((crop): Crop => (worths.has(cropName(crop)) ? { ...asObject(crop), worth: worths.get(cropName(crop))! } : crop));
    return { ...bed, ...(crops === undefined ? {} : { crops }), ...(old.worth === undefined ? {} : { worth: old.worth }), ...(old.coverMinutes === undefined ? {} : { coverMinutes: old.coverMinutes }) };
  });
  return { ...file, ...(Object.keys(kept).length === 0 ? {} : { grower: { ...file.grower, ...kept } }), ...(beds === undefined ? {} : { beds }) };
}
