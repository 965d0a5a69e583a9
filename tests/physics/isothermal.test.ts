import { describe, expect, it } from 'vitest';
import { saturationVapourPressureAtSurfacePa } from '../../engine/air/saturation-magnus.js';
import { humidityRatioKgPerKg } from '../../engine/air/moist-air.js';
import type { House } from '../../engine/greenhouse/house.js';
import { NO_TROUBLES } from '../../engine/night/controls.js';
import type { Forcing } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { referenceHouse } from '../fixtures/houses.js';

const STEPS = 144;
const PRESSURE_PA = 99_000;
const DRIFT_K = 1e-6;

/** A day without sun in which sky, air and ground all have one temperature. */
function evenForcing(tempK: number, vapourPressurePa: number): Forcing {
  const all = (value: number): Float64Array => new Float64Array(STEPS).fill(value);
  return { startS: 0, stepS: 600, outsideAirTempK: all(tempK), surroundingsTempK: all(tempK), vapourPressurePa: all(vapourPressurePa), windAtCoverMPerS: all(2), cloudFraction: all(1), pressurePa: all(PRESSURE_PA), globalShortwaveWPerM2: all(0), sunW: all(0), sunOnWallW: all(0) };
}

function largestDriftK(house: House, tempK: number, vapourPressurePa: number): number {
  const runner = houseRunner(house);
  const { network } = runner.model;
  const start = {
    tempsK: new Float64Array(network.nodes.length + network.boundaries.length).fill(tempK),
    humidity: new Float64Array(runner.moisture.volumes.length).fill(humidityRatioKgPerKg(vapourPressurePa, PRESSURE_PA)),
    waterKgPerM2: new Float64Array(runner.moisture.waterAreasM2.length),
  };
  let drift = 0;
  runHouse(runner, start, evenForcing(tempK, vapourPressurePa), () => ({ coverOn: house.columns.map(({ rowCover }) => rowCover !== null), ventsMayOpen: true, heaterOn: false, heaterSetK: null, curtainDrawn: true, fansOn: { tubes: true, 'stone-box': true, heap: true, air: true }, troubles: { ...NO_TROUBLES, roofSnowM: house.mayHoldSnow ? 0.1 : 0 } }), (record) => {
    drift = Math.max(drift, ...Array.from(record.tempsK, (value) => Math.abs(value - tempK)));
  });
  return drift;
}

const full = referenceHouse({
  beds: [{ name: 'a', area: 8, crops: ['kale'], cover: { kind: 'fabric', weight: 30 } }, { name: 'b', area: 8, crops: [] }],
  drums: [{ litres: 208, count: 4 }],
  vents: { area: 2 },
});
const SILENT_FAN = { airflow: 200, power: 0.5 } as const;
const withDevices = referenceHouse({
  shape: 'gothic',
  sideHeight: 0.5,
  layers: [{ film: 'twin-wall' }, { film: 'standard' }],
  beds: [{ name: 'a', area: 8, crops: ['kale'], cover: { kind: 'fabric', weight: 30, second: { kind: 'film-tunnel' } } }, { name: 'b', area: 8, crops: [] }],
  drums: [{ litres: 208, count: 4 }],
  solidWall: { height: 1.5, masonry: 0.3, blackened: true },
  curtain: { kind: 'foil' },
  stones: [{ volume: 1 }],
  stoneBox: { volume: 0.5, glazed: 1, fan: SILENT_FAN },
  tubes: { length: 10, fan: SILENT_FAN },
  now: { snowOnRoof: 0.1 },
});
/** Motors off: their warmth would be a drift of its own. */
const quiet: House = { ...withDevices, tubes: { ...withDevices.tubes!, fan: { ...withDevices.tubes!.fan, powerW: 0 } }, stoneBox: { ...withDevices.stoneBox!, fan: { ...withDevices.stoneBox!.fan!, powerW: 0 } } };
const bone: House = { ...full, columns: full.columns.map((column) => ({ ...column, evaporationShare: 0 })) };

describe('a house in which everything has one temperature', () => {
  it.each([-12, -0.5, 0, 0.5, 8, 20])('stays there without vapour, at %f °C', (tempC) => {
    expect(largestDriftK(bone, celsiusToKelvin(tempC), 0)).toBeLessThan(DRIFT_K);
  });

  it.each([-12, 0, 8])('stays there with every device that makes no heat, at %f °C', (tempC) => {
    const dry: House = { ...quiet, columns: quiet.columns.map((column) => ({ ...column, evaporationShare: 0 })) };
    expect(largestDriftK(dry, celsiusToKelvin(tempC), 0)).toBeLessThan(DRIFT_K);
  });

  it.each([-12, -0.5, 8, 20])('stays there with saturated air in and out, at %f °C', (tempC) => {
    const tempK = celsiusToKelvin(tempC);
    expect(largestDriftK(full, tempK, saturationVapourPressureAtSurfacePa(tempK))).toBeLessThan(DRIFT_K);
  });
});
