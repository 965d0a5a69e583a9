import { cropFamilyOf, reliabilityTable, type SpokenChance, type Verdict, type WordReliability } from '../../../engine/index.js';
import type { StoredOutcome } from '../../ports.js';
import type { AdvisoryCrop } from '../evening/advisory.js';
import { SAME_C, type PastNight, type ReadLow } from './past-nights.js';

/** How each verdict held, from the mildest on; those that were never given on a night that can be judged are left out. */
export type VerdictRecord = readonly VerdictHeld[];

export interface VerdictHeld extends WordReliability<Verdict> {
  /** Each case was told of the plants: none goes by a low alone. */
  readonly isTold: boolean;
}

interface Given extends SpokenChance<Verdict> {
  readonly isTold: boolean;
}

const VERDICTS: readonly Verdict[] = ['safe', 'watch', 'at-risk', 'likely-lost'];

/** Whether crops were marked as their verdicts had it: by what was told of them, else by the low at the plant as it was read. */
export function verdictRecord(nights: readonly PastNight[]): VerdictRecord {
  const given = nights.flatMap((night) => night.crops.filter((crop) => wentAsSaid(crop, night)).flatMap((crop): readonly Given[] => {
    const marked = wasMarked(crop, night);
    return marked === null ? [] : [{ night: night.date, spokenAs: crop.verdict, probability: crop.damageProbability, ...marked }];
  }));
  return reliabilityTable(given, VERDICTS).words.map((word) => ({ ...word, isTold: given.every(({ spokenAs, isTold }) => spokenAs !== word.spokenAs || isTold) }));
}

/** The verdict was about the plants as they stood: the plan was followed, or changes nothing for them. */
function wentAsSaid(crop: AdvisoryCrop, { followed, idleCrops }: PastNight): boolean {
  if (crop.pickedBefore || followed === 'otherwise') return false;
  const idle = idleCrops.find((other) => other.crop === crop.crop && other.bed === crop.bed);
  return followed === 'as-planned' || (idle !== undefined && idle.judgedAt === crop.judgedAt && Math.abs(idle.judgedLowC - crop.judgedLowC) <= SAME_C);
}

/** Null where nothing tells. */
function wasMarked(crop: AdvisoryCrop, night: PastNight): Pick<Given, 'happened' | 'isTold'> | null {
  const told = night.outcomes.find((outcome) => isOf(outcome, crop, night));
  if (told !== undefined) return { happened: told.state !== 'fine', isTold: true };
  const read = readFor(crop, night);
  if (read === null || crop.judgedAt === 'soil') return null;
  // A thermometer under the cover shows what the plants there have; else what the house was off by, they were off by too.
  const lowC = read.place === 'cover' && crop.judgedAt === 'cover' ? read.tempC : crop.judgedLowC + read.tempC - read.said.q50;
  return { happened: lowC < crop.damageBeginsC, isTold: false };
}

type Comparable = ReadLow & { readonly said: NonNullable<ReadLow['said']> };

/** The reading that is nearest to the plants: under their cover, else inside. */
function readFor({ bed }: AdvisoryCrop, { reads, places }: PastNight): Comparable | null {
  const good = reads.filter((read): read is Comparable => read.judged === 'good' && read.compares && read.said !== null);
  const isCovered = places.some((one) => one.place === 'cover' && one.bed === bed);
  const under = isCovered ? good.find((read) => read.place === 'cover' && (read.bed === null || read.bed === bed)) : undefined;
  return under ?? good.find(({ place }) => place === 'inside') ?? null;
}

/** Where no bed was named, marks were seen on the plants that had it worst; what is fine is fine everywhere. */
function isOf(outcome: StoredOutcome, crop: AdvisoryCrop, { crops }: PastNight): boolean {
  const isMeant = (one: AdvisoryCrop): boolean => (outcome.bed === null || outcome.bed === one.bed) && (one.crop === outcome.crop || one.asked === outcome.crop || cropFamilyOf(one.crop)?.name === outcome.crop);
  if (!isMeant(crop)) return false;
  return outcome.state === 'fine' || crops.filter(isMeant).every((other) => marginC(crop) <= marginC(other));
}

const marginC = ({ judgedLowC, damageBeginsC }: AdvisoryCrop): number => judgedLowC - damageBeginsC;
