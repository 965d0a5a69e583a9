import { STEFAN_BOLTZMANN_W_PER_M2K4 } from '../../../engine/constants.js';
import { heatOfStoreJ, sensibleStore, tempOfStoreK, type HeatStore } from '../../../engine/network/enthalpy.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, type Conductor, type Radiator } from '../../../engine/network/network.js';
import { celsiusToKelvin, kelvinToCelsius, SECONDS_PER_HOUR } from '../../../engine/units.js';
import { waterStore } from '../../../engine/mass/water-drum.js';
import { naturalConvectionWPerM2K, UNSTABLE_W_PER_M2K43 } from '../../../engine/cover/convection.js';
import { soilColumn, SOIL_LAYERS_M } from '../../../engine/ground/soil-column.js';
import { SOILS } from '../../../engine/data/soils.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { odexAt } from './reference-solver.js';

/**
 * odex 2.0.4, an explicit extrapolation code of high order, on the engine's networks: the same bodies and couplings, with heat as the state so
 * that freezing is exact for both. Over a grid of air, mass and loss; with longwave, natural convection and a column of freezing soil. The engine
 * runs at steps of 20 and 10 s, extrapolated, so that networks and stores are compared and not the order of backward Euler (tests/physics has that).
 */
export const source = 'odex';

const NIGHT_S = 14 * SECONDS_PER_HOUR;
const STEP_S = 20;

interface StiffHouse {
  readonly name: string;
  readonly stores: readonly HeatStore[];
  readonly startC: readonly number[];
  readonly conductors: readonly Conductor[];
  readonly radiators?: readonly Radiator[];
  /** Boundaries at an instant. */
  readonly boundariesC: (timeS: number) => readonly number[];
}

const steady = (a: number, b: number, conductanceWPerK: number): Conductor => ({ a, b, conductanceWPerK: () => conductanceWPerK, dependsOnTemps: false });

function engineHourlyK(house: StiffHouse, stepS: number): readonly (readonly number[])[] {
  const size = house.stores.length;
  const network = createNetwork({ nodes: house.stores.map((store, i) => ({ name: `body ${i}`, store })), boundaries: house.boundariesC(0).map((_, i) => `boundary ${i}`), conductors: house.conductors, radiators: house.radiators ?? [] });
  const tempsK = Float64Array.from([...house.startC, ...house.boundariesC(0)], celsiusToKelvin);
  const sources = emptySources(size);
  const hourly: number[][] = [];
  for (let timeS = stepS; timeS <= NIGHT_S; timeS += stepS) {
    house.boundariesC(timeS).forEach((tempC, k) => (tempsK[size + k] = celsiusToKelvin(tempC)));
    stepImplicit({ network, tempsK, stepS, sources, updateSources: () => undefined });
    if (timeS % SECONDS_PER_HOUR === 0) hourly.push([...tempsK.subarray(0, size)]);
  }
  return hourly;
}

function odexHourlyK(house: StiffHouse): readonly (readonly number[])[] {
  const { stores, conductors, radiators = [] } = house;
  const size = stores.length;
  const derivative = (timeS: number, heatJ: readonly number[]): number[] => {
    const tempsK = [...heatJ.map((heat, i) => tempOfStoreK(stores[i]!, heat)), ...house.boundariesC(timeS).map(celsiusToKelvin)];
    const flowW = new Array<number>(size).fill(0);
    const exchange = (a: number, b: number, toAW: number): void => {
      if (a < size) flowW[a]! += toAW;
      if (b < size) flowW[b]! -= toAW;
    };
    for (const { a, b, conductanceWPerK } of conductors) exchange(a, b, conductanceWPerK(tempsK[a]!, tempsK[b]!) * (tempsK[b]! - tempsK[a]!));
    for (const { a, b, exchangeAreaM2 } of radiators) exchange(a, b, exchangeAreaM2 * STEFAN_BOLTZMANN_W_PER_M2K4 * (tempsK[b]! ** 4 - tempsK[a]! ** 4));
    return flowW;
  };
  const startJ = house.startC.map((tempC, i) => heatOfStoreJ(stores[i]!, celsiusToKelvin(tempC)));
  const scale = Math.max(...startJ.map(Math.abs));
  return odexAt(derivative, startJ, { durationS: NIGHT_S, everyS: SECONDS_PER_HOUR, scale }).map((heatJ) => heatJ.map((heat, i) => tempOfStoreK(stores[i]!, heat)));
}

