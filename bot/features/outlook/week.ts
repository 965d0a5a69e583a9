import type { PlaceKey, Verdict } from '../../../engine/index.js';

/** The week ahead as data: temperatures in degrees C, nights by the local date on which they begin. */
export interface Week {
  readonly greenhouse: string;
  readonly weather: { readonly source: string; readonly stale: boolean };
  readonly nights: readonly WeekNight[];
  readonly spell: WeekSpell | null;
}

export interface WeekNight {
  readonly night: string;
  readonly day: string;
  readonly outside: WeekLow;
  /** As the house stands, and with all covers and the curtain used. */
  readonly inside: WeekLow;
  readonly crops: readonly WeekCrop[];
}

export interface WeekLow {
  readonly q10: number;
  readonly q50: number;
  readonly q90: number;
}

export interface WeekCrop {
  readonly crop: string;
  readonly asked: string;
  readonly bed: string;
  readonly usual: { readonly verdict: Verdict; readonly damageProbability: number };
  /** With its cover; null where the house has nothing to cover it with. */
  readonly covered: { readonly verdict: Verdict; readonly damageProbability: number } | null;
}

export interface WeekSpell {
  readonly from: string;
  readonly fromDay: string;
  readonly nights: number;
  readonly worst: string;
  readonly worstDay: string;
  readonly stores: readonly { readonly place: PlaceKey['place']; readonly firstC: number; readonly lastC: number }[];
  readonly prepare: readonly WeekPreparation[];
}

export type WeekPreparation =
  | { readonly what: 'cover-each-night' | 'get-cover'; readonly beds: readonly string[] }
  | { readonly what: 'fuel'; readonly amount: number; readonly unit: string; readonly nights: number }
  | { readonly what: 'pick'; readonly asked: string; readonly bed: string; readonly before: string; readonly beforeDay: string };
