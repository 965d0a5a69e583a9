import { plateForcedWPerM2K, stirredSpeedMPerS } from '../airflow/stirred-air.js';
import { DRY_AIR_HEAT_CAPACITY_J_PER_KGK } from '../constants.js';
import type { Fan, House } from '../greenhouse/house.js';
import { earthTubeEffectiveness } from '../ground/earth-tube.js';
import { HEAP_PIPE_EFFECTIVENESS } from '../heat/compost-heap.js';
import { packedBedEffectiveness } from '../mass/packed-bed.js';
import { FAN_PLACES, NO_TROUBLES, type Controls, type FanPlace, type Troubles } from './controls.js';

const TYPICAL_AIR_DENSITY_KG_PER_M3 = 1.27;
/** Surfaces of a house that stirred air sweeps along (project estimate). */
const SWEPT_LENGTH_M = 1;
/** Full sun of a panel's rating; its fan turns with the cube root of its power. Fan laws: flow with the speed, power with its cube. */
const RATED_SUN_W_PER_M2 = 1000;
/** Without a battery a fan stalls in less light (from memory: 100 to 150 W/m2). */
const STALLS_BELOW_W_PER_M2 = 125;

/** What is the same for one step: weather at the cover, air density, what the grower has shut, covered or lit, which fans turn. */
export interface Conditions {
  windAtCoverMPerS: number;
  airDensityKgPerM3: number;
  ventsMayOpen: boolean;
  coverOn: boolean[];
  curtainDrawn: boolean;
  heaterOn: boolean;
  heaterSetK: number | null;
  troubles: Troubles;
  /** Heat that a fan's air carries for each K between the air and what it is blown through; 0 while it stands still. */
  fanWPerK: Record<FanPlace, number>;
  /** Warmth of all motors. */
  fanMotorsW: number;
  /** Speed of stirred air, and its forced convection on the surfaces of the house. */
  airSpeedMPerS: number;
  stirredWPerM2K: number;
}

export const freshConditions = (house: House): Conditions => ({
  windAtCoverMPerS: 0,
  airDensityKgPerM3: TYPICAL_AIR_DENSITY_KG_PER_M3,
  ventsMayOpen: true,
  coverOn: house.columns.map(() => false),
  curtainDrawn: false,
  heaterOn: false,
  heaterSetK: null,
  troubles: NO_TROUBLES,
  fanWPerK: { tubes: 0, 'stone-box': 0, heap: 0, air: 0 },
  fanMotorsW: 0,
  airSpeedMPerS: 0,
  stirredWPerM2K: 0,
});

/** The fan at a place; null when the house has none there. Units: none. Valid: any house. Outside: not applicable. Source: definition. */
export function fanAt(house: House, place: FanPlace): Fan | null {
  switch (place) {
    case 'tubes':
      return house.tubes?.fan ?? null;
    case 'stone-box':
      return house.stoneBox?.fan ?? null;
    case 'heap':
      return house.heap?.fan ?? null;
    case 'air':
      return house.stirringFan;
  }
}

/**
 * Share of its airflow that a fan moves now.
 * Units: W/m2 of sunlight outside in; 0-1 out.
 * Valid: any light.
 * Outside: never above 1.
 * Source: fan laws Q with P^(1/3) for a matched panel; stall as named above (from memory).
 */
export function fanShare(fan: Fan, state: { on: boolean; sunWPerM2: number; troubles: Troubles }): number {
  if (!state.on || state.troubles.fansDead || (fan.supply === 'mains' && state.troubles.powerOut)) return 0;
  if (fan.supply !== 'sun') return 1;
  return state.sunWPerM2 < STALLS_BELOW_W_PER_M2 ? 0 : Math.min(1, Math.cbrt(state.sunWPerM2 / RATED_SUN_W_PER_M2));
}

/** Sets what holds for a step. Units: SI. Valid: controls of the same house. Outside: not checked. Source: definition; fans by fanShare. */
export function setConditions(conditions: Conditions, house: House, step: { controls: Controls; windAtCoverMPerS: number; airDensityKgPerM3: number; sunWPerM2: number }): void {
  const { controls } = step;
  conditions.windAtCoverMPerS = step.windAtCoverMPerS;
  conditions.airDensityKgPerM3 = step.airDensityKgPerM3;
  conditions.ventsMayOpen = controls.ventsMayOpen;
  conditions.coverOn = [...controls.coverOn];
  conditions.curtainDrawn = house.curtain !== null && controls.curtainDrawn;
  conditions.heaterOn = controls.heaterOn;
  conditions.heaterSetK = controls.heaterSetK;
  conditions.troubles = controls.troubles;
  conditions.fanMotorsW = 0;
  conditions.airSpeedMPerS = 0;
  for (const place of FAN_PLACES) {
    const fan = fanAt(house, place);
    const share = fan ? fanShare(fan, { on: controls.fansOn[place], sunWPerM2: step.sunWPerM2, troubles: controls.troubles }) : 0;
    conditions.fanWPerK[place] = 0;
    if (!fan || share === 0) continue;
    conditions.fanMotorsW += fan.powerW * share ** 3;
    const airflowM3PerS = share * fan.airflowM3PerS;
    if (place === 'air') conditions.airSpeedMPerS = stirredSpeedMPerS(airflowM3PerS, house.geometry.floorAreaM2);
    else conditions.fanWPerK[place] = airflowM3PerS * step.airDensityKgPerM3 * DRY_AIR_HEAT_CAPACITY_J_PER_KGK * effectivenessAt(house, place, airflowM3PerS, step.airDensityKgPerM3);
  }
  conditions.stirredWPerM2K = plateForcedWPerM2K(conditions.airSpeedMPerS, SWEPT_LENGTH_M);
}

function effectivenessAt(house: House, place: Exclude<FanPlace, 'air'>, airflowM3PerS: number, airDensityKgPerM3: number): number {
  if (place === 'heap') return HEAP_PIPE_EFFECTIVENESS;
  if (place === 'stone-box') return packedBedEffectiveness({ massFlowKgPerS: airflowM3PerS * airDensityKgPerM3, volumeM3: house.stoneBox!.volumeM3, sectionM2: house.stoneBox!.glazedM2, stoneSizeM: house.stoneBox!.stoneSizeM });
  const { count, diameterM, lengthM, soil } = house.tubes!;
  return earthTubeEffectiveness({ airflowM3PerS: airflowM3PerS / count, diameterM, lengthM, soilConductivityWPerMK: soil.thermalConductivityWPerMK, airDensityKgPerM3 });
}
