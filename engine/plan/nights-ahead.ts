import type { House } from '../greenhouse/house.js';
import type { ControlPlan, Controls } from '../night/controls.js';
import type { EveningState } from '../night/evening-state.js';
import { forcingFor, forcingsFor, STEP_S } from '../night/forcing.js';
import { runHouse, type HouseState } from '../night/house-run.js';
import { nightSpan, type NightSpan } from '../night/night-span.js';
import { runNight } from '../night/night-run.js';
import { placesOf, placeTempK, type PlaceKey } from '../night/places.js';
import type { ForecastError } from '../learn/forecast-error.js';
import { forecastDoubt, weatherScenarios, type ForecastDoubt } from '../night/scenarios.js';
import type { WeatherHours } from '../night/weather.js';
import { SECONDS_PER_HOUR } from '../units.js';
import type { CropAtStake } from './crops-at-stake.js';
import { planOutlook, type PlanOutlook, type ResidualError } from './outlook.js';

/** How the house is kept from night to night. */
export interface NightlyRoutine {
  readonly standing: Controls;
  /** Beds that are covered each night, and whether the curtain is drawn; both are opened by day. */
  readonly coveredBeds: readonly string[];
  readonly curtain: boolean;
  /** Thermostat setting each night; null leaves the heater as it stands. */
  readonly heaterSetK: number | null;
}

/** What is known of the errors of forecast and house. */
export interface ErrorsAhead {
  readonly residual: ResidualError;
  /** Null before there is anything to learn from. */
  readonly forecast: ForecastError | null;
  readonly cloudWeight: number;
}

export interface NightAhead {
  readonly span: NightSpan;
  readonly doubt: ForecastDoubt;
  readonly outlook: PlanOutlook;
  /** What drums, stones and soil hold at sunset, in the middle weather. */
  readonly storesAtSunset: readonly { readonly key: PlaceKey; readonly tempK: number }[];
}

/** The scenarios of a night begin this long before sunset: what the day before was is known no better than the middle. */
const SCENARIOS_BEFORE_SUNSET_S = 6 * SECONDS_PER_HOUR;
const MORNING_IN_LOWS_S = 2 * SECONDS_PER_HOUR;
const OPENED_AFTER_SUNRISE_S = SECONDS_PER_HOUR;
const STORES: readonly PlaceKey['place'][] = ['soil', 'water', 'stones', 'stone-box'];

/**
 * The nights that the forecast reaches, one after the other: the house is walked through the middle weather under a routine, so that its
 * stores run down as they will, and each night's doubt, which grows with its distance, is laid over it. Nights that are settled are taken as they are.
 * Units: K, epoch seconds.
 * Valid: an evening's state and the same weather; crops harden no further than they are tonight.
 * Outside: nights that the weather does not cover to two hours after sunrise are left out.
 * Source: physics of engine/night; doubt of engine/night/scenarios.
 */
export function nightsAhead(input: { house: House; evening: EveningState; weather: WeatherHours; weatherAgeS: number; crops: readonly CropAtStake[]; routine: NightlyRoutine; errors: ErrorsAhead; settled?: readonly NightAhead[] }): readonly NightAhead[] {
  const { house, evening, weather, routine } = input;
  const nights: NightAhead[] = [];
  const lastS = weather.timeS.at(-1)!;
  const controls = routineControls(house, routine);
  let state = evening.state;
  let atS = evening.atS;
  for (let span = nightSpan(atS, house.place); span.sunriseS + MORNING_IN_LOWS_S <= lastS; span = nightSpan(span.sunriseS + SECONDS_PER_HOUR, house.place)) {
    const fromS = Math.max(atS, atS + Math.floor((span.sunsetS - SCENARIOS_BEFORE_SUNSET_S - atS) / STEP_S) * STEP_S);
    if (fromS > atS) state = runHouse(evening.runner, state, forcingFor(house, weather, { fromS: atS, toS: fromS }), controls);
    atS = fromS;
    const endS = atS + Math.floor((span.sunriseS + MORNING_IN_LOWS_S - atS) / STEP_S) * STEP_S;
    const doubt = forecastDoubt(weather, span, { nowS: evening.atS, weatherAgeS: input.weatherAgeS }, input.errors.forecast);
    nights.push(input.settled?.find((night) => night.span.sunsetS === span.sunsetS) ?? oneNight(input, { span, doubt, fromS: atS, endS, state, controls }));
    state = runHouse(evening.runner, state, forcingFor(house, weather, { fromS: atS, toS: endS }), controls);
    atS = endS;
  }
  return nights;
}

