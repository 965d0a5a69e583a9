import { longwaveReflectance, type LongwaveOptics } from './film-optics.js';

/** A patch of floor under the cover, bare to it or with a semi-transparent row cover in between. */
export interface FloorPatch {
  readonly areaM2: number;
  readonly emissivity: number;
  readonly rowCover: LongwaveOptics | null;
}

/** The longwave enclosure of a film house: floor patches below, one or two films above, surroundings outside. */
export interface LongwaveEnclosure {
  readonly coverAreaM2: number;
  /** From inside to outside. */
  readonly films: readonly LongwaveOptics[];
  readonly patches: readonly FloorPatch[];
}

/** Where each emitting plane stands in the exchange matrix: all floors, all row covers, films, surroundings last. */
export interface PlaneIndex {
  readonly floor: (patch: number) => number;
  /** Only for patches that have a row cover. */
  readonly rowCover: (patch: number) => number;
  readonly film: (film: number) => number;
  readonly surroundings: number;
  readonly count: number;
}

export function planeIndex(enclosure: LongwaveEnclosure): PlaneIndex {
  const patches = enclosure.patches.length;
  const rank = enclosure.patches.map((_, p) => enclosure.patches.slice(0, p).filter((patch) => patch.rowCover).length);
  const covers = enclosure.patches.filter((patch) => patch.rowCover).length;
  const surroundings = patches + covers + enclosure.films.length;
  return {
    floor: (patch) => patch,
    rowCover: (patch) => patches + rank[patch]!,
    film: (film) => patches + covers + film,
    surroundings,
    count: surroundings + 1,
  };
}

/**
 * Exchange areas B between all planes of the enclosure: heat to n from m is B[n][m] sigma (Tm^4 - Tn^4).
 * Floor patches see only the cover above them, the cover sees the floor with F = floor/cover area and itself with 1 - F.
 * Radiosities are linear in the emissive powers, so one dense solution with a right side for each emitter gives all areas.
 * Units: m2, fractions; result row-major planes x planes, m2, symmetric with zero diagonal.
 * Valid: cover area at least the floor area, one or two films, optics that sum to at most 1.
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
  const { films, patches, coverAreaM2 } = enclosure;
  const floorAreaM2 = patches.reduce((sum, patch) => sum + patch.areaM2, 0);
  if (coverAreaM2 < floorAreaM2 * (1 - 1e-9)) throw new RangeError(`cover area ${coverAreaM2} m2 is smaller than the floor ${floorAreaM2} m2`);
  if (films.length < 1 || films.length > 2) throw new RangeError(`expected one or two films, got ${films.length}`);
  const plane = planeIndex(enclosure);
  const equations = radiosityEquations(enclosure, plane);
  const radiosity = solveDense(equations.coefficients, equations.emission, equations.unknowns, plane.count);
  const exchange = new Float64Array(plane.count * plane.count);
  const add = (n: number, areaTimesAbsorptivity: number, unknown: number): void => {
    for (let m = 0; m < plane.count; m += 1) exchange[n * plane.count + m]! += areaTimesAbsorptivity * radiosity[unknown * plane.count + m]!;
  };
  for (const { receiver, incident, weight } of equations.absorptions) add(receiver, weight, incident);
  for (const { receiver, weight } of equations.absorbedFromSurroundings) exchange[receiver * plane.count + plane.surroundings]! += weight;
  symmetrise(exchange, plane.count);
  const rows = (unknownOf: (patch: number) => number): Float64Array => {
    const shares = new Float64Array(patches.length * plane.count);
    patches.forEach((_, p) => shares.set(radiosity.subarray(unknownOf(p) * plane.count, (unknownOf(p) + 1) * plane.count), p * plane.count));
    return shares;
  };
  return { plane, areasM2: exchange, fromAbove: rows(equations.ontoFloor), fromBelow: rows(equations.fromFloor) };
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

interface RadiosityEquations {
  readonly unknowns: number;
  /** The unknown that falls on the floor of a patch, and the one that leaves it. */
  readonly ontoFloor: (patch: number) => number;
  readonly fromFloor: (patch: number) => number;
  readonly coefficients: Float64Array;
  readonly emission: Float64Array;
  readonly absorptions: readonly { receiver: number; incident: number; weight: number }[];
  readonly absorbedFromSurroundings: readonly { receiver: number; weight: number }[];
}

/**
 * Unknowns: for each patch the radiosity towards the cover; for a covered patch also those of the soil below and of the
 * row cover's underside; the downward radiosity of the inner film; with two films the two radiosities in the gap; and the
 * irradiance on the inner side of the cover.
 */
