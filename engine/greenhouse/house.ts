import type { Leakage } from '../airflow/infiltration.js';
import type { HouseGeometry } from '../cover/shape.js';
import type { CurtainRow } from '../data/curtains.js';
import type { FilmRow } from '../data/films.js';
import type { RowCoverRow } from '../data/row-covers.js';
import type { SoilRow } from '../data/soils.js';
import type { StoneRow } from '../data/stones.js';
import type { StoneLumps } from '../mass/stone-store.js';

/** A piece of floor with its own soil column: a bed, the path, or the strip along the edge. */
export interface FloorColumn {
  readonly name: string;
  readonly kind: 'bed' | 'path' | 'edge';
  readonly areaM2: number;
  readonly soil: SoilRow;
  /** The row cover that can be laid over it, and another one over that. */
  readonly rowCover: RowCoverRow | null;
  readonly secondCover: RowCoverRow | null;
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

/** A fan and what drives it; a sun-driven fan stands still at night whatever anyone wishes. */
export interface Fan {
  readonly airflowM3PerS: number;
  readonly powerW: number;
  readonly supply: 'mains' | 'battery' | 'sun';
  /** How long a full battery runs it; null without one. */
  readonly batteryS: number | null;
}

export interface SolidWall {
  readonly areaM2: number;
  readonly stone: StoneRow;
  /** Of the masonry inside the insulation; 0 is a bare insulated wall. */
  readonly masonryM: number;
  /** From the masonry to what lies behind it. */
  readonly outwardWPerM2K: number;
  /** Temperature of a heated room behind it; null is the air outside. */
  readonly behindTempK: number | null;
  readonly absorptance: number;
}

export interface StoneGroup {
  readonly lumps: StoneLumps;
  readonly sunShare: number;
  readonly absorptance: number;
}

export interface StoneBox {
  readonly glazedM2: number;
  readonly volumeM3: number;
  readonly lumps: StoneLumps;
  readonly sidesWPerK: number;
  readonly stoneSizeM: number;
  readonly sunShare: number;
  readonly absorptance: number;
  readonly fan: Fan | null;
}

export interface BuriedTubes {
  readonly lengthM: number;
  readonly count: number;
  readonly diameterM: number;
  readonly depthM: number;
  readonly soil: SoilRow;
  readonly fan: Fan;
}

export interface CompostHeap {
  readonly volumeM3: number;
  readonly startedS: number;
  /** Column of the bed that it lies against; null stands free. */
  readonly column: number | null;
  /** With pipes and a fan it stands outside the house. */
  readonly fan: Fan | null;
}

export interface Heater {
  /** Warmth into the air at full power, without the heat of its vapour. */
  readonly deliveredW: number;
  readonly vapourKgPerS: number;
  readonly thermostat: boolean;
  readonly needsMains: boolean;
  /** How long one filling burns; null without end. */
  readonly burnS: number | null;
}

/** The house in SI, with every default decided: what the night model is built from. */
export interface House {
  readonly place: { readonly latitude: number; readonly longitude: number; readonly elevationM: number };
  readonly geometry: HouseGeometry;
  /** From inside to outside; a twin-wall panel counts as two sheets. */
  readonly films: readonly FilmRow[];
  /** Between each film and the next outward, W/(m2 K) without radiation. */
  readonly gapsWPerM2K: readonly number[];
  /** The same gaps when the blower has stopped. */
  readonly slackGapsWPerM2K: readonly number[];
  readonly cleanShare: number;
  readonly skyViewFraction: number;
  /** Share of the 10 m wind at the cover. */
  readonly windShare: number;
  readonly leakage: Leakage;
  readonly columns: readonly FloorColumn[];
  readonly curtain: CurtainRow | null;
  readonly solidWall: SolidWall | null;
  readonly drums: readonly DrumGroup[];
  readonly stones: readonly StoneGroup[];
  readonly stoneBox: StoneBox | null;
  readonly tubes: BuriedTubes | null;
  readonly stirringFan: Fan | null;
  readonly heap: CompostHeap | null;
  readonly vents: { readonly openAreaM2: number; readonly stackHeightM: number; readonly openAboveK: number; readonly byOpener: boolean } | null;
  readonly heater: Heater | null;
  /** Snow can lie on it: the network then carries a plane for it. */
  readonly mayHoldSnow: boolean;
}
