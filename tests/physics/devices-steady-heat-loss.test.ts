import { describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { NO_FANS, NO_TROUBLES } from '../../engine/night/controls.js';
import type { Forcing } from '../../engine/night/forcing.js';
import { houseRunner, runHouse } from '../../engine/night/house-run.js';
import { STANDARD_PRESSURE_PA } from '../../engine/constants.js';
import { celsiusToKelvin } from '../../engine/units.js';
import { referenceHouse } from '../fixtures/houses.js';
import { fluxesOf } from '../published/effects/dawn-fluxes.js';

/**
 * Mihara and Hayashi 1979: houses of PVC lose 4.87 + 0.54 w, with an inner curtain of polyethylene 3.15 + 0.17 w, W for each m2 of cover and K (w m/s).
 * Input: 20 x 7 m half-round, 3 m high, held at 15 °C for six days, outside 0, sky and trees around -10 °C, dry films; PVC as the engine's infrared
 * film. All that leaves counts, leaks too. Their nights are not described, so that the lines hold to a third.
 */
const STEPS = 6 * 144;
const INSIDE_C = 15;
const OUTSIDE_C = 0;
const SURROUNDINGS_C = -10;

function steadyLossWPerM2K(changes: Partial<GreenhouseFile>, windMPerS: number): number {
  const filed = referenceHouse({ size: { width: 7, length: 20, height: 3 }, beds: [{ name: 'bed', area: 90, crops: ['kale'] }], heater: { kind: 'electric', power: 60_000 }, ...changes });
  const house = { ...filed, columns: filed.columns.map((column) => ({ ...column, evaporationShare: 0 })) };
  const runner = houseRunner(house);
  const { model, moisture } = runner;
  const even = (value: number): Float64Array => new Float64Array(STEPS).fill(value);
  const forcing: Forcing = { startS: 0, stepS: 600, outsideAirTempK: even(celsiusToKelvin(OUTSIDE_C)), surroundingsTempK: even(celsiusToKelvin(SURROUNDINGS_C)), vapourPressurePa: even(0), windAtCoverMPerS: even(windMPerS), cloudFraction: even(1), pressurePa: even(STANDARD_PRESSURE_PA), globalShortwaveWPerM2: even(0), sunW: even(0), sunOnWallW: even(0) };
  const tempsK = new Float64Array(model.network.nodes.length + model.network.boundaries.length).fill(celsiusToKelvin(INSIDE_C));
  let loss = NaN;
  runHouse(runner, { tempsK, humidity: new Float64Array(moisture.volumes.length), waterKgPerM2: new Float64Array(moisture.waterAreasM2.length) }, forcing, () => ({ coverOn: house.columns.map(() => false), curtainDrawn: true, ventsMayOpen: false, heaterOn: true, heaterSetK: celsiusToKelvin(INSIDE_C), fansOn: NO_FANS, troubles: NO_TROUBLES }), (record) => {
    if (record.stepIndex < STEPS - 1) return;
    const { soilToAir, soilLongwave } = fluxesOf(runner, record);
    const leavingW = record.heaterW + house.geometry.floorAreaM2 * (soilToAir + soilLongwave);
    loss = leavingW / house.geometry.coverAreaM2 / (record.tempsK[model.air]! - record.tempsK[model.outside]!);
  });
  return loss;
}

const pvc = (windMPerS: number): number => steadyLossWPerM2K({ layers: [{ film: 'ir-barrier' }] }, windMPerS);
const curtained = (windMPerS: number): number => steadyLossWPerM2K({ layers: [{ film: 'ir-barrier' }], curtain: { kind: 'film' } }, windMPerS);
const LEAST_SHARE = 2 / 3;
const MOST_SHARE = 4 / 3;
/** The engine's curtain lies flat over the beds, 0.65 m2 for each m2 of cover; theirs is not described. */
const LEAST_SHARE_FLAT = 0.6;

describe('heated house in a steady state', () => {
  it.each([[0, 4.87], [2, 5.95], [4, 7.03]])('of PVC at %f m/s loses about %f W/(m2 K)', (windMPerS, measured) => {
    expect(pvc(windMPerS) / measured).toBeGreaterThan(LEAST_SHARE);
    expect(pvc(windMPerS) / measured).toBeLessThan(MOST_SHARE);
  });

  it.each([[0, 3.15], [2, 3.49]])('with an inner curtain of film at %f m/s loses about %f W/(m2 K)', (windMPerS, measured) => {
    expect(curtained(windMPerS) / measured).toBeGreaterThan(LEAST_SHARE_FLAT);
    expect(curtained(windMPerS) / measured).toBeLessThan(MOST_SHARE);
  });

  it('loses more the harder the wind blows, with a curtain less so', () => {
    const rise = (loss: (windMPerS: number) => number): number => loss(4) - loss(0);
    expect(rise(pvc)).toBeGreaterThan(0.3);
    expect(rise(curtained)).toBeLessThan(rise(pvc));
  });

  /** Geoola 2009 and 2011: screens save 30 %, sealed foil 50 to 60 %; Mihara and Hayashi: 33 to 37 % under glass, 38.6 % between their lines for PVC at 1 m/s. */
  it('saves 30 to 60 % by its curtain at 1 m/s', () => {
    const saved = 1 - curtained(1) / pvc(1);
    expect(saved).toBeGreaterThan(0.3);
    expect(saved).toBeLessThan(0.6);
  });
});