function radiosityEquations(enclosure: LongwaveEnclosure, plane: PlaneIndex): RadiosityEquations {
  const { films, patches, coverAreaM2 } = enclosure;
  const covered = patches.map((patch, p) => ({ patch, p })).filter(({ patch }) => patch.rowCover !== null);
  const up = (p: number): number => p;
  const soilUp = new Map(covered.map(({ p }, k) => [p, patches.length + 2 * k]));
  const coverDown = new Map(covered.map(({ p }, k) => [p, patches.length + 2 * k + 1]));
  const innerDown = patches.length + 2 * covered.length;
  const onCover = innerDown + 1;
  const gapUp = onCover + 1;
  const gapDown = onCover + 2;
  const unknowns = films.length === 2 ? onCover + 3 : onCover + 1;
  const coefficients = new Float64Array(unknowns * unknowns);
  const emission = new Float64Array(unknowns * plane.count);
  const absorptions: { receiver: number; incident: number; weight: number }[] = [];
  const absorbedFromSurroundings: { receiver: number; weight: number }[] = [];
  const set = (row: number, terms: readonly (readonly [number, number])[], sources: readonly (readonly [number, number])[]): void => {
    coefficients[row * unknowns + row] = 1;
    for (const [column, factor] of terms) coefficients[row * unknowns + column]! -= factor;
    for (const [source, factor] of sources) emission[row * plane.count + source]! += factor;
  };
  patches.forEach((patch, p) => {
    const reflect = 1 - patch.emissivity;
    if (!patch.rowCover) {
      set(up(p), [[innerDown, reflect]], [[plane.floor(p), patch.emissivity]]);
      absorptions.push({ receiver: plane.floor(p), incident: innerDown, weight: patch.areaM2 * patch.emissivity });
      return;
    }
    const { transmittance, emissivity } = patch.rowCover;
    const reflectance = longwaveReflectance(patch.rowCover);
    const [below, under] = [soilUp.get(p)!, coverDown.get(p)!];
    set(below, [[under, reflect]], [[plane.floor(p), patch.emissivity]]);
    set(under, [[below, reflectance], [innerDown, transmittance]], [[plane.rowCover(p), emissivity]]);
    set(up(p), [[innerDown, reflectance], [below, transmittance]], [[plane.rowCover(p), emissivity]]);
    absorptions.push({ receiver: plane.floor(p), incident: under, weight: patch.areaM2 * patch.emissivity });
    for (const incident of [below, innerDown]) absorptions.push({ receiver: plane.rowCover(p), incident, weight: patch.areaM2 * emissivity });
  });
  const floorAreaM2 = patches.reduce((sum, patch) => sum + patch.areaM2, 0);
  set(onCover, [...patches.map((patch, p) => [up(p), patch.areaM2 / coverAreaM2] as const), [innerDown, 1 - floorAreaM2 / coverAreaM2]], []);
  const inner = films[0]!;
  const innerWeight = coverAreaM2 * inner.emissivity;
  absorptions.push({ receiver: plane.film(0), incident: onCover, weight: innerWeight });
  if (films.length === 1) {
    set(innerDown, [[onCover, longwaveReflectance(inner)]], [[plane.film(0), inner.emissivity], [plane.surroundings, inner.transmittance]]);
    absorbedFromSurroundings.push({ receiver: plane.film(0), weight: innerWeight });
  } else {
    const outer = films[1]!;
    set(gapUp, [[gapDown, longwaveReflectance(inner)], [onCover, inner.transmittance]], [[plane.film(0), inner.emissivity]]);
    set(innerDown, [[onCover, longwaveReflectance(inner)], [gapDown, inner.transmittance]], [[plane.film(0), inner.emissivity]]);
    set(gapDown, [[gapUp, longwaveReflectance(outer)]], [[plane.film(1), outer.emissivity], [plane.surroundings, outer.transmittance]]);
    absorptions.push({ receiver: plane.film(0), incident: gapDown, weight: innerWeight });
    absorptions.push({ receiver: plane.film(1), incident: gapUp, weight: coverAreaM2 * outer.emissivity });
    absorbedFromSurroundings.push({ receiver: plane.film(1), weight: coverAreaM2 * outer.emissivity });
  }
  return {
    unknowns,
    ontoFloor: (p) => coverDown.get(p) ?? innerDown,
    fromFloor: (p) => soilUp.get(p) ?? up(p),
    coefficients,
    emission,
    absorptions,
    absorbedFromSurroundings,
  };
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
