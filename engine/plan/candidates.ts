import { HEATER_KINDS } from '../data/heater-kinds.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import type { Controls } from '../night/controls.js';
import { celsiusToKelvin, kelvinToCelsius } from '../units.js';
import type { NightChoices } from './action.js';
import { effortOf } from './expected-loss.js';
import { heaterSpan } from './heater-span.js';
import { hasMoves, type HouseMoves } from './house-moves.js';

/** A combination of covers, heat and small moves to run through the night; harvest is added later, it changes no temperature. */
export interface PhysicalPlan {
  readonly id: string;
  readonly coveredBeds: readonly string[];
  readonly heater: { readonly setK: number | null } | null;
  readonly moves: HouseMoves | null;
  readonly choices: NightChoices;
  readonly minutes: number;
  /** When the last hand work must be finished; null when there is none. */
  readonly deadlineS: number | null;
  readonly combustion: boolean;
  readonly sideCost: number;
  readonly reliability: number;
}

export interface PlanTimes {
  readonly nowS: number;
  readonly duskS: number;
  readonly bedtimeS: number;
  readonly sunsetS: number;
  readonly sunriseS: number;
  readonly ventsShutS: number | null;
}

export const NOTHING_ID = 'nothing';
/** Beds are covered a while before dark, while they still hold the day's heat. */
const COVER_BEFORE_DUSK_S = 3600;
const COVER_MINUTES = 3;
const COVER_MINUTES_PER_M2 = 1;
const HEATER_MINUTES = 5;
/** Vents, curtain and fans together, whatever of them there is (project estimate). */
const SMALL_MOVES_MINUTES = 8;
const HEATER_RELIABILITY = 0.95;
/** Light lost and damp under a cover (money; decision rule of this project). */
const COVER_SIDE_COST = 0.5;
/** Thermostat settings that are tried (degrees C): just above freezing for tissue, a margin, tender crops. */
const SETTINGS_C = [0, 2, 5] as const;
/** Up to this many beds every combination of covers is tried; beyond it, beds are covered in the order of what they stand to lose. */
const MOST_BEDS_FOR_ALL_SUBSETS = 2;

/** Time to cover a bed. Units: minutes. Valid: a bed and its area. Outside: not applicable. Source: as given, else decision rule of this project by its area. */
export const coverMinutes = (bed: Greenhouse['beds'][number], areaM2: number): number => bed.coverMinutes ?? COVER_MINUTES + COVER_MINUTES_PER_M2 * areaM2;

/** What covering one bed costs. Units: money. Valid: any. Outside: not applicable. Source: decision rule of this project, w h t/60 + x. */
export const coverEffort = ({ minutes, hourWorth, hassle }: { readonly minutes: number; readonly hourWorth: number; readonly hassle: number }): number => effortOf({ minutes, hassle }, hourWorth) + COVER_SIDE_COST;

/**
 * Work of an evening on which everything is done: every cover laid, curtain, fans and heater set.
 * Units: minutes.
 * Valid: a greenhouse and its own house.
 * Outside: not applicable.
 * Source: decision rule of this project; minutes of each bed as given or by its area.
 */
export function mostMinutes(greenhouse: Greenhouse, house: House): number {
  const covers = greenhouse.beds.reduce((sum, bed, column) => sum + (bed.cover && house.columns[column]!.rowCover ? coverMinutes(bed, house.columns[column]!.areaM2) : 0), 0);
  return covers + (greenhouse.heater ? HEATER_MINUTES : 0) + SMALL_MOVES_MINUTES;
}

/** Sets of beds to cover, none first. `byRisk` are the beds that can be covered, most to lose first. Units: names. Valid: any number of beds. Outside: not applicable. Source: decision rule of this project. */
export function coverSets(byRisk: readonly string[]): readonly (readonly string[])[] {
  if (byRisk.length > MOST_BEDS_FOR_ALL_SUBSETS) return [[], ...byRisk.map((_, i) => byRisk.slice(0, i + 1))];
  return byRisk.reduce<string[][]>((sets, bed) => [...sets, ...sets.map((set) => [...set, bed])], [[]]);
}

/** Beds with a cover that does not lie on them yet. Units: names. Valid: a greenhouse and its own house. Outside: not applicable. Source: definition. */
export const coverableBeds = (greenhouse: Greenhouse, house: House, standing: Controls): readonly string[] =>
  greenhouse.beds.filter((bed, column) => bed.cover && !standing.coverOn[column] && house.columns[column]!.rowCover).map(({ name }) => name);

