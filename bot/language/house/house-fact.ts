import type { Quantity } from './clause.js';

/** What somebody said of a greenhouse, as data. Nothing is filled in: what was not said is not there. */

export type ShapeSaid = 'half-round' | 'gothic' | 'gable' | 'lean-to';
export type FilmSaid = 'standard' | 'thermal' | 'ir-barrier' | 'glass' | 'twin-wall';
export type StoneSaid = 'pale gravel' | 'rock' | 'brick' | 'concrete' | 'earth';
export type Side = 'north' | 'east' | 'south' | 'west';

export interface SizeSaid {
  readonly about: 'size';
  readonly width?: Quantity;
  readonly length?: Quantity;
  readonly height?: Quantity;
  /** Upright side wall of a house that has one. */
  readonly side?: Quantity;
  /** Two lengths without a word for which is which, such as "20 by 48". */
  readonly floor?: readonly [Quantity, Quantity];
  /** Numbers that answer a question for several lengths, in its order. */
  readonly bare?: readonly Quantity[];
}

export interface ShapeFact {
  readonly about: 'shape';
  /** Null for a shape that the model does not know, such as a dome. */
  readonly shape: ShapeSaid | null;
  /** A plain "tunnel" or "hoop house": a half-round one unless another shape is said. */
  readonly general: boolean;
  readonly words: string;
}

export interface LayersFact {
  readonly about: 'layers';
  readonly count?: number;
  /** Outer first. */
  readonly films: readonly FilmSaid[];
  readonly blower?: boolean;
  /** One more, or one less, than there is. */
  readonly change?: 1 | -1;
}

export interface CoverFact {
  readonly about: 'cover';
  readonly kind: 'fabric' | 'film-tunnel';
  readonly weightGsm?: number;
  readonly weight?: Quantity;
  /** Another one over it. */
  readonly second?: 'fabric' | 'film-tunnel';
  readonly on?: boolean;
  /** Names of beds, and crops that were named with it; neither: all beds. */
  readonly beds: readonly string[];
  readonly crops: readonly string[];
}

export interface WaterFact {
  readonly about: 'water';
  readonly count?: number;
  /** In one vessel. */
  readonly each?: Quantity;
  /** In all vessels together. */
  readonly inAll?: Quantity;
  readonly more?: boolean;
  readonly touching?: boolean;
  readonly sunny?: boolean;
}

export interface StonesFact {
  readonly about: 'stones';
  readonly kind: StoneSaid;
  readonly amount?: Quantity;
  readonly exposed?: Quantity;
  readonly blackened?: boolean;
  readonly sunny?: boolean;
}

export interface FanSaid {
  readonly airflow?: Quantity;
  readonly power?: Quantity;
  readonly supply?: 'mains' | 'battery' | 'sun';
  readonly battery?: Quantity;
  readonly on?: boolean;
}

export interface StoneBoxFact {
  readonly about: 'stone-box';
  readonly kind?: StoneSaid;
  readonly amount?: Quantity;
  readonly glazed?: Quantity;
  readonly fan?: FanSaid;
}

export interface WallFact {
  readonly about: 'wall';
  readonly height?: Quantity;
  readonly foam?: Quantity;
  readonly masonry?: Quantity;
  readonly stone?: StoneSaid;
  readonly blackened?: boolean;
  readonly faces?: Side;
  readonly behind?: Quantity;
}

export interface EdgeFact {
  readonly about: 'edge';
  readonly depth?: Quantity;
  readonly thickness?: Quantity;
}

export interface CurtainFact {
  readonly about: 'curtain';
  readonly kind?: 'film' | 'fabric' | 'foil';
}

export interface VentsFact {
  readonly about: 'vents';
  readonly area?: Quantity;
  /** Sides of an opening and how many of it there are. */
  readonly opening?: readonly [Quantity, Quantity];
  readonly count?: number;
  readonly opener?: boolean;
  readonly openAbove?: Quantity;
}

