import { dot, towardsSun, type Vector } from './room.js';
import type { SunLight } from './sun-clock.js';

/** Light on a plane, W/m2. */
export interface PlaneLight {
  /** From the sun and the bright sky close around it. */
  readonly beam: number;
  /** From the rest of the sky and from the ground. */
  readonly diffuse: number;
  readonly incidenceRad: number;
}

const SOLAR_CONSTANT_W_PER_M2 = 1361;
/** Weight of the zenith angle in the clearness (Perez1990). */
const ZENITH_WEIGHT = 1.041;
/** Lowest height for which brightness round the sun is told apart from the horizon (Perez1990: 85 degrees from the zenith). */
const LOWEST_SINE = Math.cos((85 * Math.PI) / 180);
/** Upper ends of the bins of clearness, and f11 f12 f13 f21 f22 f23 of each (Perez1990 table 6, all sites; as carried by pvlib). */
const BIN_ENDS: readonly number[] = [1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2];
const BINS: readonly (readonly [number, number, number, number, number, number])[] = [
  [-0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  [0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  [0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  [0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  [0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  [1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  [1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  [0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
];

/** How unevenly the sky shines: share that comes from round the sun, and brightness added along the horizon. */
export interface SkyShape {
  readonly circumsolarShare: number;
  readonly horizonShare: number;
}

const EVEN_SKY: SkyShape = { circumsolarShare: 0, horizonShare: 0 };

/** Shape of the sky from its clearness and brightness (Perez1990). */
export function skyShape({ sun, beamNormalWPerM2, diffuseWPerM2 }: SunLight): SkyShape {
  if (diffuseWPerM2 <= 0 || sun.altitudeRad <= 0) return EVEN_SKY;
  const zenithRad = Math.PI / 2 - sun.altitudeRad;
  const cube = ZENITH_WEIGHT * zenithRad ** 3;
  const clearness = ((diffuseWPerM2 + beamNormalWPerM2) / diffuseWPerM2 + cube) / (1 + cube);
  const brightness = (diffuseWPerM2 * airMass(zenithRad) * sun.distanceAu ** 2) / SOLAR_CONSTANT_W_PER_M2;
  const bin = BIN_ENDS.findIndex((end) => clearness < end);
  const [f11, f12, f13, f21, f22, f23] = BINS[bin < 0 ? BINS.length - 1 : bin]!;
  return { circumsolarShare: Math.max(0, f11 + f12 * brightness + f13 * zenithRad), horizonShare: f21 + f22 * brightness + f23 * zenithRad };
}

/** Relative air mass of the sea level atmosphere (Kasten1989; coefficients from memory). */
export function airMass(zenithRad: number): number {
  const zenithDeg = (zenithRad * 180) / Math.PI;
  return 1 / (Math.cos(zenithRad) + 0.50572 * (96.07995 - zenithDeg) ** -1.6364);
}

/** Light on a plane with an outward normal: sun, uneven sky (Perez1990), ground. */
export function lightOnPlane(light: SunLight, shape: SkyShape, outward: Vector, groundReflectance: number): PlaneLight {
  const towards = towardsSun(light.sun);
  const cosine = Math.max(0, dot(outward, towards));
  const skyShare = (1 + outward[2]) / 2;
  const flat = Math.hypot(outward[0], outward[1]);
  const round = (shape.circumsolarShare * cosine) / Math.max(LOWEST_SINE, towards[2]);
  const rest = Math.max(0, (1 - shape.circumsolarShare) * skyShare + shape.horizonShare * flat);
  return {
    beam: light.beamNormalWPerM2 * cosine + light.diffuseWPerM2 * round,
    diffuse: light.diffuseWPerM2 * rest + (1 - skyShare) * groundReflectance * light.globalWPerM2,
    incidenceRad: Math.acos(Math.min(1, cosine)),
  };
}
