import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import type { ControlPlan, Controls, FanPlace } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import type { LearnedHouse } from '../learn/learned-house.js';
import { forcingsFor, STEP_S, type Forcing } from '../night/forcing.js';
import { nightSpan, type NightSpan } from '../night/night-span.js';
import type { ForecastDoubt, WeatherScenario } from '../night/scenarios.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { SECONDS_PER_HOUR } from '../units.js';
import { standingControls } from './controls-of-choices.js';
import { cropsAtStake, type CropAtStake } from './crops-at-stake.js';
import { eveningBeginning } from './evening-beginning.js';
import type { ResidualError } from './outlook.js';
import type { ToleranceNights } from './tolerance.js';

export interface EveningInput {
  readonly greenhouse: Greenhouse;
  readonly weather: WeatherHours;
  readonly ground: GroundOutside;
  readonly nowS: number;
  /** When the grower goes to bed on the evening of this night. */
  readonly bedtimeS: number;
  readonly weatherAgeS: number;
  /** What was covered, shut and lit in the past fortnight; as the file says when nothing else is known. */
  readonly pastControls?: ControlPlan;
  /** The plan that was sent for this night before: it is kept unless a change is worth a second message. */
  readonly issuedPlanId?: string;
  /** What the grower said of tonight: it overrides how things stand in the file. What was not said is not in it. */
  readonly doneTonight?: DoneTonight;
  /** What this house's readings have taught; the priors hold without it. */
  readonly learned?: LearnedHouse;
  /** By how much the temperatures that harm a row of the crop table lie warmer for this grower's plants. */
  readonly cropShiftsK?: ReadonlyMap<string, number>;
  /** Nights since the grower last said how careful to be that speak of it. */
  readonly toleranceNights?: ToleranceNights;
}

/** The grower's own word on tonight. */
export interface DoneTonight {
  /** Bed -> whether its cover lies on it. */
  readonly covers: ReadonlyMap<string, boolean>;
  /** Absent: nothing said. */
  readonly heater?: { readonly on: boolean; readonly setK: number | null };
  readonly ventsShut?: boolean;
  readonly curtainDrawn?: boolean;
  readonly fansOn?: Partial<Record<FanPlace, boolean>>;
}

const MORNING_HOURS = 6;
const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;

/** What a night stands on before anything is decided: how the house is now, and the weathers that may come. */
export interface EveningScene {
  readonly house: House;
  readonly standing: Controls;
  readonly evening: EveningState;
  readonly night: NightSpan;
  readonly doubt: ForecastDoubt;
  readonly scenarios: readonly WeatherScenario[];
  /** Error that no scenario carries. */
  readonly residual: ResidualError;
  /** One for each scenario, in their order. */
  readonly forcings: readonly Forcing[];
  readonly crops: readonly CropAtStake[];
  readonly nightStartS: number;
  readonly nightEndS: number;
}

/**
 * Warm-up through the past, how things stand, and the weathers that may come.
 * Units: SI inside.
 * Valid: weather from before now to at least the coming sunrise.
 * Outside: throws RangeError when the weather does not reach.
 * Source: physics of engine/night.
 */
export function eveningScene(input: EveningInput): EveningScene {
  const { greenhouse, nowS } = input;
  const night = nightSpan(nowS, greenhouse.place);
  const { house, evening, weather, doubt, scenarios, residual } = eveningBeginning(input, night);
  const standing = standingWithDone(standingControls(greenhouse, house), house, input.doneTonight);
  const lastS = weather.timeS.at(-1)!;
  const nightEndS = Math.min(night.sunriseS + MORNING_IN_LOWS_S, lastS);
  const endS = Math.min(night.sunriseS + MORNING_HOURS * SECONDS_PER_HOUR, lastS);
  if (endS < night.sunriseS - 2 * SECONDS_PER_HOUR) throw new RangeError(`the weather ends at ${lastS}, before the coming sunrise at ${night.sunriseS} (epoch s)`);
  const span = { fromS: evening.atS, toS: evening.atS + Math.floor((endS - evening.atS) / STEP_S) * STEP_S };
  const forcings = forcingsFor(house, weather, span, scenarios.map(({ departure }) => departure));
  const crops = cropsAtStake(greenhouse, evening, input.cropShiftsK);
  return { house, standing, evening, night, doubt, scenarios, residual, forcings, crops, nightStartS: Math.max(nowS, night.sunsetS), nightEndS };
}

function standingWithDone(standing: Controls, house: House, done: EveningInput['doneTonight']): Controls {
  if (!done) return standing;
  return {
    ...standing,
    coverOn: standing.coverOn.map((on, c) => (house.columns[c]!.rowCover === null ? on : (done.covers.get(house.columns[c]!.name) ?? on))),
    ventsMayOpen: standing.ventsMayOpen && done.ventsShut !== true,
    heaterOn: done.heater?.on ?? standing.heaterOn,
    heaterSetK: done.heater ? done.heater.setK : standing.heaterSetK,
    curtainDrawn: done.curtainDrawn ?? standing.curtainDrawn,
    fansOn: { ...standing.fansOn, ...done.fansOn },
  };
}