interface NightWalk {
  readonly span: NightSpan;
  readonly doubt: ForecastDoubt;
  readonly fromS: number;
  readonly endS: number;
  readonly state: HouseState;
  readonly controls: ControlPlan;
}

function oneNight(input: Parameters<typeof nightsAhead>[0], walk: NightWalk): NightAhead {
  const { house, evening, weather, routine } = input;
  const { span, doubt, fromS, endS, state, controls } = walk;
  const scenarios = weatherScenarios(doubt, fromS, input.errors.cloudWeight);
  const start: EveningState = { ...evening, state, atS: fromS };
  const runs = forcingsFor(house, weather, { fromS, toS: endS }, scenarios.map(({ departure }) => departure)).map((forcing) => runNight(start, forcing, controls));
  const coveredBeds = house.columns.filter((column, c) => routine.standing.coverOn[c] || routine.coveredBeds.includes(column.name)).map(({ name }) => name);
  const outlook = planOutlook(runs, scenarios, input.crops, { residual: input.errors.residual, nightStartS: Math.max(fromS, span.sunsetS), nightEndS: endS, coveredBeds });
  return { span, doubt, outlook, storesAtSunset: storesAtSunset(start, { weather, house, sunsetS: span.sunsetS, controls }) };
}

function storesAtSunset(start: EveningState, until: { weather: WeatherHours; house: House; sunsetS: number; controls: ControlPlan }): NightAhead['storesAtSunset'] {
  const keys = placesOf(start.runner).filter(({ place }) => STORES.includes(place));
  const toS = start.atS + Math.max(STEP_S, Math.floor((until.sunsetS - start.atS) / STEP_S) * STEP_S);
  let stores: NightAhead['storesAtSunset'] = [];
  runHouse(start.runner, start.state, forcingFor(until.house, until.weather, { fromS: start.atS, toS }), until.controls, (record) => {
    if (record.timeS === toS) stores = keys.map((key) => ({ key, tempK: placeTempK(start.runner, record, key) }));
  });
  return stores;
}

/** Covers, curtain and heat from sunset to an hour after sunrise, every night anew. */
function routineControls(house: House, { standing, coveredBeds, curtain, heaterSetK }: NightlyRoutine): ControlPlan {
  const isNight = nightClock(house);
  const covered = house.columns.map((column, c) => standing.coverOn[c]! || (column.rowCover !== null && coveredBeds.includes(column.name)));
  return (timeS) => {
    if (!isNight(timeS)) return standing;
    return { ...standing, coverOn: covered, curtainDrawn: standing.curtainDrawn || curtain, ventsMayOpen: false, heaterOn: standing.heaterOn || heaterSetK !== null, heaterSetK: heaterSetK ?? standing.heaterSetK };
  };
}

/** Is it dark, or less than an hour after sunrise? The sun is asked once for each stretch of day or night: every run passes through the same. */
function nightClock(house: House): (timeS: number) => boolean {
  const known: { readonly fromS: number; readonly untilS: number; readonly isNight: boolean }[] = [];
  return (timeS) => {
    const stretch = known.find(({ fromS, untilS }) => timeS >= fromS && timeS < untilS);
    if (stretch) return stretch.isNight;
    const { sunsetS, sunriseS } = nightSpan(timeS, house.place);
    known.unshift({ fromS: sunsetS, untilS: sunriseS + OPENED_AFTER_SUNRISE_S, isNight: true });
    if (timeS < sunsetS) known.push({ fromS: timeS, untilS: sunsetS, isNight: false });
    return timeS >= sunsetS;
  };
}
