import type { PlaceKey, Verdict } from '../../../engine/index.js';
import type { WeatherFailure } from '../../ports.js';

/** One advisory as it is issued, stored and printed: temperatures in degrees C, times ISO 8601 with offset. */
export interface Advisory {
  readonly greenhouse: string;
  readonly issuedAt: string;
  /** Local date on which the night begins. */
  readonly night: string;
  readonly weather: { readonly source: string; readonly issuedAt: string; readonly stale: boolean };
  /** Under the recommended plan. */
  readonly places: readonly AdvisoryPlace[];
  readonly crops: readonly AdvisoryCrop[];
  readonly plan: { readonly id: string; readonly actions: readonly AdvisoryAction[]; readonly effortMinutes: number; readonly cost: number; readonly heater: AdvisoryHeater | null };
  readonly alternatives: readonly AdvisoryAlternative[];
  readonly morning: readonly AdvisoryMorning[];
  readonly reasons: readonly AdvisoryReason[];
  readonly cautions: readonly { readonly code: CautionCode }[];
  readonly text: string;
}

export interface AdvisoryPlace {
  readonly place: PlaceKey['place'];
  readonly bed?: string;
  readonly lowC: { readonly mean: number; readonly q10: number; readonly q50: number; readonly q90: number };
  readonly lowAt: string;
}

export interface AdvisoryCrop {
  readonly crop: string;
  readonly asked: string;
  readonly bed: string;
  readonly damageProbability: number;
  readonly lossProbability: number;
  readonly expectedDamage: number;
  readonly verdict: Verdict;
  readonly damageBeginsC: number;
  readonly killedC: number | null;
  readonly hardening: number;
  /** The place that the thresholds were compared with, and its low over the crop's own window. */
  readonly judgedAt: AdvisoryPlace['place'];
  readonly judgedLowC: number;
  /** Weakest grade of the numbers behind the thresholds. */
  readonly grade: 'published' | 'secondary' | 'from memory';
  readonly isClassFallback: boolean;
  /** Cold above freezing that harms this crop: its threshold and the hours below it; null where it does not matter or is not known. */
  readonly chill: { readonly thresholdC: number; readonly hours: number } | null;
  readonly pickedBefore: boolean;
}

export interface AdvisoryAction {
  readonly action: 'cover' | 'vents' | 'curtain' | 'tube-fan' | 'fan' | 'heater' | 'harvest';
  /** Bed; "shut", "draw"; for a fan that does not blow through tubes: "stones", "compost" or "air". */
  readonly target?: string;
  /** Of a fan: switch it on or off. */
  readonly run?: boolean;
  readonly crop?: string;
  readonly from?: string;
  readonly until?: string;
  readonly setC?: number | null;
  readonly by?: string;
}

export interface AdvisoryHeater {
  readonly kind: string;
  readonly powerW: number;
  /** Energy over power: how long it would burn at full power. */
  readonly fullPowerHours: number;
  /** The low to expect where the heater runs flat out and still loses its setting; null where it holds it. */
  readonly expectedInsideC: number | null;
  readonly energyKwh: number;
  readonly fuel: number;
  readonly fuelUnit: string;
  readonly cost: number;
  /** The price is a placeholder: the grower gave none. */
  readonly priceIsPlaceholder: boolean;
}

export interface AdvisoryAlternative {
  readonly actions: readonly AdvisoryAction[];
  readonly expectedLoss: number;
  readonly places: readonly AdvisoryPlace[];
  readonly crops: readonly AdvisoryCrop[];
}

export interface AdvisoryMorning {
  readonly action: 'uncover' | 'vents' | 'curtain' | 'clear-snow' | 'harvest';
  readonly target?: string;
  readonly from: string;
}

export type FanName = 'tubes' | 'stones' | 'compost' | 'air';
export type TroubleCode = 'snow' | 'power-out' | 'blower-off' | 'opening' | 'fans-dead' | 'fuel-out';

export type CautionCode = 'heater-electric' | 'fan-electric' | 'flame-vented' | 'flame-unvented' | 'unvented-left-out' | 'flame-not-advised' | 'frozen-leaves' | 'snow-on-film' | 'not-a-promise';

export type AdvisoryReason =
  | { readonly code: 'counts-on'; readonly coveredBeds: readonly string[]; readonly heaterSetC: number | null; readonly heaterOn: boolean; readonly curtainDrawn: boolean; readonly fans: readonly FanName[] }
  | { readonly code: 'trouble'; readonly items: readonly TroubleCode[] }
  | { readonly code: 'fan'; readonly fan: FanName; readonly advice: 'run' | 'leave-as-it-is' | 'stop' | 'stands-still' | 'no-current'; readonly worthC: number; readonly batteryShort: boolean }
  | { readonly code: 'burns-out'; readonly hours: number; readonly at: string }
  | { readonly code: 'if-power-fails'; readonly stops: readonly ('heater' | 'fan' | 'blower')[]; readonly insideLowC: number; readonly crops: readonly { readonly asked: string; readonly damageProbability: number }[] }
  | { readonly code: 'clear-and-calm' | 'cloudy-or-windy' | 'partly-clear' }
  | AdvisoryHeat
  | { readonly code: 'choice'; readonly why: string }
  | { readonly code: 'plan-helps'; readonly crop: string; readonly asked: string; readonly bed: string; readonly withoutDamageProbability: number; readonly withDamageProbability: number }
  | { readonly code: 'not-needed-if-milder'; readonly outsideLowC: number }
  | { readonly code: 'not-enough-if-colder'; readonly outsideLowC: number; readonly crops: readonly string[] }
  | { readonly code: 'too-late'; readonly actions: readonly Pick<AdvisoryAction, 'action' | 'target' | 'crop' | 'setC'>[] }
  | { readonly code: 'class-fallback'; readonly asked: string; readonly hardinessClass: string }
  /** `kept`: readings that are there all the same. */
  | { readonly code: 'not-learned-yet'; readonly kept?: number }
  | { readonly code: 'learned'; readonly nights: number }
  | { readonly code: 'short-history'; readonly hours: number }
  | { readonly code: 'ground-guessed' }
  | { readonly code: 'stale-weather'; readonly ageHours: number; readonly cause: string }
  | { readonly code: 'second-weather'; readonly failure: WeatherFailure; readonly cause: string }
  | { readonly code: 'weather-note'; readonly note: string; readonly detail: string }
  | { readonly code: 'demo-weather' };

/** Where heat goes and comes from, as shares of all that leaves. */
export type HeatTo = 'sky' | 'outside' | 'gaps';
export type HeatFrom = 'ground' | 'water' | 'stones' | 'heater' | 'compost' | 'outside';

/** What makes the night so cold, from its own simulation under the plan. */
export interface AdvisoryHeat {
  readonly code: 'heat';
  /** Mean of the night. */
  readonly lostW: number;
  readonly to: Readonly<Record<HeatTo, number>>;
  readonly from: Readonly<Record<HeatFrom, number>>;
  readonly cloud: number;
  readonly windMPerS: number;
  /** Half of the range in which the low outside lies on 8 nights in 10, for the forecast's own error. */
  readonly forecastOffC: number;
}
