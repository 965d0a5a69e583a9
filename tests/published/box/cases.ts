import { STEFAN_BOLTZMANN_W_PER_M2K4, STANDARD_PRESSURE_PA } from '../../../engine/constants.js';
import { emptySources, stepImplicit } from '../../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor } from '../../../engine/network/network.js';
import { SECONDS_PER_DAY } from '../../../engine/units.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { addLayeredWall, type BoxBodies } from './box-bodies.js';
import type { Layer } from './box-case.js';
import { gapConvectionWPerM2K } from './glazing-bodies.js';
import { roomOf, type Room } from './room.js';
import { airMass, lightOnPlane, skyShape } from './sky-light-perez.js';
import { viewAreasM2 } from './view-areas.js';

/** The pieces of a box that are not the engine's, each against a closed form or a printed table. */
export const sources = ['Siegel2002', 'Carslaw1959', 'EN-673', 'Kasten1989', 'Perez1990'] as const;

const emptyRoom = (eastWestM: number, northSouthM: number, heightM: number): Room => roomOf({ size: { eastWestM, northSouthM, heightM }, windows: [] });
const FACE = { north: 0, east: 1, south: 2, west: 3, roof: 4, floor: 5 } as const;

function viewFactor(room: Room, from: keyof typeof FACE, to: keyof typeof FACE): number {
  const count = room.surfaces.length;
  return viewAreasM2(room)[FACE[from] * count + FACE[to]]! / room.surfaces[FACE[from]]!.areaM2;
}

/** Equal rectangles face to face: sides over distance (Siegel2002 appendix C; Incropera and DeWitt table 13.2). */
function facingFactor(x: number, y: number): number {
  const [x2, y2] = [1 + x * x, 1 + y * y];
  const terms = Math.log(Math.sqrt((x2 * y2) / (x2 + y * y))) + x * Math.sqrt(y2) * Math.atan(x / Math.sqrt(y2)) + y * Math.sqrt(x2) * Math.atan(y / Math.sqrt(x2)) - x * Math.atan(x) - y * Math.atan(y);
  return (2 / (Math.PI * x * y)) * terms;
}

const boxRoom = emptyRoom(8, 6, 2.7);
const viewTable: PublishedTable = {
  source: 'Siegel2002', title: 'view factors in a box, by rays', unit: '', tolerance: 0.001, toleranceReason: 'some thousand rays from each surface', origin: 'closed form',
  rows: [
    { name: 'cube, opposite faces', expected: facingFactor(1, 1), model: () => viewFactor(emptyRoom(1, 1, 1), 'floor', 'roof') },
    { name: 'cube, neighbours', expected: (1 - facingFactor(1, 1)) / 4, model: () => viewFactor(emptyRoom(1, 1, 1), 'floor', 'east') },
    { name: '8 x 6 x 2.7 m, floor to roof', expected: facingFactor(8 / 2.7, 6 / 2.7), model: () => viewFactor(boxRoom, 'floor', 'roof') },
    { name: '8 x 6 x 2.7 m, north to south', expected: facingFactor(8 / 6, 2.7 / 6), model: () => viewFactor(boxRoom, 'north', 'south') },
    { name: '8 x 6 x 2.7 m, east to west', expected: facingFactor(6 / 8, 2.7 / 8), model: () => viewFactor(boxRoom, 'east', 'west') },
  ],
};

type Complex = readonly [re: number, im: number];
const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const plus = ([a, b]: Complex, [c, d]: Complex): Complex => [a + c, b + d];

/** cosh and sinh of (1 + i) s. */
const coshOf = (s: number): Complex => [Math.cosh(s) * Math.cos(s), Math.sinh(s) * Math.sin(s)];
const sinhOf = (s: number): Complex => [Math.sinh(s) * Math.cos(s), Math.cosh(s) * Math.sin(s)];

