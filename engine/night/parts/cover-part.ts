import { outsideConvectionWPerM2K } from '../../cover/convection.js';
import { snowConductanceWPerM2K, snowHoldingShare } from '../../cover/snow-layer.js';
import { MASSLESS } from '../../network/enthalpy.js';
import { filmToAirWPerM2K } from '../air-exchange.js';
import type { AirIndex } from './air-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

export interface CoverIndex {
  /** Inner film first. */
  readonly films: readonly number[];
  /** Surface of the snow; -1 where none can lie. */
  readonly snow: number;
  /** What the wind meets: the snow or the outer film. */
  readonly outerSurface: number;
}

/** Films with their gaps, snow on them where it may lie, and the wind. */
export function addCover(builder: NetworkBuilder, { roofAir }: AirIndex): CoverIndex {
  const { house, conditions } = builder;
  const { coverAreaM2, facets } = house.geometry;
  const films = house.films.map((_, f) => builder.addNode({ name: `film ${f + 1}`, store: MASSLESS }));
  builder.coupleByTemps(films[0]!, roofAir, (filmK, airK) => coverAreaM2 * filmToAirWPerM2K(filmK, airK, conditions.stirredWPerM2K));
  house.gapsWPerM2K.forEach((gap, g) => builder.coupleBy(films[g]!, films[g + 1]!, () => coverAreaM2 * (conditions.troubles.blowerOff ? house.slackGapsWPerM2K[g]! : gap)));
  const outer = films.at(-1)!;
  const snow = house.mayHoldSnow ? builder.addNode({ name: 'snow', store: MASSLESS }) : -1;
  if (snow >= 0) {
    const holdingShare = snowHoldingShare(facets);
    builder.coupleBy(outer, snow, () => coverAreaM2 * snowConductanceWPerM2K(conditions.troubles.roofSnowM, holdingShare));
  }
  const outerSurface = snow >= 0 ? snow : outer;
  builder.coupleBy(outerSurface, BOUNDARY.outside, () => coverAreaM2 * outsideConvectionWPerM2K(conditions.windAtCoverMPerS));
  return { films, snow, outerSurface };
}
