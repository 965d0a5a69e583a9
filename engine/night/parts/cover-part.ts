import { outsideConvectionWPerM2K } from '../../cover/convection.js';
import { snowConductanceWPerM2K, snowHoldingShare, snowyShare } from '../../cover/snow-layer.js';
import { MASSLESS } from '../../network/enthalpy.js';
import { filmToAirWPerM2K } from '../air-exchange.js';
import type { AirIndex } from './air-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

export interface CoverIndex {
  /** Inner film first. */
  readonly films: readonly number[];
  /** Surface of the snow; -1 where none can lie. */
  readonly snow: number;
}

/** Films with their gaps, snow on them where it may lie, and the wind. */
export function addCover(builder: NetworkBuilder, { roofAir }: AirIndex): CoverIndex {
  const { house, conditions } = builder;
  const { coverAreaM2, facets } = house.geometry;
  const films = house.films.map((_, f) => builder.addNode({ name: `film ${f + 1}`, store: MASSLESS }));
  builder.coupleByTemps(films[0]!, roofAir, (filmK, airK) => coverAreaM2 * filmToAirWPerM2K(filmK, airK, conditions.stirredWPerM2K));
  house.gapsWPerM2K.forEach((gap, g) => builder.coupleBy(films[g]!, films[g + 1]!, () => coverAreaM2 * (conditions.troubles.blowerOff ? house.slackGapsWPerM2K[g]! : gap)));
  const outer = films.at(-1)!;
  const toWind = (node: number, share: () => number): void => builder.coupleBy(node, BOUNDARY.outside, () => share() * coverAreaM2 * outsideConvectionWPerM2K(conditions.windAtCoverMPerS));
  if (!house.mayHoldSnow) {
    toWind(outer, () => 1);
    return { films, snow: -1 };
  }
  const holdingShare = snowHoldingShare(facets);
  const snow = builder.addNode({ name: 'snow', store: MASSLESS });
  builder.coupleBy(outer, snow, () => coverAreaM2 * snowConductanceWPerM2K(conditions.troubles.roofSnowM, holdingShare));
  toWind(outer, () => 1 - snowyShare(conditions.troubles.roofSnowM, holdingShare));
  toWind(snow, () => snowyShare(conditions.troubles.roofSnowM, holdingShare));
  return { films, snow };
}
