/** Less than this share still under way counts as absorbed nowhere. */
const LEAST_SHARE = 1e-12;

/** Diffusely reflecting surfaces of a closed room. */
export interface DiffuseRoom {
  readonly areasM2: readonly number[];
  /** Row-major area times view factor. */
  readonly viewAreasM2: Float64Array;
  readonly absorptances: readonly number[];
  /** What is neither absorbed nor reflected leaves the room. */
  readonly reflectances: readonly number[];
}

/** What each surface absorbs of radiation that first falls on the surfaces as given, after all reflections. */
export function absorbedAfterBounces(room: DiffuseRoom, firstIncident: ArrayLike<number>): Float64Array {
  const count = room.areasM2.length;
  const absorbed = new Float64Array(count);
  let incident = Float64Array.from(firstIncident);
  const start = incident.reduce((sum, value) => sum + value, 0);
  for (let underWay = start; underWay > LEAST_SHARE * start; underWay = incident.reduce((sum, value) => sum + value, 0)) {
    const next = new Float64Array(count);
    for (let i = 0; i < count; i += 1) {
      absorbed[i]! += room.absorptances[i]! * incident[i]!;
      const leavingPerM2 = (room.reflectances[i]! * incident[i]!) / room.areasM2[i]!;
      for (let j = 0; j < count; j += 1) next[j]! += leavingPerM2 * room.viewAreasM2[i * count + j]!;
    }
    incident = next;
  }
  return absorbed;
}

/** Where radiation that a surface emits or lets in evenly first falls, for 1 W. */
export function firstFall(room: DiffuseRoom, from: number): Float64Array {
  const count = room.areasM2.length;
  return room.viewAreasM2.slice(from * count, (from + 1) * count).map((area) => area / room.areasM2[from]!);
}

/** Longwave exchange areas between grey opaque surfaces: heat to n from m is B[n][m] sigma (Tm^4 - Tn^4). Row-major, symmetric. */
export function greyExchangeAreasM2(areasM2: readonly number[], viewAreasM2: Float64Array, emittances: readonly number[]): Float64Array {
  const room: DiffuseRoom = { areasM2, viewAreasM2, absorptances: emittances, reflectances: emittances.map((emittance) => 1 - emittance) };
  const count = areasM2.length;
  const exchange = new Float64Array(count * count);
  areasM2.forEach((areaM2, i) => exchange.set(absorbedAfterBounces(room, firstFall(room, i)).map((share) => share * emittances[i]! * areaM2), i * count));
  for (let i = 0; i < count; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const mean = (exchange[i * count + j]! + exchange[j * count + i]!) / 2;
      exchange[i * count + j] = mean;
      exchange[j * count + i] = mean;
    }
  }
  return exchange;
}
