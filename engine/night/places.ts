import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { layerNearest } from '../ground/soil-column.js';
import type { HouseRunner, StepRecord } from './house-run.js';
import { LEAF_H_IN_HOUSE_W_PER_M2K, LEAF_H_UNDER_COVER_W_PER_M2K, leafTempK } from './leaf.js';

/** A place whose temperature a grower or a crop can ask for. */
export interface PlaceKey {
  readonly place: 'outside' | 'inside' | 'cover' | 'leaf' | 'soil' | 'water';
  /** Bed, or drum group number; absent for places of the whole house. */
  readonly bed?: string;
}

/** Places of a house, in a fixed order. */
export function placesOf({ model }: HouseRunner): readonly PlaceKey[] {
  const beds = model.house.columns.filter((column) => column.kind === 'bed');
  return [
    { place: 'outside' },
    { place: 'inside' },
    ...beds.filter((bed) => bed.rowCover).map((bed): PlaceKey => ({ place: 'cover', bed: bed.name })),
    ...beds.map((bed): PlaceKey => ({ place: 'leaf', bed: bed.name })),
    ...beds.map((bed): PlaceKey => ({ place: 'soil', bed: bed.name })),
    ...model.drums.map((_, d): PlaceKey => ({ place: 'water', bed: String(d + 1) })),
  ];
}

/** Depth at which a grower's soil thermometer or a root sits. */
const ROOT_DEPTH_M = 0.11;
const ROOT_LAYER = layerNearest(ROOT_DEPTH_M);

/**
 * Temperature of one place after a step.
 * Units: K.
 * Valid: places from placesOf of the same house.
 * Outside: throws for a bed that the house does not have.
 * Source: nodes of the network; the leaf by its own balance.
 */
export function placeTempK(runner: HouseRunner, record: StepRecord, key: PlaceKey): number {
  const { model } = runner;
  if (key.place === 'outside') return record.tempsK[model.outside]!;
  if (key.place === 'inside') return record.tempsK[model.air]!;
  if (key.place === 'water') return record.tempsK[model.drums[Number(key.bed) - 1]!]!;
  const column = model.house.columns.findIndex((candidate) => candidate.kind === 'bed' && candidate.name === key.bed);
  if (column < 0) throw new Error(`no bed called ${JSON.stringify(key.bed)}`);
  const index = model.columns[column]!;
  if (key.place === 'soil') return record.tempsK[index.surface + ROOT_LAYER]!;
  const plantAirTempK = record.tempsK[index.underCoverAir >= 0 ? index.underCoverAir : model.air]!;
  if (key.place === 'cover') return plantAirTempK;
  return leafOfColumnK(runner, record, { column, plantAirTempK });
}

function leafOfColumnK({ model, moisture }: HouseRunner, record: StepRecord, leaf: { column: number; plantAirTempK: number }): number {
  const { plane, fromAbove, fromBelow } = record.exchange;
  const irradiance = (shares: Float64Array): number => {
    let sum = 0;
    for (let m = 0; m < plane.count; m += 1) sum += shares[leaf.column * plane.count + m]! * STEFAN_BOLTZMANN_W_PER_M2K4 * record.tempsK[model.planeNodes[m]!]! ** 4;
    return sum;
  };
  const volume = Math.max(0, moisture.columnOfVolume.indexOf(leaf.column));
  return leafTempK({
    airTempK: leaf.plantAirTempK,
    humidityRatio: record.humidity[volume]!,
    pressurePa: record.pressurePa,
    longwaveFromAboveWPerM2: irradiance(fromAbove),
    longwaveFromBelowWPerM2: irradiance(fromBelow),
    hPerSideWPerM2K: record.controls.coverOn[leaf.column] ? LEAF_H_UNDER_COVER_W_PER_M2K : LEAF_H_IN_HOUSE_W_PER_M2K,
  });
}