const rowsOf = (house: StiffHouse, hours: readonly number[] = [1, 4, 8, 14]): PublishedRow[] => {
  const theirs = once(() => odexHourlyK(house));
  const ours = once(() => {
    const [whole, half] = [engineHourlyK(house, STEP_S), engineHourlyK(house, STEP_S / 2)];
    return whole.map((temps, h) => temps.map((value, n) => 2 * half[h]![n]! - value));
  });
  return hours.flatMap((hour) => house.stores.map((_, n): PublishedRow => ({ name: `${house.name}, ${hour} h, body ${n}`, get expected() { return kelvinToCelsius(theirs()[hour - 1]![n]!); }, model: () => kelvinToCelsius(ours()[hour - 1]![n]!) })));
};

const falling = (timeS: number): readonly number[] => [4 - (14 * timeS) / NIGHT_S];
const GRID = [5e4, 2e5].flatMap((airJPerK) => [2e6, 2e7].flatMap((massJPerK) => [80, 400].map((lossWPerK) => ({ airJPerK, massJPerK, lossWPerK }))));
const grid = GRID.map(({ airJPerK, massJPerK, lossWPerK }): StiffHouse => ({
  name: `air ${airJPerK}, mass ${massJPerK}, loss ${lossWPerK}`, stores: [sensibleStore(airJPerK), sensibleStore(massJPerK)], startC: [12, 14], conductors: [steady(0, 2, lossWPerK), steady(0, 1, 300)], boundariesC: falling,
}));

/** Film that stores little, air, soil surface and mass under a clear sky: longwave both ways, convection that depends on the difference. */
const FILM_J_PER_K = 2e4;
const nonlinear: StiffHouse = {
  name: 'film, air, ground',
  stores: [sensibleStore(FILM_J_PER_K), sensibleStore(8e4), sensibleStore(4e6)],
  startC: [2, 6, 9],
  conductors: [
    { a: 0, b: 1, conductanceWPerK: (filmK, airK) => 70 * naturalConvectionWPerM2K(airK - filmK, UNSTABLE_W_PER_M2K43), dependsOnTemps: true },
    { a: 2, b: 1, conductanceWPerK: (groundK, airK) => 32 * naturalConvectionWPerM2K(groundK - airK, UNSTABLE_W_PER_M2K43), dependsOnTemps: true },
    steady(0, 3, 600),
  ],
  radiators: [{ a: 0, b: 2, exchangeAreaM2: 12 }, { a: 0, b: 4, exchangeAreaM2: 20 }, { a: 2, b: 4, exchangeAreaM2: 15 }],
  boundariesC: (timeS) => [...falling(timeS), falling(timeS)[0]! - 20],
};

const column = soilColumn(SOILS.loam.moist, { areaM2: 1, firstNode: 0, deepBoundary: SOIL_LAYERS_M.length, name: 'soil' });
const soil: StiffHouse = {
  name: 'freezing soil',
  stores: column.nodes.map(({ store }) => store),
  startC: SOIL_LAYERS_M.map((_, layer) => 1.5 + 0.5 * layer),
  conductors: [...column.conductors, steady(0, SOIL_LAYERS_M.length + 1, 8)],
  boundariesC: (timeS) => [6, 2 - (16 * timeS) / NIGHT_S],
};
const drum: StiffHouse = { name: 'freezing drum', stores: [sensibleStore(8e4), waterStore(60)], startC: [3, 1], conductors: [steady(0, 2, 60), steady(0, 1, 30)], boundariesC: () => [-12] };

export const tables: readonly PublishedTable[] = [
  { source, title: 'air over a mass, eight houses', unit: '°C', tolerance: 1e-4, toleranceReason: 'what is left of steps of 20 and 10 s, extrapolated', origin: 'library run', rows: grid.flatMap((house) => rowsOf(house)) },
  { source, title: 'longwave and natural convection under a clear sky', unit: '°C', tolerance: 1e-3, toleranceReason: 'the same; the film follows within half a minute', origin: 'library run', rows: rowsOf(nonlinear) },
  { source, title: 'soil and water that freeze', unit: '°C', tolerance: 1e-3, toleranceReason: 'the same; extrapolation loses its order for a moment where a body begins to freeze', origin: 'library run', rows: [...rowsOf(soil), ...rowsOf(drum)] },
];
