import { HEATER_KINDS } from '../data/heater-kinds.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import type { Controls } from '../night/controls.js';
import { celsiusToKelvin } from '../units.js';
import type { NightChoices } from './action.js';

/** A combination of covers and heat to run through the night; harvest is added later, it changes no temperature. */
export interface PhysicalPlan {
  readonly id: string;
  readonly coveredBeds: readonly string[];
  readonly heater: { readonly setK: number | null } | null;
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
const HEATER_RELIABILITY = 0.95;
/** Light lost and damp under a cover (money; decision rule of this project). */
const COVER_SIDE_COST = 0.5;
const MORNING_AFTER_SUNRISE_S = 3600;
/** Thermostat settings that are tried (degrees C): just above freezing for tissue, a margin, tender crops. */
const SETTINGS_C = [0, 2, 5] as const;
/** With more beds than this only none, each alone and all are tried. */
const MOST_BEDS_FOR_ALL_SUBSETS = 4;

const coverMinutes = (bed: Greenhouse['beds'][number], areaM2: number): number => bed.coverMinutes ?? COVER_MINUTES + COVER_MINUTES_PER_M2 * areaM2;

function subsets<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length > MOST_BEDS_FOR_ALL_SUBSETS) return [[], ...items.map((item) => [item]), items];
  return items.reduce<T[][]>((sets, item) => [...sets, ...sets.map((set) => [...set, item])], [[]]);
}

/** A flame is never advised before its safety words have been read. */
export function heaterMayBeAdvised(greenhouse: Greenhouse): boolean {
  const { heater } = greenhouse;
  if (!heater || heater.on) return false;
  return HEATER_KINDS[heater.kind].combustion === 'none' || heater.safetyRead;
}

/**
 * All combinations of covers and heat that the grower owns and that are not in use yet.
 * Units: epoch seconds, minutes, money.
 * Valid: a checked greenhouse and its house.
 * Outside: not applicable.
 * Source: decision rule of this project.
 */
export function physicalPlans(greenhouse: Greenhouse, house: House, standing: Controls, times: PlanTimes): readonly PhysicalPlan[] {
  const coverable = greenhouse.beds.map((bed, column) => ({ bed, column })).filter(({ bed, column }) => bed.cover && !standing.coverOn[column] && house.columns[column]!.rowCover);
  const settings: ({ setK: number | null } | null)[] = heaterMayBeAdvised(greenhouse) ? [null, ...(greenhouse.heater!.thermostat ? SETTINGS_C.map((setC) => ({ setK: celsiusToKelvin(setC) })) : [{ setK: null }])] : [null];
  const coverFromS = Math.max(times.nowS, Math.min(times.duskS - COVER_BEFORE_DUSK_S, times.sunsetS));
  const heaterFromS = Math.max(times.nowS, times.sunsetS);
  return subsets(coverable).flatMap((covered) =>
    settings.map((heater): PhysicalPlan => {
      const names = covered.map(({ bed }) => bed.name);
      const handMinutes = covered.reduce((sum, { bed, column }) => sum + coverMinutes(bed, house.columns[column]!.areaM2), 0);
      const parts = [...names.map((name) => `cover ${name}`), ...(heater ? [heater.setK === null ? 'heater full' : `heater ${Math.round(heater.setK - celsiusToKelvin(0))}`] : [])];
      return {
        id: parts.length === 0 ? NOTHING_ID : parts.join(' + '),
        coveredBeds: names,
        heater,
        choices: {
          covers: new Map(names.map((name) => [name, coverFromS])),
          ventsShutS: times.ventsShutS,
          heater: heater ? { setK: heater.setK, fromS: heaterFromS, untilS: times.sunriseS + MORNING_AFTER_SUNRISE_S } : null,
        },
        minutes: handMinutes + (heater ? HEATER_MINUTES : 0),
        deadlineS: names.length > 0 ? Math.min(times.duskS, times.bedtimeS) : heater ? times.bedtimeS : null,
        combustion: heater !== null && HEATER_KINDS[greenhouse.heater!.kind].combustion !== 'none',
        sideCost: names.length * COVER_SIDE_COST,
        reliability: heater ? HEATER_RELIABILITY : 1,
      };
    }),
  );
}
