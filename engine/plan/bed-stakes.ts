import type { Greenhouse } from '../greenhouse/greenhouse.js';
import { toHouse } from '../greenhouse/to-house.js';
import { coverMinutes } from './candidates.js';

type Bed = Greenhouse['beds'][number];

/** Worth of a bed for each square metre when the grower gives none: the middle of low, medium, high = 2, 5, 10 (placeholder of this project). */
const WORTH_PER_M2 = 5;

/** What a bed stands to lose, and what its cover takes. */
export interface BedStake {
  readonly name: string;
  readonly worth: number;
  readonly crops: readonly { readonly asked: string; readonly worth: number; readonly isGiven: boolean }[];
  /** Null where it has no cover. */
  readonly coverMinutes: number | null;
}

/**
 * Worth of each crop of a bed: its own where the grower gave one, else its part of what that leaves of the bed's.
 * Units: money.
 * Valid: a bed and its area.
 * Outside: nothing is left where its crops are worth more than the bed.
 * Source: decision rule of this project; 5 for each square metre, whatever other crops are worth, where no worth of the bed was given.
 */
export function cropWorths(bed: Bed, areaM2: number): readonly number[] {
  const own = bed.crops.map((entry) => (typeof entry === 'string' ? undefined : entry.worth));
  const given = own.filter((worth) => worth !== undefined);
  const left = Math.max(0, (bed.worth ?? 0) - given.reduce((sum, worth) => sum + worth, 0)) / (own.length - given.length);
  const other = bed.worth === undefined ? (WORTH_PER_M2 * areaM2) / own.length : left;
  return own.map((worth) => worth ?? other);
}

/**
 * What stands to be lost in each bed and how long its cover takes, as the evening counts with it.
 * Units: money, minutes.
 * Valid: a checked greenhouse.
 * Outside: throws OutOfRangeError for sizes that geometry cannot take.
 * Source: decision rule of this project.
 */
export function bedStakes(greenhouse: Greenhouse): readonly BedStake[] {
  const { columns } = toHouse(greenhouse);
  return greenhouse.beds.map((bed, column): BedStake => {
    const { areaM2, rowCover } = columns[column]!;
    const worths = cropWorths(bed, areaM2);
    return {
      name: bed.name,
      worth: worths.length === 0 ? (bed.worth ?? 0) : worths.reduce((sum, worth) => sum + worth, 0),
      crops: bed.crops.map((entry, k) => ({ asked: typeof entry === 'string' ? entry : entry.crop, worth: worths[k]!, isGiven: bed.worth !== undefined || (typeof entry !== 'string' && entry.worth !== undefined) })),
      coverMinutes: bed.cover && rowCover ? coverMinutes(bed, areaM2) : null,
    };
  });
}
