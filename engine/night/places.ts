import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../constants.js';
import { layerNearest } from '../ground/soil-column.js';
import type { HouseModel } from './house-model.js';
import type { HouseRunner, StepRecord } from './house-run.js';
import { leafHeatTransferWPerM2K, leafTempK } from './leaf.js';

/** A place whose temperature a grower or a crop can ask for. */
export interface PlaceKey {
  readonly place: 'outside' | 'inside' | 'cover' | 'leaf' | 'soil' | 'water' | 'stones' | 'stone-box' | 'tube' | 'compost';
  /** Bed, or number of the group of drums or stones; absent for places of the whole house. */
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
    ...model.stones.map((_, s): PlaceKey => ({ place: 'stones', bed: String(s + 1) })),
    ...(model.stoneBox ? [{ place: 'stone-box' } as const] : []),
    ...(model.tubes ? [{ place: 'tube' } as const] : []),
    ...(model.heap === null ? [] : [{ place: 'compost' } as const]),
  ];
}

/** Depth at which a grower's soil thermometer or a root sits. */
const ROOT_DEPTH_M = 0.11;
const ROOT_LAYER = layerNearest(ROOT_DEPTH_M);

/**
 * Temperature of one place after a step. Stones are read at their surface; the tube is the soil at its wall, which the air leaves it near to.
 * Units: K.
 * Valid: places from placesOf of the same house.
 * Outside: throws for a bed or group that the house does not have.
 * Source: nodes of the network; the leaf by its own balance.
 */
export function placeTempK(runner: HouseRunner, record: StepRecord, key: PlaceKey): number {
  const { model } = runner;
  const node = nodeOf(runner, key);
  if (node !== null) return record.tempsK[node]!;
  const column = model.house.columns.findIndex((candidate) => candidate.kind === 'bed' && candidate.name === key.bed);
  if (column < 0) throw new Error(`no bed called ${JSON.stringify(key.bed)}`);
  const index = model.columns[column]!;
  if (key.place === 'soil') return record.tempsK[index.surface + ROOT_LAYER]!;
  const plantAirTempK = record.tempsK[index.underCoverAir >= 0 ? index.underCoverAir : model.air]!;
  return key.place === 'cover' ? plantAirTempK : leafOfColumnK(runner, record, { column, plantAirTempK });
}

/** The node of a place that is one body; null for places of a bed. */
function nodeOf({ model }: HouseRunner, { place, bed }: PlaceKey): number | null {
  const node = bodyNode(model, place, Number(bed) - 1);
  if (node === undefined) throw new Error(`the house has no ${place} ${bed ?? ''}`.trimEnd());
  return node;
}

function bodyNode(model: HouseModel, place: PlaceKey['place'], group: number): number | null | undefined {
  switch (place) {
    case 'outside':
      return model.outside;
    case 'inside':
      return model.air;
    case 'water':
      return model.drums[group];
    case 'stones':
      return model.stones[group]?.skin;
    case 'stone-box':
      return model.stoneBox?.skin;
    case 'tube':
      return model.tubes?.rings[0];
    case 'compost':
      return model.heap ?? undefined;
    default:
      return null;
  }
}

function leafOfColumnK({ model, moisture }: HouseRunner, record: StepRecord, leaf: { column: number; plantAirTempK: number }): number {
  const { exchange } = record;
  return leafTempK({
    airTempK: leaf.plantAirTempK,
    humidityRatio: record.humidity[moisture.volumeOfColumn[leaf.column]!]!,
    pressurePa: record.pressurePa,
    longwaveFromAboveWPerM2: irradianceWPerM2(model, record, { shares: exchange.fromAbove, column: leaf.column }),
    longwaveFromBelowWPerM2: irradianceWPerM2(model, record, { shares: exchange.fromBelow, column: leaf.column }),
    hPerSideWPerM2K: leafHeatTransferWPerM2K({ underCover: record.controls.coverOn[leaf.column]!, airSpeedMPerS: record.airSpeedMPerS }),
  });
}

function irradianceWPerM2({ planeNodes }: HouseModel, { exchange, tempsK }: StepRecord, onto: { shares: Float64Array; column: number }): number {
  const { count } = exchange.plane;
  let sum = 0;
  for (let m = 0; m < count; m += 1) sum += onto.shares[onto.column * count + m]! * STEFAN_BOLTZMANN_W_PER_M2K4 * tempsK[planeNodes[m]!]! ** 4;
  return sum;
}
