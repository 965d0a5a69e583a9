import { celsiusToKelvin, memberSpread, type EnsembleMember, type MemberSpread } from '../../../engine/index.js';
import { ENSEMBLE_MEMBERS, MEMBER_VARIABLES } from './request.js';
import { plausible } from './variables.js';
import type { WireAnswer } from './wire.js';

/** Spread by so few runs is another than that of the whole ensemble. */
const LEAST_SHARE = 0.8;
const LEAST_MEMBERS = Math.ceil(LEAST_SHARE * ENSEMBLE_MEMBERS);
const PERCENT = 100;

/**
 * What the ensemble's single runs say, from those of them that can be used; or why they say nothing.
 * Dropped are runs that lack a variable, that end before most others (one that was not renewed with them) and that stand still.
 */
export function spreadOfMembers(answer: WireAnswer): MemberSpread | { readonly cause: string } {
  const members = membersOf(answer);
  const ends = members.map(endOf).sort((a, b) => a - b);
  const usualEnd = ends[Math.floor(ends.length / 2)] ?? -1;
  const usable = members.filter((member) => endOf(member) >= Math.max(0, usualEnd) && !standsStill(member));
  return usable.length < LEAST_MEMBERS ? { cause: `${usable.length} of ${ENSEMBLE_MEMBERS} runs can be used` } : memberSpread(usable, LEAST_MEMBERS);
}

/** The first run has no number; the model's suffix is left out where only one answers. */
function membersOf({ columns, models: [suffix] }: WireAnswer): readonly EnsembleMember[] {
  const column = (variable: (typeof MEMBER_VARIABLES)[number], member: string): readonly (number | null)[] | null => {
    const values = columns.get(`${variable}${member}${suffix === '' || suffix === undefined ? '' : `_${suffix}`}`);
    return values?.map((value) => plausible(variable, value)) ?? null;
  };
  const numbers = Array.from({ length: ENSEMBLE_MEMBERS }, (_, number) => (number === 0 ? '' : `_member${String(number).padStart(2, '0')}`));
  return numbers.flatMap((member): readonly EnsembleMember[] => {
    const [temperatureC, cloudPercent] = MEMBER_VARIABLES.map((variable) => column(variable, member));
    if (!temperatureC || !cloudPercent) return [];
    return [{ airTempK: temperatureC.map((value) => (value === null ? null : celsiusToKelvin(value))), cloudFraction: cloudPercent.map((value) => (value === null ? null : value / PERCENT)) }];
  });
}

/** Last hour in which a run has all its values; -1 where it has none. */
const endOf = ({ airTempK, cloudFraction }: EnsembleMember): number => airTempK.findLastIndex((tempK, i) => tempK !== null && cloudFraction[i] !== null);

/** Cloud may stay as it is for days, air does not. */
const standsStill = ({ airTempK }: EnsembleMember): boolean => new Set(airTempK.filter((tempK) => tempK !== null)).size <= 1;