/** A flame without a flue is never advised: in a closed house its gas kills. Any other flame only after its safety words have been read. */
export function heaterMayBeAdvised(greenhouse: Greenhouse, standing: Controls): boolean {
  const { heater } = greenhouse;
  if (!heater || standing.heaterOn || greenhouse.now.fuelOut) return false;
  if (HEATER_KINDS[heater.kind].needsMains && standing.troubles.powerOut) return false;
  const { combustion } = HEATER_KINDS[heater.kind];
  return combustion === 'none' || (combustion === 'vented' && heater.safetyRead);
}

export type HeaterSetting = { readonly setK: number | null };

/** Settings that are worth trying with the heater that is there; none when it may not be advised. Units: K. Valid: a checked greenhouse. Outside: not applicable. Source: decision rule of this project. */
export function heaterSettings(greenhouse: Greenhouse, house: House, standing: Controls): readonly HeaterSetting[] {
  if (!heaterMayBeAdvised(greenhouse, standing)) return [];
  return house.heater!.thermostat ? SETTINGS_C.map((setC) => ({ setK: celsiusToKelvin(setC) })) : [{ setK: null }];
}

/** What a plan is put together from; the small moves go with every plan but that of doing nothing. */
export interface PlanParts {
  readonly coveredBeds: readonly string[];
  readonly heater: HeaterSetting | null;
  readonly moves: HouseMoves | null;
}

/**
 * One combination of covers, heat and moves, with its work and its deadline.
 * Units: epoch seconds, minutes, money, K.
 * Valid: beds of the house; a heater setting from heaterSettings.
 * Outside: beds that the house does not have are ignored.
 * Source: decision rule of this project.
 */
export function physicalPlan(parts: PlanParts, context: { greenhouse: Greenhouse; house: House; times: PlanTimes }): PhysicalPlan {
  const { coveredBeds, heater, moves } = parts;
  const { greenhouse, house, times } = context;
  const coverFromS = Math.max(times.nowS, Math.min(times.duskS - COVER_BEFORE_DUSK_S, times.sunsetS));
  const handMinutes = greenhouse.beds.reduce((sum, bed, column) => (coveredBeds.includes(bed.name) ? sum + coverMinutes(bed, house.columns[column]!.areaM2) : sum), 0);
  return {
    id: planId(parts),
    coveredBeds,
    heater,
    moves,
    choices: {
      covers: new Map(coveredBeds.map((name) => [name, coverFromS])),
      ventsShutS: times.ventsShutS,
      curtainFromS: moves?.curtainFromS ?? null,
      fans: moves?.fans ?? new Map(),
      heater: heater ? { setK: heater.setK, ...heaterSpan(house, times) } : null,
    },
    minutes: handMinutes + (heater ? HEATER_MINUTES : 0) + (moves?.minutes ?? 0),
    // Whoever asks after bedtime is awake, and a thermostat can still be turned.
    deadlineS: coveredBeds.length > 0 ? Math.min(times.duskS, times.bedtimeS) : (heater || moves) && times.nowS <= times.bedtimeS ? times.bedtimeS : null,
    combustion: heater !== null && HEATER_KINDS[greenhouse.heater!.kind].combustion !== 'none',
    sideCost: coveredBeds.length * COVER_SIDE_COST,
    reliability: heater ? HEATER_RELIABILITY : 1,
  };
}

/** The same covers, heat and moves have the same name, in whatever order they were put together. Units: K. Valid: any. Outside: not applicable. Source: definition. */
export function planId({ coveredBeds, heater, moves }: PlanParts): string {
  const covers = [...coveredBeds].sort().map((name) => `cover ${name}`);
  const heat = heater ? [heater.setK === null ? 'heater full' : `heater ${Math.round(kelvinToCelsius(heater.setK))}`] : [];
  const small = moves && hasMoves(moves) ? [...(moves.curtainFromS === null ? [] : ['curtain']), ...[...moves.fans].map(([place, span]) => `${place} fan ${span ? 'on' : 'off'}`)] : [];
  const all = [...covers, ...heat, ...small];
  return all.length === 0 ? NOTHING_ID : all.join(' + ');
}
