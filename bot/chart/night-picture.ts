import type { FanPlace, PlaceKey, Verdict } from '../../engine/index.js';
import type { TempUnits } from '../text/temperature.js';

/** All that the picture of a night shows, as data: temperatures in degrees C, times in epoch seconds. */
export interface NightPicture {
  readonly greenhouse: string;
  readonly zone: string;
  readonly units: TempUnits;
  readonly nowS: number;
  /** An instant of the local date on which the night begins. */
  readonly eveningS: number;
  readonly span: { readonly fromS: number; readonly toS: number };
  /** Null where the sun does not set or does not rise. */
  readonly sun: { readonly sunsetS: number; readonly sunriseS: number } | null;
  /** The night by which the temperature scale is chosen: afternoon and morning may run off the top. */
  readonly night: { readonly fromS: number; readonly toS: number };
  /** The plant first. */
  readonly lines: readonly NightLine[];
  readonly band: readonly BandPoint[];
  readonly low: { readonly tempC: number; readonly timeS: number };
  /** The crop most at risk under the plan; null where nothing grows. */
  readonly crop: PicturedCrop | null;
  readonly flags: readonly NightFlag[];
  /** Why there are no flags, when there are none. */
  readonly idle: 'calm' | 'not-worth-it' | 'too-late';
  readonly stale: { readonly ageS: number } | null;
  readonly isInvented: boolean;
  /** Who gave the weather, as in the answer of the weather source. */
  readonly source: string;
}

export type LineName = 'plant' | 'cover' | 'inside' | 'outside';

export interface NightLine {
  readonly name: LineName;
  readonly place: PlaceKey;
  readonly points: readonly { readonly timeS: number; readonly tempC: number }[];
}

/** Range of the plant's temperature on 8 nights in 10. */
export interface BandPoint {
  readonly timeS: number;
  readonly lowC: number;
  readonly highC: number;
}

export interface PicturedCrop {
  readonly asked: string;
  readonly bed: string;
  readonly isUnderCover: boolean;
  /** The plan picks it before dark: the picture shows what it is spared. */
  readonly isPicked: boolean;
  readonly verdict: Verdict;
  readonly damageProbability: number;
  readonly lossProbability: number;
  readonly damageBeginsC: number;
  /** Null where no number is known, and where it is that of another organ than the one drawn. */
  readonly killedC: number | null;
}

/** Something to do, at the time from which or by which to do it. */
export type NightFlag = { readonly atS: number } & (
  | { readonly does: 'cover'; readonly beds: readonly string[] }
  | { readonly does: 'pick'; readonly crops: readonly string[] }
  | { readonly does: 'heater'; readonly setC: number | null }
  | { readonly does: 'fan'; readonly fan: FanPlace; readonly run: boolean }
  | { readonly does: 'shut-vents' }
  | { readonly does: 'draw-curtain' }
);
