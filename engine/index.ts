/**
 * The table of contents of the engine: all that the bot may use. Read it top to bottom as the story of one night.
 */

// Units and errors
export * from './units.js';
export { OutOfRangeError } from './errors.js';

// Weather outside, as the engine reads it
export type { GroundOutside, WeatherHours } from './night/weather.js';
export { MEMBER_CLOUD_HOURS, memberSpread, type EnsembleMember, type MemberSpread } from './night/member-spread.js';

// Moist air
export {
  dewPointOverWaterK,
  frostPointK,
  saturationVapourPressureOverWaterPa,
  vapourPressureFromDewPointOverWaterPa,
} from './air/saturation-magnus.js';
export { humidityRatioKgPerKg, standardPressurePa } from './air/moist-air.js';
export { wetBulbK } from './air/wet-bulb.js';

// Sun: rise, set and what comes through
export { sunPosition } from './sun/position.js';
export { nextCivilDuskS, nextSunriseS, nextSunsetS } from './sun/rise-and-set.js';
export { diffuseFractionErbs1982 } from './sun/diffuse-fraction-erbs.js';

// The greenhouse as the grower describes it
export { checkGreenhouse, type GreenhouseCheck } from './greenhouse/check.js';
export type { GreenhouseFault } from './greenhouse/fault.js';
export { greenhouseJsonSchema, MOST_TRIPS, type Greenhouse, type GreenhouseFile } from './greenhouse/greenhouse.js';
export { toHouse } from './greenhouse/to-house.js';
export type { House } from './greenhouse/house.js';
export { HEATER_KINDS, type HeaterKind, type HeaterKindRow } from './data/heater-kinds.js';

// Crops
export { cropById, cropFamilies, cropFamilyOf, cropRows, findCrop, type CropMatch, type CropRow } from './crops/catalogue.js';
export { thresholdShiftsK, type PlantsSeen, type PlantState } from './crops/learned-thresholds.js';

// One night: the past, the weather that may come, the run
export { FAN_PLACES, NO_FANS, type Controls, type ControlPlan, type FanPlace } from './night/controls.js';
export { eveningState, type EveningState } from './night/evening-state.js';
export { forcingFor, STEP_S } from './night/forcing.js';
export { houseRunner, runHouse, type HouseRunner, type StepRecord } from './night/house-run.js';
export { startState, type GroundBasis } from './night/start-state.js';
export { nightBehind, nightSpan, type NightSpan } from './night/night-span.js';
export { placesOf, placeTempK, type PlaceKey } from './night/places.js';
export { createEnergyAudit } from './night/energy-audit.js';

// The decision
export { PROTECTING_ACTIONS, type PlannedAction } from './plan/action.js';
export { mostMinutes } from './plan/candidates.js';
export { standingControls, usualControls } from './plan/controls-of-choices.js';
export type { MorningAction } from './plan/morning.js';
export type { CropOutlook, PlaceOutlook, Verdict } from './plan/outlook.js';
export type { NightChoices } from './plan/action.js';
export type { DoneTonight, EveningInput } from './plan/evening-scene.js';
export { bedStakes, type BedStake } from './plan/bed-stakes.js';
export { carefulBy, nextCareWord, toleranceOf, tripsHeld, type CareWord, type ToleranceNights, type TripsHeld } from './plan/tolerance.js';
export { planEvening, type EveningPlan } from './plan/plan-evening.js';
export { supposeNight, type PlaceChange, type SupposedNight } from './plan/suppose-night.js';
export type { PricedPlan } from './plan/price-plans.js';
export { nightBand, type NightBand } from './plan/night-band.js';
export type { NightHeat } from './plan/night-heat.js';
export { weekAhead, type WeekAhead, type WeekInput } from './plan/week-ahead.js';
export { isThreatened, type ColdSpell, type Preparation } from './plan/cold-spell.js';
export type { NightAhead } from './plan/nights-ahead.js';

// Learning this house, and saying a night with what was learned
export { learnHouse, LEARNED_VERSION, nightsLearnedFrom, type AcceptedReading, type LearnedHouse, type LearningHistory, type MarkedChange } from './learn/learned-house.js';
export { predictNight, type PlaceLow } from './learn/predict-night.js';
export { HOUSE_PARAMETERS, type HouseParameter } from './learn/parameters.js';
export { cellNight, forecastMiss, type CellNight, type ForecastMiss } from './learn/forecast-error.js';
export { judgeReading, NEW_THERMOMETER, type GateReason, type GateVerdict, type ThermometerPast } from './learn/reading-gate.js';
export { typedTempK, type DegreeUnit, type ExpectedTemp, type Explanation, type ExplanationKind, type TypedReading } from './learn/reading-gate-explanations.js';
export { mixtureMeanK, mixtureQuantileK, type Mixture } from './chance/mixture.js';
export { binomialCdf } from './score/coverage.js';

// How right the advisories were
export { rangeRecord, type RangeRecord, type SaidAndRead } from './score/record.js';
export { reliabilityTable, type SpokenChance, type WordReliability } from './score/reliability.js';
