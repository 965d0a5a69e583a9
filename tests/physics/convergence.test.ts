import { afterEach, describe, expect, it } from 'vitest';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { SOIL_LAYERS_M } from '../../engine/ground/soil-column.js';
import { CLEAR_COLD_NIGHT, INSIDE, referenceHouse, runInventedNight } from '../fixtures/houses.js';

/**
 * How far the dawn low of whole houses still is from where ever finer steps and soil layers lead. Found on the reference night: the step of
 * 600 s is 0.01 K off, the soil grid 0.03 K over moist and 0.16 K over dry soil; readings themselves differ by 0.5 K within a house.
 */
const HOUSES: Readonly<Record<string, Partial<GreenhouseFile>>> = {
  'double film, moist loam': {},
  'single film': { layers: [{ film: 'standard' }] },
  'dry sand': { soil: { kind: 'sand', moisture: 'dry', pathMoisture: 'dry' } },
  'six drums': { drums: [{ litres: 208, count: 6 }] },
  'row cover': { beds: [{ name: 'a', area: 12, crops: ['kale'], cover: { kind: 'fabric', weight: 30 } }] },
};
const lowK = (changes: Partial<GreenhouseFile>, stepS?: number): number => runInventedNight(referenceHouse(changes), CLEAR_COLD_NIGHT, stepS === undefined ? {} : { stepS }).lowK(INSIDE);

describe.each(Object.entries(HOUSES))('step: %s', (_name, changes) => {
  const [whole, half, quarter, eighth] = [600, 300, 150, 75].map((stepS) => lowK(changes, stepS)) as [number, number, number, number];

  it('600 s lies within 0.05 K of where the steps lead', () => {
    // First order: what is left behind the last halving is about as much again.
    const limit = 2 * eighth - quarter;
    expect(Math.abs(whole - limit)).toBeLessThan(0.05);
  });

  it('each halving moves the low by no more than the one before, but for a millikelvin', () => {
    expect(Math.abs(quarter - half)).toBeLessThan(Math.abs(half - whole) + 1e-3);
    expect(Math.abs(eighth - quarter)).toBeLessThan(Math.abs(quarter - half) + 1e-3);
  });
});

describe('soil grid', () => {
  // The grid is a constant of the engine; it is cut finer in place here, and put back before any other file of this core runs.
  const layersM = SOIL_LAYERS_M as unknown as number[];
  const asBuilt = [...layersM];
  const cutInto = (parts: number): void => void layersM.splice(0, layersM.length, ...asBuilt.flatMap((thicknessM) => Array.from({ length: parts }, () => thicknessM / parts)));
  afterEach(() => cutInto(1));

  it.each(Object.entries(HOUSES))('each layer cut into four moves the low by less than 0.2 K, the second cut by less than 0.05: %s', (_name, changes) => {
    const [built, halved, quartered] = [1, 2, 4].map((parts) => {
      cutInto(parts);
      return lowK(changes);
    }) as [number, number, number];
    expect(halved).not.toBe(built);
    expect(Math.abs(quartered - built)).toBeLessThan(0.2);
    expect(Math.abs(quartered - halved)).toBeLessThan(0.05);
  });
});
