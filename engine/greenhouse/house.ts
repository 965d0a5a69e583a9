import type { Leakage } from '../airflow/infiltration.js';
import type { HouseGeometry } from '../cover/shape.js';
import type { FilmRow } from '../data/films.js';
import type { RowCoverRow } from '../data/row-covers.js';
import type { SoilRow } from '../data/soils.js';

/** A piece of floor with its own soil column: a bed, the path, or the strip along the edge. */
export interface FloorColumn {
  readonly name: string;
  readonly kind: 'bed' | 'path' | 'edge';
  readonly areaM2: number;
  readonly soil: SoilRow;
  /** The row cover that can be laid over it. */
  readonly rowCover: RowCoverRow | null;
  /** Leaves and stems, as a mass of water for each m2. */
  readonly foliageKgPerM2: number;
  /** How freely the soil surface gives water to the air, 0-1. */
  readonly evaporationShare: number;
  /** Conductance through the soil to the ground outside; only the edge has one. */
  readonly edgeConductanceWPerK: number;
}

export interface DrumGroup {
  readonly litresEach: number;
  readonly count: number;
  readonly conductanceWPerK: number;
  readonly sunShare: number;
}

/** The house in SI, with every default decided: what the night model is built from. */
export interface House {
  readonly place: { readonly latitude: number; readonly longitude: number; readonly elevationM: number };
  readonly geometry: HouseGeometry;
  /** From inside to outside. */
  readonly films: readonly FilmRow[];
  readonly cleanShare: number;
  readonly skyViewFraction: number;
  /** Share of the 10 m wind at the cover. */
  readonly windShare: number;
  readonly leakage: Leakage;
  readonly columns: readonly FloorColumn[];
  readonly drums: readonly DrumGroup[];
  readonly vents: { readonly openAreaM2: number; readonly stackHeightM: number; readonly openAboveK: number } | null;
  readonly heater: { readonly deliveredW: number; readonly thermostat: boolean } | null;
}
