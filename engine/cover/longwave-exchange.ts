import { planeIndex, type LongwaveEnclosure, type PlaneIndex } from './longwave-enclosure.js';
import { radiosityEquations, type RadiosityEquations } from './radiosity.js';

export const MOST_FILMS = 5;

/**
 * Exchange areas B between all planes of the enclosure: heat to n from m is B[n][m] sigma (Tm^4 - Tn^4).
 * Floor patches see only what lies above them and the bodies that stand among them, the cover sees the opening with F = opening/cover area and itself with 1 - F.
 * Radiosities are linear in the emissive powers, so one dense solution with a right side for each emitter gives all areas.
 * Units: m2, fractions; result row-major planes x planes, m2, symmetric with zero diagonal.
 * Valid: cover area at least the opening of floor and wall, bodies that show no more than the floor has, one to five films, optics that sum to at most 1.
 * Outside: throws RangeError.
 * Source: net-radiation method for semi-transparent grey planes (Siegel2002 ch. 5 and 17, from memory). Assumes grey films:
 *   two dry polyethylene layers really pass more than the square of one, because polyethylene absorbs in bands.
 */
export function longwaveExchangeAreasM2(enclosure: LongwaveEnclosure): Float64Array {
  return longwaveExchange(enclosure).areasM2;
}

/** Exchange areas, and what a leaf over each patch sees: irradiance = sum over planes of share x sigma T^4. */
export interface LongwaveExchange {
  readonly plane: PlaneIndex;
  readonly areasM2: Float64Array;
  /** Row-major patches x planes. */
  readonly fromAbove: Float64Array;
  readonly fromBelow: Float64Array;
}

/**
 * As longwaveExchangeAreasM2, with the shares that reach a small body close to each floor patch (a leaf under the row cover, if there is one).
 * Units: m2, fractions.
 * Valid: as longwaveExchangeAreasM2.
 * Outside: throws RangeError.
 * Source: as longwaveExchangeAreasM2.
 */
export function longwaveExchange(enclosure: LongwaveEnclosure): LongwaveExchange {
  checkEnclosure(enclosure);
  const plane = planeIndex(enclosure);
  const equations = radiosityEquations(enclosure, plane);
  const { unknowns } = equations;
  const { matrix, emission } = dense(equations, plane.count);
  const radiosity = solveDense(matrix, emission, unknowns, plane.count);
  const exchange = new Float64Array(plane.count * plane.count);
  for (const { receiver, incident, weightM2 } of equations.absorptions) {
    if (incident === 'surroundings') exchange[receiver * plane.count + plane.surroundings]! += weightM2;
    else for (let m = 0; m < plane.count; m += 1) exchange[receiver * plane.count + m]! += weightM2 * radiosity[incident * plane.count + m]!;
  }
  symmetrise(exchange, plane.count);
  const rows = (unknownOfPatch: readonly number[]): Float64Array => {
    const shares = new Float64Array(unknownOfPatch.length * plane.count);
    unknownOfPatch.forEach((unknown, p) => shares.set(radiosity.subarray(unknown * plane.count, (unknown + 1) * plane.count), p * plane.count));
    return shares;
  };
  return { plane, areasM2: exchange, fromAbove: rows(equations.ontoFloor), fromBelow: rows(equations.fromFloor) };
}

function checkEnclosure({ coverAreaM2, films, patches, bodies = [], wall }: LongwaveEnclosure): void {
  const floorAreaM2 = patches.reduce((sum, patch) => sum + patch.areaM2, 0);
  const shownM2 = bodies.reduce((sum, body) => sum + body.shownM2, 0);
  if (shownM2 > floorAreaM2) throw new RangeError(`bodies show ${shownM2} m2 to the cover, more than the floor under them has, ${floorAreaM2} m2`);
  const openingAreaM2 = wall?.openingAreaM2 ?? floorAreaM2;
  if (coverAreaM2 < openingAreaM2 * (1 - 1e-9)) throw new RangeError(`cover area ${coverAreaM2} m2 is smaller than the opening under it, ${openingAreaM2} m2`);
  if (films.length < 1 || films.length > MOST_FILMS) throw new RangeError(`expected one to ${MOST_FILMS} films, got ${films.length}`);
}

function dense({ unknowns, rows }: RadiosityEquations, planes: number): { matrix: Float64Array; emission: Float64Array } {
  const matrix = new Float64Array(unknowns * unknowns);
  const emission = new Float64Array(unknowns * planes);
  for (const { unknown, terms, emissions } of rows) {
    matrix[unknown * unknowns + unknown]! += 1;
    for (const [other, factor] of terms) matrix[unknown * unknowns + other]! -= factor;
    for (const [plane, factor] of emissions) emission[unknown * planes + plane]! += factor;
  }
  return { matrix, emission };
}

/** Reciprocity holds exactly for the exact solution; averaging the two halves removes rounding, so that energy is conserved to the last bit. */
function symmetrise(exchange: Float64Array, count: number): void {
  const s = count - 1;
  for (let n = 0; n < count; n += 1) {
    exchange[n * count + n] = 0;
    for (let m = n + 1; m < count; m += 1) {
      // The surroundings' own row is never computed: it mirrors what the others take from it.
      const area = m === s ? exchange[n * count + m]! : (exchange[n * count + m]! + exchange[m * count + n]!) / 2;
      exchange[n * count + m] = area;
      exchange[m * count + n] = area;
    }
  }
}

/** Gaussian elimination without pivoting (the radiosity matrix is diagonally dominant), all right sides at once, in place. */
function solveDense(matrix: Float64Array, rightSides: Float64Array, size: number, columns: number): Float64Array {
  for (let k = 0; k < size; k += 1) {
    const pivot = matrix[k * size + k]!;
    for (let i = 0; i < size; i += 1) {
      const entry = matrix[i * size + k]!;
      if (i === k || entry === 0) continue;
      const factor = entry / pivot;
      for (let j = k; j < size; j += 1) matrix[i * size + j]! -= factor * matrix[k * size + j]!;
      for (let j = 0; j < columns; j += 1) rightSides[i * columns + j]! -= factor * rightSides[k * columns + j]!;
    }
  }
  for (let i = 0; i < size; i += 1) {
    const pivot = matrix[i * size + i]!;
    for (let j = 0; j < columns; j += 1) rightSides[i * columns + j]! /= pivot;
  }
  return rightSides;
}