/** Flux into a room of steady temperature for a swing of 1 K of the outer face with the period of a day, by transfer matrices (Carslaw1959 sec. 3.7). */
function periodicTransmittanceWPerM2K(layers: readonly Layer[]): number {
  let [a, b, c, d]: readonly [Complex, Complex, Complex, Complex] = [[1, 0], [0, 0], [0, 0], [1, 0]];
  for (const { thicknessM, conductivityWPerMK, densityKgPerM3, heatCapacityJPerKgK } of layers) {
    const depthM = Math.sqrt((conductivityWPerMK * SECONDS_PER_DAY) / (Math.PI * densityKgPerM3 * heatCapacityJPerKgK));
    const s = thicknessM / depthM;
    const [cosh, sinh] = [coshOf(s), sinhOf(s)];
    // sinh / (k q) and k q sinh with q = (1 + i)/depth.
    const kq = conductivityWPerMK / depthM;
    const over: Complex = times(sinh, [1 / (2 * kq), -1 / (2 * kq)]);
    const under: Complex = times(sinh, [kq, kq]);
    [a, b, c, d] = [plus(times(a, cosh), times(b, under)), plus(times(a, over), times(b, cosh)), plus(times(c, cosh), times(d, under)), plus(times(c, over), times(d, cosh))];
  }
  return 1 / Math.hypot(...b);
}

const CONTACT_W_PER_M2K = 1e6;
const DAYS_TO_SETTLE = 8;
const WALL_STEP_S = 60;

/** The same by the wall of the box: both faces held, the outer one swinging. */
function networkTransmittanceWPerM2K(layers: readonly Layer[]): number {
  const bodies: BoxBodies = { nodes: [], conductors: [], radiators: [] };
  const faces = addLayeredWall(bodies, { name: 'wall', areaM2: 1, layers });
  const size = bodies.nodes.length;
  const network = createNetwork({ nodes: bodies.nodes, boundaries: ['outer face', 'room'], conductors: [...bodies.conductors, steadyConductor(faces.outside, size, CONTACT_W_PER_M2K), steadyConductor(faces.inside, size + 1, CONTACT_W_PER_M2K)], radiators: [] });
  const MEAN_K = 290;
  const tempsK = new Float64Array(size + 2).fill(MEAN_K);
  const sources = emptySources(size);
  const last = bodies.conductors.at(-1)!;
  let [highest, lowest] = [-Infinity, Infinity];
  for (let timeS = WALL_STEP_S; timeS <= DAYS_TO_SETTLE * SECONDS_PER_DAY; timeS += WALL_STEP_S) {
    tempsK[size] = MEAN_K + Math.sin((2 * Math.PI * timeS) / SECONDS_PER_DAY);
    stepImplicit({ network, tempsK, stepS: WALL_STEP_S, sources, updateSources: () => undefined });
    if (timeS < (DAYS_TO_SETTLE - 1) * SECONDS_PER_DAY) continue;
    const flux = last.conductanceWPerK(0, 0) * (tempsK[last.a]! - tempsK[last.b]!);
    highest = Math.max(highest, flux);
    lowest = Math.min(lowest, flux);
  }
  return (highest - lowest) / 2;
}

const CONCRETE: Layer = { name: 'concrete', thicknessM: 0.1, conductivityWPerMK: 0.51, densityKgPerM3: 1400, heatCapacityJPerKgK: 1000 };
const FOAM: Layer = { name: 'foam', thicknessM: 0.0615, conductivityWPerMK: 0.04, densityKgPerM3: 10, heatCapacityJPerKgK: 1400 };
const BOARD: Layer = { name: 'board', thicknessM: 0.012, conductivityWPerMK: 0.16, densityKgPerM3: 950, heatCapacityJPerKgK: 840 };
const WALLS: readonly (readonly [string, readonly Layer[]])[] = [
  ['concrete', [CONCRETE]],
  ['foam on concrete', [FOAM, CONCRETE]],
  ['concrete on foam on board', [CONCRETE, FOAM, BOARD]],
  ['concrete on concrete', [CONCRETE, { ...CONCRETE, name: 'second' }]],
];
const wallTable: PublishedTable = {
  source: 'Carslaw1959', title: 'walls in layers: flux inside for a daily swing of the outer face', unit: 'W/(m2 K)', tolerance: 0.02, relative: true, toleranceReason: 'cells of 25 mm', origin: 'closed form',
  rows: WALLS.map(([name, layers]): PublishedRow => ({ name, expected: periodicTransmittanceWPerM2K(layers), model: once(() => networkTransmittanceWPerM2K(layers)) })),
};

