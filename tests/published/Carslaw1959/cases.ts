import { FUSION_HEAT_J_PER_KG, WATER_DENSITY_KG_PER_M3 } from '../../../engine/constants.js';
import { celsiusToKelvin, kelvinToCelsius, SECONDS_PER_HOUR, ZERO_CELSIUS_K } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { runSoil, SOIL_STEP_S, type SoilProfile, type SoilRun } from './soil-run.js';

/**
 * Carslaw and Jaeger 1959, semi-infinite solid (Incropera and DeWitt ch. 5), evaluated apart from this code; run with the soil column of
 * the house (seven layers, 1 to 50 cm, steps of 600 s). Properties of the soils: Moene and van Dam 2014 table 2.2.
 */
export const source = 'Carslaw1959';

const HOUR_S = SECONDS_PER_HOUR;
const START_K = celsiusToKelvin(10);
const FIVE_PERCENT = 'acceptance of the soil grid at steps of 600 s: 5 %';

const after = (run: SoilRun, hours: number): (() => SoilProfile) => once(() => runSoil(run, hours * HOUR_S));
const drop = (profile: SoilProfile, depthM: number): number => START_K - profile.atDepthK(depthM);

const surfaceDrop = (name: string, soil: readonly [conductivity: number, capacity: number], expected: number): PublishedRow => {
  const profile = after({ conductivityWPerMK: soil[0], heatCapacityJPerM3K: soil[1], startK: START_K, surface: { kind: 'flux', outOfSoilWPerM2: 30 } }, 14);
  return { name, expected, model: () => drop(profile(), 0) };
};

const fluxProfile = after({ conductivityWPerMK: 1.4, heatCapacityJPerM3K: 3.1e6, startK: START_K, surface: { kind: 'flux', outOfSoilWPerM2: 40 } }, 12);
const CLAY_MOIST = { conductivityWPerMK: 0.9, heatCapacityJPerM3K: 2.27e6 } as const;
const CLAY_WET = { conductivityWPerMK: 1.4, heatCapacityJPerM3K: 3.1e6 } as const;
const stepProfile = after({ ...CLAY_MOIST, startK: celsiusToKelvin(5), surface: { kind: 'held', tempK: () => celsiusToKelvin(-5) } }, 12);

const convective = (hWPerM2K: number, hours: number, expected: number, tolerance: number): PublishedRow => {
  const profile = after({ ...CLAY_MOIST, startK: celsiusToKelvin(8), surface: { kind: 'convective', hWPerM2K, fluidTempK: celsiusToKelvin(-2) } }, hours);
  return { name: `h ${hWPerM2K}, ${hours} h`, expected, tolerance, model: () => kelvinToCelsius(profile().atDepthK(0)) };
};

const stepFlux = (name: string, soil: typeof CLAY_MOIST | typeof CLAY_WET, hours: number, expected: number): PublishedRow => {
  const profile = after({ ...soil, startK: START_K, surface: { kind: 'held', tempK: () => START_K - 10 } }, hours);
  return { name: `${name}, ${hours} h`, expected, model: () => profile().heatOutWPerM2 };
};

const gridTest = after({ conductivityWPerMK: 1.2, heatCapacityJPerM3K: 2.6e6, startK: START_K, surface: { kind: 'flux', outOfSoilWPerM2: 40 } }, 14);

/** Depth of frost as the share of latent heat given up says; capacity next to nothing, as Stefan's law has it. */
const STEFAN_WATER = 0.25;
const frostDepthM = once(() => {
  let heatJPerM2 = 0;
  runSoil({ conductivityWPerMK: 1.4, heatCapacityJPerM3K: 1e4, waterFraction: STEFAN_WATER, startK: ZERO_CELSIUS_K, surface: { kind: 'held', tempK: () => celsiusToKelvin(-5) } }, 12 * HOUR_S, (_, profile) => (heatJPerM2 += profile.heatOutWPerM2 * SOIL_STEP_S));
  return heatJPerM2 / (STEFAN_WATER * WATER_DENSITY_KG_PER_M3 * FUSION_HEAT_J_PER_KG);
});

export const tables: readonly PublishedTable[] = [
  {
    source, title: 'constant flux: surface drop at 30 W/m2 for 14 h', unit: 'K', tolerance: 0.05, relative: true, toleranceReason: FIVE_PERCENT, origin: 'closed form',
    rows: [
      surfaceDrop('dry sand', [0.24, 1.28e6], 13.711),
      surfaceDrop('sand, water 0.2', [2.1, 2.12e6], 3.602),
      surfaceDrop('clay, water 0.2', [0.9, 2.27e6], 5.317),
      surfaceDrop('clay, water 0.4', [1.4, 3.1e6], 3.648),
      surfaceDrop('peat, water 0.45', [0.27, 2.13e6], 10.021),
      surfaceDrop('concrete', [1.4, 2e6], 4.542),
      { name: 'grid test: 40 W/m2, k 1.2, C 2.6e6', expected: 5.737, model: () => drop(gridTest(), 0) },
    ],
  },
  {
    source, title: 'constant flux: drop at depth, 40 W/m2 for 12 h', unit: 'K', tolerance: 0.05 * 4.503, toleranceReason: `${FIVE_PERCENT} of the surface drop`, origin: 'closed form',
    rows: ([[0, 4.503], [0.02, 3.955], [0.05, 3.218], [0.1, 2.211], [0.2, 0.918], [0.5, 0.021]] as const).map(([depthM, expected]) => ({ name: `${100 * depthM} cm`, expected, model: () => drop(fluxProfile(), depthM) })),
  },
  {
    source, title: 'surface held: 5 to -5 °C for 12 h, at depth', unit: '°C', tolerance: 0.5, toleranceReason: `${FIVE_PERCENT} of the step of 10 K`, origin: 'closed form',
    rows: ([[0.01, -4.569], [0.02, -4.14], [0.05, -2.87], [0.1, -0.89], [0.2, 2.201], [0.5, 4.931]] as const).map(([depthM, expected]) => ({ name: `${100 * depthM} cm`, expected, model: () => kelvinToCelsius(stepProfile().atDepthK(depthM)) })),
  },
  {
    source, title: 'convective surface: 8 °C soil under air of -2 °C', unit: '°C', tolerance: 0.2, toleranceReason: '5 % of the change', origin: 'closed form',
    rows: [convective(5, 1, 6.011, 0.1), convective(5, 6, 4.085, 0.19), convective(5, 14, 2.942, 0.25), convective(10, 1, 4.593, 0.17), convective(10, 6, 2.2, 0.29), convective(10, 14, 1.104, 0.34)],
  },
  {
    source, title: 'surface held: flux after a step of -10 K', unit: 'W/m2', tolerance: 0.05, relative: true, toleranceReason: FIVE_PERCENT, origin: 'closed form',
    rows: [stepFlux('clay, water 0.2', CLAY_MOIST, 1, 134.4), stepFlux('clay, water 0.2', CLAY_MOIST, 14, 35.9), stepFlux('clay, water 0.4', CLAY_WET, 1, 195.9), stepFlux('clay, water 0.4', CLAY_WET, 14, 52.4)],
  },
  {
    source, title: 'Stefan: frost after 12 h at -5 °C, k 1.4, water 0.25', unit: 'm', tolerance: 0.08, relative: true, toleranceReason: 'the water of the soil freezes over a band of 1 K, a tenth of the drive of 5 K on average', origin: 'closed form',
    rows: [{ name: 'depth', expected: 0.085, model: frostDepthM }],
  },
];
