import { describe, expect, it } from 'vitest';
import { SOILS } from '../../engine/data/soils.js';
import { DEEP_SOIL_DEPTH_M, layerDepthM, layerNearest, SOIL_LAYERS_M, soilColumn, soilStore } from '../../engine/ground/soil-column.js';

const LAYERS = SOIL_LAYERS_M.map((_, layer) => layer);

describe('layers of the soil', () => {
  it('are nearest to their own middle, and to what lies a little off it', () => {
    expect(LAYERS.map((layer) => layerNearest(layerDepthM(layer)))).toEqual(LAYERS);
    expect(LAYERS.map((layer) => layerNearest(1.05 * layerDepthM(layer)))).toEqual(LAYERS);
  });

  it('are the first at the surface and the last in the deep', () => {
    expect(layerNearest(0)).toBe(0);
    expect(layerNearest(2)).toBe(LAYERS.length - 1);
  });
});

describe('a column of soil', () => {
  const column = (areaM2: number) => soilColumn(SOILS.clay.moist, { areaM2, firstNode: 3, deepBoundary: 40, name: 'bed' });
  const conductancesWPerK = (areaM2: number): number[] => column(areaM2).conductors.map(({ conductanceWPerK }) => conductanceWPerK(280, 281));

  it('conducts and holds in proportion to its area', () => {
    conductancesWPerK(6).forEach((conductance, layer) => expect(conductance / conductancesWPerK(2)[layer]!).toBeCloseTo(3, 12));
    column(6).nodes.forEach(({ store }, layer) => expect(store.thawedJPerK / column(2).nodes[layer]!.store.thawedJPerK).toBeCloseTo(3, 12));
  });

  it('resists from the first middle to the deep like one slab, depth / (k A)', () => {
    const resistance = conductancesWPerK(2).reduce((sum, conductance) => sum + 1 / conductance, 0);
    expect(resistance).toBeCloseTo((DEEP_SOIL_DEPTH_M - SOIL_LAYERS_M[0] / 2) / (SOILS.clay.moist.thermalConductivityWPerMK * 2), 9);
  });

  it('is a chain from its first node down to the deep', () => {
    expect(column(1).conductors.map(({ a, b }) => [a, b])).toEqual(LAYERS.map((layer) => [3 + layer, layer === LAYERS.length - 1 ? 40 : 4 + layer]));
  });
});

describe('soil that freezes', () => {
  // Water 4.18, ice 1.88 MJ/(m3 K): each m3 of water that freezes takes 2.30 MJ/K off (Moene2014).
  it('holds less heat frozen, by 2.30 MJ/(m3 K) of its water', () => {
    for (const soil of [SOILS.sand.moist, SOILS.clay.wet, SOILS.loam.moist]) {
      const { thawedJPerK, frozenJPerK } = soilStore(soil, 2);
      expect(thawedJPerK).toBeCloseTo(2 * soil.volumetricHeatCapacityJPerM3K, 3);
      expect((thawedJPerK - frozenJPerK) / 2 / soil.waterFraction / 2.3e6).toBeCloseTo(1, 2);
    }
  });

  it('gives up 334 kJ for each kg of its water', () => {
    expect(soilStore(SOILS.clay.wet, 2).latentJ / (2 * 400 * 334e3)).toBeCloseTo(1, 6);
  });

  it('keeps a good share of its capacity whatever its water', () => {
    const soaked = { ...SOILS.peat.wet, volumetricHeatCapacityJPerM3K: 1e6 };
    expect(soilStore(soaked, 2).frozenJPerK).toBeCloseTo(0.4 * soilStore(soaked, 2).thawedJPerK, 6);
  });
});
