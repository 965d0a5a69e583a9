import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import { toHouse } from '../greenhouse/to-house.js';
import type { ControlPlan } from '../night/controls.js';
import { AS_FORECAST, forcingFor, STEP_S, type WeatherDeparture } from '../night/forcing.js';
import { houseRunner, runHouse, type HouseRunner, type HouseState } from '../night/house-run.js';
import { placesOf, placeTempK, type PlaceKey } from '../night/places.js';
import { startState } from '../night/start-state.js';
import type { GroundOutside, WeatherHours } from '../night/weather.js';
import { cloudWeightAt, FITTED, houseAt, parameterValue, PRIOR_POINT, weatherAt, type Whitened } from './parameters.js';

/** How far each parameter is moved to see what it does, in spreads of its prior: small beside the prior, large beside rounding. */
const NUDGE = 0.7;

/** The prior point, and one point for each fitted parameter moved by itself. */
export const POINTS: readonly Whitened[] = [PRIOR_POINT, ...FITTED.map((_, k) => PRIOR_POINT.map((at, j) => (j === k ? at + NUDGE : at)))];

/** State of the house at one point as plain data, by the name of each node, so that it outlives a node that is added. */
export interface StoredState {
  readonly tempsK: Readonly<Record<string, number>>;
  readonly humidity: readonly number[];
  readonly waterKgPerM2: readonly number[];
}

/** What a stretch of days is run through. */
export interface Stretch {
  readonly greenhouse: Greenhouse;
  readonly weather: WeatherHours;
  readonly controls: ControlPlan;
  readonly fromS: number;
  readonly toS: number;
  readonly departure?: Partial<WeatherDeparture>;
}

/** Temperature of every place at the end of each step, at one point. */
export interface PointSeries {
  readonly places: readonly PlaceKey[];
  readonly startS: number;
  readonly tempK: readonly Float64Array[];
  readonly state: StoredState;
  readonly plantAirTempK: readonly (readonly number[])[];
}

/** The house and weather of a point, built. Units: SI. Valid: any point. Outside: see houseAt. Source: HOUSE_PARAMETERS. */
export function built(greenhouse: Greenhouse, z: Whitened): { house: House; runner: HouseRunner } {
  const house = houseAt(toHouse(greenhouse), z);
  return { house, runner: houseRunner(house) };
}

const nodeNames = ({ model }: HouseRunner): readonly string[] => [...model.network.nodes.map(({ name }) => name), ...model.network.boundaries];

/** State as plain data. Units: SI. Valid: a state of the same house. Outside: not checked. Source: definition. */
export const storedState = (runner: HouseRunner, state: HouseState): StoredState => ({ tempsK: Object.fromEntries(nodeNames(runner).map((name, n) => [name, state.tempsK[n]!])), humidity: [...state.humidity], waterKgPerM2: [...state.waterKgPerM2] });

/** Water comes out of the tap as cold as the ground that its pipe lies in. */
const WATER_COMES_AS = 'deep ground';

/** State from plain data; what was added since begins as warm as the air inside, and water as it comes out of the ground. Units: SI. Valid: a state of this house or of the house before a change. Outside: not checked. Source: definition. */
export function revivedState(runner: HouseRunner, stored: StoredState): HouseState {
  const insideK = stored.tempsK['inside air']!;
  const water = new Set(runner.model.drums);
  const sized = (values: readonly number[], count: number): Float64Array => Float64Array.from({ length: count }, (_, i) => values[i] ?? values[0]!);
  return {
    tempsK: Float64Array.from(nodeNames(runner), (name, n) => stored.tempsK[name] ?? (water.has(n) ? stored.tempsK[WATER_COMES_AS]! : insideK)),
    humidity: sized(stored.humidity, runner.moisture.volumes.length),
    waterKgPerM2: sized(stored.waterKgPerM2, runner.moisture.waterAreasM2.length),
  };
}

/** First state of the house before its past is run. Units: SI. Valid: weather of at least an hour. Outside: not applicable. Source: startState. */
export function firstState(greenhouse: Greenhouse, outside: { weather: WeatherHours; ground: GroundOutside }): StoredState {
  const { house, runner } = built(greenhouse, PRIOR_POINT);
  return storedState(runner, startState(runner, weatherAt(outside.weather, PRIOR_POINT, house.windShare), outside.ground).state);
}

