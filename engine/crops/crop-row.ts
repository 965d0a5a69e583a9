import type { CropSourceKey } from '../data/crops/sources.js';
import type { HardeningSet } from './hardening.js';
import type { RefersTo } from './judged-at.js';

/** How far a number may be trusted. Published: read in an extension, standards or peer-reviewed text. */
export type Grade = 'published' | 'secondary' | 'from memory';

export type HardinessClass = 'very hardy' | 'hardy' | 'half-hardy' | 'tender' | 'bud stage';

export type CropId = string;

/** One temperature of the crop table. There is no way to write one down without its grade and source. */
export interface CropNumber {
  /** As printed in the source table. */
  readonly valueC: number;
  readonly grade: Grade;
  readonly sourceKey: CropSourceKey;
  readonly source: string;
}

/** Where marking begins (about 10 %) and where the plant or the named organ is lost (about 90 %). */
export interface CropPair {
  readonly damage: CropNumber;
  /** Null where no source gives one. */
  readonly kill: CropNumber | null;
}

export interface CropRow {
  readonly id: CropId;
  readonly commonName: string;
  readonly botanicalName: string;
  readonly aliases: readonly string[];
  readonly hardinessClass: HardinessClass;
  /**
   * Which rates the plant hardens and softens with. 'none': tender crops, and organs with one pair of numbers (buds, heads,
   * fruit). 'slow': alliums, woody plants, and perennials that live by a crown or rhizome. 'fast': every other row with two pairs.
   */
  readonly hardening: HardeningSet;
  /**
   * True where freezing ruins what would be picked: heads and curds, juicy stems, tender crops grown for fruit, pods or leaves,
   * fruit on citrus. False where the crop stands and recovers, or its harvest is safe in the soil.
   */
  readonly harvestEarly: boolean;
  /** Frost-hardened, field-like winter plants. */
  readonly hardened: CropPair | null;
  /** Warm-grown plants, or any plant just after a warm spell. */
  readonly soft: CropPair | null;
  readonly chill: CropNumber | null;
  /** What the numbers were measured on, as printed. */
  readonly refersTo: RefersTo;
  /** How long the temperature lasted, as printed. */
  readonly durationMin: number | null;
  readonly coverNote: string;
  readonly note: string | null;
}
