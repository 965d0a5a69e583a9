/** One thing that the grower could do tonight, or several together; costs in the grower's money. */
export interface Candidate {
  readonly id: string;
  readonly cashCost: number;
  readonly minutes: number;
  /** 1 easy, 1.5 annoying, 2.5 awful (night, snow, two people). */
  readonly hassle: number;
  /** Light lost, damp, wear, produce picked early. */
  readonly sideCost: number;
  /** Chance that it works once it is done. */
  readonly reliability: number;
  /** What is left when it fails. */
  readonly fallbackId: string;
  /** Latest instant at which the work must be finished; null for what needs no hand. */
  readonly deadlineS: number | null;
  readonly combustion: boolean;
  readonly reversible: boolean;
  readonly done: boolean;
}

export interface Stakes {
  /** Worth of each crop at stake. */
  readonly worth: readonly number[];
  /** Mean damage of each crop under each candidate, if it works: candidate id -> 0-1 for each crop. */
  readonly meanDamage: ReadonlyMap<string, readonly number[]>;
  readonly hourWorth: number;
  /** Weight of losses against effort: how needless trips compare with a saved bed. */
  readonly lossWeight: number;
}

const MINUTES_PER_HOUR = 60;

/**
 * Cost of a candidate before any damage: cash, effort, side cost. What is already done costs only its side cost.
 * Units: money.
 * Valid: any candidate.
 * Outside: not applicable.
 * Source: decision rule of this project, cost(a) = c + w h t/60 + x (Thompson1952, Murphy1977 in several actions).
 */
export function costOf(candidate: Candidate, hourWorth: number): number {
  return candidate.done ? candidate.sideCost : candidate.cashCost + effortOf(candidate, hourWorth) + candidate.sideCost;
}

/** Worth of the work alone. Units: money. Valid: any candidate. Outside: not applicable. Source: decision rule of this project. */
export const effortOf = (candidate: Pick<Candidate, 'hassle' | 'minutes'>, hourWorth: number): number => (hourWorth * candidate.hassle * candidate.minutes) / MINUTES_PER_HOUR;

/** Mean damage of each crop, with the chance that the candidate fails. Units: 0-1. Valid: candidates of the table. Outside: throws for an unknown id. Source: decision rule of this project. */
export function damageUnder(candidate: Candidate, stakes: Stakes): readonly number[] {
  const works = tableRow(stakes, candidate.id);
  const fails = tableRow(stakes, candidate.fallbackId);
  return works.map((q, k) => candidate.reliability * q + (1 - candidate.reliability) * fails[k]!);
}

function tableRow(stakes: Stakes, id: string): readonly number[] {
  const row = stakes.meanDamage.get(id);
  if (!row) throw new Error(`no damage known for candidate ${JSON.stringify(id)}`);
  return row;
}

/** Loss from damage alone, weighted. Units: money. Valid: candidates of the table. Outside: throws for an unknown id. Source: decision rule of this project. */
export const weightedDamage = (candidate: Candidate, stakes: Stakes): number => stakes.lossWeight * damageUnder(candidate, stakes).reduce((sum, q, k) => sum + stakes.worth[k]! * q, 0);

/**
 * Expected loss of a candidate: its cost and what the night is expected to take all the same.
 * Units: money.
 * Valid: candidates of the table.
 * Outside: throws for an unknown id.
 * Source: decision rule of this project, EL(a) = cost(a) + lambda sum V q.
 */
export const expectedLoss = (candidate: Candidate, stakes: Stakes): number => costOf(candidate, stakes.hourWorth) + weightedDamage(candidate, stakes);