/** A state with its ground moved by what a point says of it. Units: SI. Valid: a state of the same house. Outside: not checked. Source: HOUSE_PARAMETERS for the shift. */
export function groundShifted(greenhouse: Greenhouse, z: Whitened, stored: StoredState): StoredState {
  const { runner } = built(greenhouse, z);
  const state = revivedState(runner, stored);
  const shiftK = parameterValue(z, 'soil-start');
  for (const { surface, deepest } of runner.model.columns) for (let n = surface; n <= deepest; n += 1) state.tempsK[n]! += shiftK;
  state.tempsK[runner.model.deep]! += shiftK;
  return storedState(runner, state);
}

/** Runs one point through a stretch. Units: SI. Valid: weather that covers it. Outside: throws RangeError. Source: runHouse. */
export function runPoint(stretch: Stretch, z: Whitened, from: StoredState): PointSeries {
  const { house, runner } = built(stretch.greenhouse, z);
  const forcing = forcingFor(house, weatherAt(stretch.weather, z, house.windShare), stretch, { ...AS_FORECAST, ...stretch.departure, cloudWeight: cloudWeightAt(z) });
  const places = placesOf(runner).filter(({ place }) => place !== 'leaf');
  const tempK = places.map(() => new Float64Array(forcing.outsideAirTempK.length));
  const plantAirTempK: number[][] = house.columns.map(() => []);
  const state = runHouse(runner, revivedState(runner, from), forcing, stretch.controls, (record) => {
    places.forEach((place, p) => (tempK[p]![record.stepIndex] = placeTempK(runner, record, place)));
    if (record.timeS % 3600 === 0) runner.model.columns.forEach((column, c) => plantAirTempK[c]!.push(record.tempsK[column.underCoverAir >= 0 ? column.underCoverAir : runner.model.air]!));
  });
  return { places, startS: stretch.fromS, tempK, state: storedState(runner, state), plantAirTempK };
}

/** State at any point, from the states at POINTS: linear in what each parameter alone has done. Units: SI. Valid: points within a few spreads. Outside: water never below none. Source: first-order expansion. */
export function stateBetween(states: readonly StoredState[], z: Whitened): StoredState {
  const blend = (of: (state: StoredState) => number): number => FITTED.reduce((sum, _, k) => sum + (z[k]! / NUDGE) * (of(states[k + 1]!) - of(states[0]!)), of(states[0]!));
  return {
    tempsK: Object.fromEntries(Object.keys(states[0]!.tempsK).map((name) => [name, blend((state) => state.tempsK[name]!)])),
    humidity: states[0]!.humidity.map((_, i) => Math.max(1e-5, blend((state) => state.humidity[i]!))),
    waterKgPerM2: states[0]!.waterKgPerM2.map((_, i) => Math.max(0, blend((state) => state.waterKgPerM2[i]!))),
  };
}

/** A value at the prior point and its slope by each whitened parameter, from its values at POINTS. Units: as given. Valid: values in the order of POINTS. Outside: not checked. Source: forward difference. */
export const slopesOf = (values: readonly number[]): { at0: number; slopes: readonly number[] } => ({ at0: values[0]!, slopes: FITTED.map((_, k) => (values[k + 1]! - values[0]!) / NUDGE) });

/** Lowest or latest value of a series between two instants. Units: K. Valid: a span with a step in it. Outside: NaN. Source: definition. */
export function seriesValueK(series: PointSeries, place: number, span: { fromS: number; toS: number; statistic: 'low' | 'now' }): number {
  const index = (timeS: number): number => Math.round((timeS - series.startS) / STEP_S) - 1;
  const all = series.tempK[place]!;
  const last = Math.min(all.length - 1, index(span.toS));
  if (span.statistic === 'now') return all[Math.max(0, last)] ?? NaN;
  const window = all.subarray(Math.max(0, index(span.fromS)), last + 1);
  return window.length === 0 ? NaN : Math.min(...window);
}