export interface SoilFact {
  readonly about: 'soil';
  readonly kind?: 'sand' | 'loam' | 'clay' | 'peat' | 'compost-rich';
  readonly moisture?: 'dry' | 'moist' | 'wet';
  readonly pathMoisture?: 'dry' | 'moist' | 'wet';
}

export interface TubesFact {
  readonly about: 'tubes';
  readonly count?: number;
  readonly length?: Quantity;
  readonly diameter?: Quantity;
  readonly depth?: Quantity;
  readonly fan?: FanSaid;
}

export interface FanFact {
  readonly about: 'fan';
  readonly fan: FanSaid;
}

export interface CompostFact {
  readonly about: 'compost';
  readonly volume?: Quantity;
  /** Sides of the heap. */
  readonly sides?: readonly Quantity[];
  /** Local date. */
  readonly started?: string;
  readonly against?: string;
  readonly piped?: boolean;
  readonly fan?: FanSaid;
}

export type Fuel = 'electric' | 'propane' | 'kerosene' | 'gas' | 'wood' | 'candles';

export interface HeaterFact {
  readonly about: 'heater';
  readonly fuel?: Fuel;
  /** "Gas" may be bottled or from the mains. */
  readonly fuelUnsure?: boolean;
  readonly vented?: boolean;
  readonly power?: Quantity;
  readonly count?: number;
  readonly thermostat?: boolean;
  readonly set?: Quantity;
  readonly on?: boolean;
  readonly price?: number;
}

export interface CropSaid {
  /** The name as the crop table knows it; as written where it does not. */
  readonly name: string;
  readonly known: boolean;
  readonly hardiness?: 'tender' | 'half-hardy' | 'hardy' | 'very hardy';
}

export interface BedFact {
  readonly about: 'bed';
  /** Null: the beds as a whole. */
  readonly bed: string | null;
  readonly crops: readonly CropSaid[];
  readonly area?: Quantity;
  readonly sides?: readonly [Quantity, Quantity];
  /** The crops are no longer there. */
  readonly gone?: boolean;
}

export interface ThermometerFact {
  readonly about: 'thermometer';
  /** "the shed thermometer" */
  readonly name?: string;
  readonly where?: 'inside' | 'outside' | 'cover' | 'soil';
  /** "north end", "by the door" */
  readonly spot?: string;
  readonly height?: Quantity;
  readonly sun?: boolean;
}

export interface TimesFact {
  readonly about: 'times';
  readonly evening?: string;
  readonly morning?: string;
  readonly bedtime?: string;
}

export interface UnitsFact {
  readonly about: 'units';
  readonly temperature?: 'C' | 'F';
  readonly lengths?: 'ft' | 'm';
}

export interface PlaceFact {
  readonly about: 'coordinates';
  readonly latitude: number;
  readonly longitude: number;
}

export interface TownFact {
  readonly about: 'town';
  readonly town: string;
}

export interface SiteFact {
  readonly about: 'site';
  /** Degrees clockwise from north, or a pair of sides. */
  readonly ridge?: 'east-west' | 'north-south';
  readonly leakage?: 'tight' | 'ordinary' | 'leaky';
  readonly surroundings?: 'open' | 'wooded' | 'town';
  readonly name?: string;
}

export type Thing = 'covers' | 'water' | 'stones' | 'stone-box' | 'wall' | 'edge' | 'curtain' | 'vents' | 'tubes' | 'fan' | 'compost' | 'heater' | 'thermometers' | 'blower' | 'crops';

/** The grower has none of it, or no longer. */
export interface NoneFact {
  readonly about: 'none';
  readonly thing: Thing;
  /** Beds whose covers or crops are meant. */
  readonly beds?: readonly string[];
}

export type Fact =
  | SizeSaid | ShapeFact | LayersFact | CoverFact | WaterFact | StonesFact | StoneBoxFact | WallFact | EdgeFact | CurtainFact | VentsFact | SoilFact
  | TubesFact | FanFact | CompostFact | HeaterFact | BedFact | ThermometerFact | TimesFact | UnitsFact | PlaceFact | TownFact | SiteFact | NoneFact;
