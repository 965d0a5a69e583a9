import { damageUnder, effortOf, expectedLoss, weightedDamage, type Candidate, type Stakes } from './expected-loss.js';

// Rules of this project (decision reference): money units of the grower.
const LEAST_GAIN = 1;
const GAIN_SHARE_OF_EFFORT = 0.1;
const TIE_MONEY = 0.25;
const TIE_SHARE = 0.02;
const SMALL_DAMAGE = 0.02;
const PROTECT_IN_TIES_FROM = 0.1;
const TIME_MARGIN = 1.25;
const LEAST_SWITCH_GAIN = 2;
const SWITCH_SHARE = 0.2;
const STAND_DOWN_SHARE = 0.5;
const SECONDS_PER_MINUTE = 60;

export type ChoiceReason = 'nothing-at-risk' | 'gain-too-small' | 'best-is-nothing' | 'gain-worth-it' | 'kept-as-issued' | 'switched' | 'stand-down';

export interface Choice {
  readonly chosen: Candidate;
  readonly reason: ChoiceReason;
  readonly losses: ReadonlyMap<string, number>;
  readonly infeasible: readonly string[];
}

/** Can its work still be finished in time, with a margin? Done things always are. Units: epoch s, minutes. Valid: any. Outside: not applicable. Source: decision rule of this project. */
export function isFeasible(candidate: Candidate, nowS: number): boolean {
  return candidate.done || candidate.deadlineS === null || nowS + TIME_MARGIN * candidate.minutes * SECONDS_PER_MINUTE <= candidate.deadlineS;
}

/**
 * The candidate of least expected loss, with the guards that keep a grower from being sent out for nothing.
 * Units: money, epoch seconds.
 * Valid: `nothing` must be among the candidates.
 * Outside: throws when it is not.
 * Source: decision rule of this project (expected loss, hysteresis, ties).
 */
export function choose(input: { candidates: readonly Candidate[]; nothingId: string; stakes: Stakes; nowS: number }): Choice {
  const { candidates, stakes, nowS } = input;
  const nothing = candidates.find(({ id }) => id === input.nothingId);
  if (!nothing) throw new Error(`no candidate called ${JSON.stringify(input.nothingId)}`);
  const losses = new Map(candidates.map((candidate) => [candidate.id, expectedLoss(candidate, stakes)]));
  const feasible = candidates.filter((candidate) => candidate === nothing || isFeasible(candidate, nowS));
  const infeasible = candidates.filter((candidate) => !feasible.includes(candidate)).map(({ id }) => id);
  const result = (chosen: Candidate, reason: ChoiceReason): Choice => ({ chosen, reason, losses, infeasible });

  const damages = damageUnder(nothing, stakes);
  const worst = Math.max(0, ...damages);
  if (worst < SMALL_DAMAGE && weightedDamage(nothing, stakes) < LEAST_GAIN) return result(nothing, 'nothing-at-risk');
  const least = Math.min(...feasible.map(({ id }) => losses.get(id)!));
  const tied = feasible.filter(({ id }) => losses.get(id)! - least < Math.max(TIE_MONEY, TIE_SHARE * least) || losses.get(id) === least);
  const best = tied.reduce((a, b) => (preferred(a, b, { nothing, worst, losses }) ? a : b));
  if (best === nothing) return result(nothing, 'best-is-nothing');
  const needed = Math.max(LEAST_GAIN, GAIN_SHARE_OF_EFFORT * (best.cashCost + effortOf(best, stakes.hourWorth)));
  if (!best.done && losses.get(nothing.id)! - losses.get(best.id)! < needed) return result(nothing, 'gain-too-small');
  return result(best, 'gain-worth-it');
}

/** Between equals: no flame, reversible, less work, earlier finished, less loss, name; but a threatened crop is protected. */
function preferred(a: Candidate, b: Candidate, context: { nothing: Candidate; worst: number; losses: ReadonlyMap<string, number> }): boolean {
  if (context.worst >= PROTECT_IN_TIES_FROM && (a === context.nothing) !== (b === context.nothing)) return b === context.nothing;
  if (a.combustion !== b.combustion) return !a.combustion;
  if (a.reversible !== b.reversible) return a.reversible;
  if (a.minutes !== b.minutes) return a.minutes < b.minutes;
  const finish = (candidate: Candidate): number => candidate.deadlineS ?? Infinity;
  if (finish(a) !== finish(b)) return finish(a) < finish(b);
  const loss = ({ id }: Candidate): number => context.losses.get(id)!;
  if (loss(a) !== loss(b)) return loss(a) < loss(b);
  return a.id <= b.id;
}

/**
 * What becomes of a recommendation that was already issued when the forecast changes: kept, switched or stood down.
 * Units: money.
 * Valid: the issued candidate must be among the candidates; one that can no longer be done in time gives way to a fresh choice.
 * Outside: throws when it is not.
 * Source: decision rule of this project (switch at max(2, 20 %), stand down only when the risk left is half of the effort).
 */
export function revise(input: { candidates: readonly Candidate[]; nothingId: string; issuedId: string; stakes: Stakes; nowS: number }): Choice {
  const fresh = choose(input);
  const issued = input.candidates.find(({ id }) => id === input.issuedId);
  if (!issued) throw new Error(`no candidate called ${JSON.stringify(input.issuedId)}`);
  if (issued.id === input.nothingId || fresh.chosen.id === issued.id || !isFeasible(issued, input.nowS)) return fresh;
  const { losses, chosen: better } = fresh;
  const kept: Choice = { ...fresh, chosen: issued, reason: 'kept-as-issued' };
  const gain = losses.get(issued.id)! - losses.get(better.id)!;
  if (gain < Math.max(LEAST_SWITCH_GAIN, SWITCH_SHARE * losses.get(issued.id)!)) return kept;
  if (better.id !== input.nothingId) return { ...fresh, reason: 'switched' };
  const riskLeft = weightedDamage(better, input.stakes);
  const spared = STAND_DOWN_SHARE * (issued.cashCost + effortOf(issued, input.stakes.hourWorth));
  return riskLeft <= spared && !issued.done ? { ...fresh, reason: 'stand-down' } : kept;
}
