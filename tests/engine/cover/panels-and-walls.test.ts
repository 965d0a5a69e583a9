import { describe, expect, it } from 'vitest';
import { stackTransmittance } from '../../../engine/cover/shortwave-transmittance.js';
import { FILMS } from '../../../engine/data/films.js';
import { STONES } from '../../../engine/data/stones.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { freshConditions } from '../../../engine/night/conditions.js';
import { BOUNDARY, networkBuilder } from '../../../engine/night/parts/network-builder.js';
import { addSolidWall } from '../../../engine/night/parts/wall-part.js';
import { celsiusToKelvin } from '../../../engine/units.js';
import { coverUValue } from '../../published/cover-u-value.js';
import { houseWith } from '../greenhouse/files.js';

describe('twin-wall panel', () => {
  const panel = FILMS['twin-wall'];

  // Data sheets of 6 to 8 mm polycarbonate: U 3.4 to 3.7 W/(m2 K), light 72 to 82 %.
  it('loses 3.2 to 3.9 W/(m2 K) and passes 0.72 to 0.82 of the light, as data sheets of 6 to 8 mm have it', () => {
    const u = coverUValue([panel.dry, panel.dry], { gapWPerM2K: panel.webWPerM2K });
    expect(u).toBeGreaterThan(3.2);
    expect(u).toBeLessThan(3.9);
    const light = stackTransmittance(0, [panel.sheet, panel.sheet]);
    expect(light).toBeGreaterThan(0.72);
    expect(light).toBeLessThan(0.82);
  });

  it('loses less than glass and, under a film, less still', () => {
    const u = (layers: Parameters<typeof coverUValue>[0], gapWPerM2K?: number): number => coverUValue(layers, gapWPerM2K === undefined ? {} : { gapWPerM2K });
    expect(u([panel.dry, panel.dry], panel.webWPerM2K)).toBeLessThan(u([FILMS.glass.dry]));
  });

  it('counts as two sheets in the house, with its own gap, whatever lies over it', () => {
    const house = houseWith({ layers: [{ film: 'standard' }, { film: 'twin-wall' }] });
    expect(house.films).toEqual([panel, panel, FILMS.standard]);
    expect(house.gapsWPerM2K[0]).toBe(panel.webWPerM2K);
    expect(house.slackGapsWPerM2K[0]).toBe(panel.webWPerM2K);
  });
});

/** A wall held between an inside and an outside air until nothing moves: temperatures of surface and layers, and the heat through it. */
function steadyWall(wall: NonNullable<Parameters<typeof houseWith>[0]>['solidWall']): { surfaceK: number; heatWPerM2: number } {
  const house = houseWith({ solidWall: wall! });
  const builder = networkBuilder(house, freshConditions(house));
  // The place of the house air is taken by a boundary of given temperature.
  const index = addSolidWall(builder, { air: BOUNDARY.deep, roofAir: BOUNDARY.deep, curtain: -1 })!;
  const { network, boundary } = builder.finish([]);
  const tempsK = new Float64Array(network.nodes.length + network.boundaries.length).fill(celsiusToKelvin(0));
  tempsK[boundary(BOUNDARY.deep)] = celsiusToKelvin(10);
  tempsK[boundary(BOUNDARY.outside)] = celsiusToKelvin(-10);
  for (let i = 0; i < 50; i += 1) stepImplicit({ network, tempsK, stepS: 1e6, sources: emptySources(network.nodes.length), updateSources: () => undefined });
  const surfaceK = tempsK[index.surface]!;
  const { stone, masonryM } = house.solidWall!;
  const halfLayerM = masonryM / index.layers.length / 2;
  return { surfaceK, heatWPerM2: ((surfaceK - tempsK[index.layers[0]!]!) * stone.thermalConductivityWPerMK) / halfLayerM };
}

describe('solid wall', () => {
  it.each([[0.05, 0.3], [0.1, 0.1], [0.02, 0.5]])('of %f m foam behind %f m of brick lets through what its resistances in series say', (foam, masonry) => {
    const { surfaceK, heatWPerM2 } = steadyWall({ height: 2, foam, masonry });
    // Brick 0.8, foam 0.034 W/(m K), 12 W/(m2 K) to the wind.
    const resistanceM2KPerW = masonry / 0.8 + foam / 0.034 + 1 / 12;
    expect(heatWPerM2).toBeCloseTo((surfaceK - celsiusToKelvin(-10)) / resistanceM2KPerW, 3);
    // From the air by natural convection, 1.31 dT^(1/3) (Walton1983).
    expect(1.31 * (celsiusToKelvin(10) - surfaceK) ** (4 / 3)).toBeCloseTo(heatWPerM2, 2);
  });

  it('of masonry alone is closed by its skin: 1/6 and 1/12 m2 K/W', () => {
    const { surfaceK, heatWPerM2 } = steadyWall({ height: 2, foam: 0, masonry: 0.24 });
    expect(heatWPerM2).toBeCloseTo((surfaceK - celsiusToKelvin(-10)) / (0.24 / STONES.brick.thermalConductivityWPerMK + 1 / 6 + 1 / 12), 3);
  });
});