/** U of two panes of 4 mm as windows are rated: mean 283 K, 15 K between the panes, films 7.7 and 25 W/(m2 K), emissivity 0.837. */
function ratedUValueWPerM2K(widthM: number): number {
  const meanK = 283;
  const longwave = (4 * STEFAN_BOLTZMANN_W_PER_M2K4 * meanK ** 3) / (2 / 0.837 - 1);
  const gap = longwave + gapConvectionWPerM2K({ widthM, pressurePa: STANDARD_PRESSURE_PA }, meanK + 7.5, meanK - 7.5);
  return 1 / (1 / 7.7 + 1 / 25 + 2 * 0.004 + 1 / gap);
}

const gapTable: PublishedTable = {
  source: 'EN-673', title: 'uncoated double glazing with air, by width of the gap (as printed in EN ISO 10077-1)', unit: 'W/(m2 K)', tolerance: 0.06, toleranceReason: 'printed to 0.1', origin: 'from memory',
  rows: ([[6, 3.3], [8, 3.1], [12, 2.8], [16, 2.7], [20, 2.7]] as const).map(([widthMm, expected]) => ({ name: `${widthMm} mm`, expected, model: () => ratedUValueWPerM2K(widthMm / 1000) })),
};

const airMassTable: PublishedTable = {
  source: 'Kasten1989', title: 'relative air mass', unit: '', tolerance: 0.0005, toleranceReason: 'printed to four digits', origin: 'library run',
  rows: ([[0, 0.9997], [60, 1.9943], [75, 3.8129], [80, 5.586], [85, 10.3058]] as const).map(([zenithDeg, expected]) => ({ name: `${zenithDeg} degrees from the zenith`, expected, model: () => airMass((zenithDeg * Math.PI) / 180) })),
};

/** Whatever the shape of the sky, a flat plane gets what the weather file says. */
const flatPlaneTable: PublishedTable = {
  source: 'Perez1990', title: 'uneven sky on the flat: beam and diffuse of the weather again', unit: 'W/m2', tolerance: 1e-9, toleranceReason: 'identity', origin: 'closed form',
  rows: ([[50, 800, 90], [30, 300, 250], [15, 0, 60], [8, 500, 40]] as const).map(([altitudeDeg, beamNormalWPerM2, diffuseWPerM2]): PublishedRow => {
    const altitudeRad = (altitudeDeg * Math.PI) / 180;
    const globalWPerM2 = beamNormalWPerM2 * Math.sin(altitudeRad) + diffuseWPerM2;
    const light = { sun: { altitudeRad, azimuthRad: 2, distanceAu: 1 }, beamNormalWPerM2, diffuseWPerM2, globalWPerM2 };
    const onFlat = (): number => {
      const { beam, diffuse } = lightOnPlane(light, skyShape(light), [0, 0, 1], 0.2);
      return beam + diffuse;
    };
    return { name: `sun at ${altitudeDeg} degrees, beam ${beamNormalWPerM2}, diffuse ${diffuseWPerM2}`, expected: globalWPerM2, model: onFlat };
  }),
};

export const tables: readonly PublishedTable[] = [viewTable, wallTable, gapTable, airMassTable, flatPlaneTable];
