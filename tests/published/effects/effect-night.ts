import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import type { House } from '../../../engine/greenhouse/house.js';
import type { Controls } from '../../../engine/night/controls.js';
import { forcingFor, type Forcing } from '../../../engine/night/forcing.js';
import type { HouseModel } from '../../../engine/night/house-model.js';
import { houseRunner, runHouse } from '../../../engine/night/house-run.js';
import { placesOf, placeTempK, type PlaceKey } from '../../../engine/night/places.js';
import { startState } from '../../../engine/night/start-state.js';
import { SECONDS_PER_HOUR } from '../../../engine/units.js';
import { CLEAR_COLD_NIGHT, GROUND, hourOfLastNightS, INSIDE, inventedWeather, plainControls, referenceHouse, SUNSET_OF_LAST_NIGHT, type InventedWeather } from '../../fixtures/houses.js';
import { once } from '../rc-network.js';
import { fluxesOf, meanFluxes, type DawnFluxes } from './dawn-fluxes.js';

/** Hour before the low of the outside air: the fluxes of a dawn are its mean. */
const DAWN_HOURS = [5, 6] as const;
const EVENING_HOUR = -8;

/** What is otherwise than in the reference house on the reference night. */
export interface EffectChange {
  readonly file?: Partial<GreenhouseFile>;
  readonly house?: (house: House) => House;
  readonly weather?: Partial<InventedWeather>;
  readonly forcing?: (forcing: Forcing, house: House) => Forcing;
  readonly model?: (model: HouseModel) => HouseModel;
  /** Deep ground warmer by so much. */
  readonly deepWarmerK?: number;
  /** From the evening of the last night on. */
  readonly atNight?: (house: House) => Partial<Controls>;
  readonly byDay?: (house: House) => Partial<Controls>;
}

export interface EffectNight {
  readonly insideK: number;
  readonly lowK: (place: PlaceKey) => number;
  readonly fluxes: DawnFluxes;
}

/** Sunlit hours by the sun of the reference place, around noon. */
const isAroundNoon = (timeS: number): boolean => {
  const hour = (((timeS - hourOfLastNightS(CLEAR_COLD_NIGHT, 0)) / SECONDS_PER_HOUR) % 24 + 24) % 24;
  return hour > 10 && hour < 15;
};

function run(change: EffectChange): EffectNight {
  const asFiled = referenceHouse(change.file ?? {});
  const house = change.house ? change.house(asFiled) : asFiled;
  const invented = { ...CLEAR_COLD_NIGHT, ...change.weather };
  const built = houseRunner(house);
  const runner = change.model ? { ...built, model: change.model(built.model) } : built;
  const weather = inventedWeather(house, invented);
  const asForecast = forcingFor(house, weather, { fromS: weather.timeS[0]!, toS: weather.timeS.at(-1)! });
  const { state } = startState(runner, weather, GROUND);
  state.tempsK[runner.model.deep]! += change.deepWarmerK ?? 0;
  const at = (hour: number): number => hourOfLastNightS(invented, hour);
  const controls = plainControls(house, invented, (timeS) => ({ ...(isAroundNoon(timeS) ? change.byDay?.(house) : {}), ...(timeS > at(EVENING_HOUR) ? change.atNight?.(house) : {}) }));
  const lows = new Map<string, number>();
  const dawn: DawnFluxes[] = [];
  const nameOf = ({ place, bed }: PlaceKey): string => `${place} ${bed ?? ''}`;
  const places = placesOf(runner);
  runHouse(runner, state, change.forcing ? change.forcing(asForecast, house) : asForecast, controls, (record) => {
    if (record.timeS > at(DAWN_HOURS[0]) && record.timeS <= at(DAWN_HOURS[1])) dawn.push(fluxesOf(runner, record));
    if (record.timeS <= at(SUNSET_OF_LAST_NIGHT)) return;
    for (const key of places) lows.set(nameOf(key), Math.min(lows.get(nameOf(key)) ?? Infinity, placeTempK(runner, record, key)));
  });
  const lowK = (place: PlaceKey): number => lows.get(nameOf(place))!;
  return { insideK: lowK(INSIDE), lowK, fluxes: meanFluxes(dawn) };
}

/** A changed night, run when it is first asked for. */
export const effectNight = (change: EffectChange): (() => EffectNight) => once(() => run(change));
