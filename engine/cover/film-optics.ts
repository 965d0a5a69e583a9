/** Longwave behaviour of a plane: transmittance + emissivity + reflectance = 1, the same from both sides. */
export interface LongwaveOptics {
  readonly transmittance: number;
  readonly emissivity: number;
}

/** What a plane sends back. Units: 0-1. Valid: optics whose parts sum to at most 1. Outside: not checked. Source: energy balance of a plane, the three shares sum to 1. */
export const longwaveReflectance = (optics: LongwaveOptics): number => 1 - optics.transmittance - optics.emissivity;

/** Water or frost on a film at which its longwave behaviour is half-way to wet (from memory: a thin dropwise film; project estimate). */
const HALF_WET_KG_PER_M2 = 0.015;
/** The most that stays on a film before it runs off (project estimate, 80 g/m2). */
export const MOST_WATER_ON_FILM_KG_PER_M2 = 0.08;

/**
 * Share of the way from dry to wet film behaviour for an amount of water or frost on it. Blended and never switched: a hard
 * switch makes the solution flip between two states.
 * Units: kg/m2 in, 0-1 out.
 * Valid: 0 and more.
 * Outside: negative amounts count as none.
 * Source: project estimate (no published curve found).
 */
export function wetFraction(waterKgPerM2: number): number {
  const water = Math.max(0, waterKgPerM2);
  return water / (water + HALF_WET_KG_PER_M2);
}

/** The blend is known no better: in so many steps, films that are alike exchange alike heat, and it is worked out once. */
const BLEND_STEPS = 500;

/**
 * Longwave behaviour of a film with water or frost on it, in steps of a fivehundredth of the way from dry to wet.
 * Units: dimensionless optics, kg/m2.
 * Valid: optics whose parts sum to at most 1.
 * Outside: not checked here; film data are checked when they are read.
 * Source: Feuilloley1996 and Wisconsin-GreenhouseEnergy for the direction (water cuts the loss of plastic); blend is ours.
 */
export function blendOptics(dry: LongwaveOptics, wet: LongwaveOptics, waterKgPerM2: number): LongwaveOptics {
  const share = Math.round(wetFraction(waterKgPerM2) * BLEND_STEPS) / BLEND_STEPS;
  return {
    transmittance: dry.transmittance + share * (wet.transmittance - dry.transmittance),
    emissivity: dry.emissivity + share * (wet.emissivity - dry.emissivity),
  };
}
