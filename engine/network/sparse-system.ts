/**
 * A linear system whose pattern of couplings stays the same from step to step: the order of elimination and the fill-in are
 * worked out once, then each solution touches only the entries that exist. Soil columns are chains, so nearly nothing fills in.
 */
export interface SparseSystem {
  readonly size: number;
  /** Row-major size x size; entries outside the pattern stay zero. */
  readonly matrix: Float64Array;
  readonly rightSide: Float64Array;
  /** Elimination order and, for each step of it, the rows still to come that are coupled. */
  readonly order: readonly number[];
  readonly coupled: readonly (readonly number[])[];
}

/** Minimum-degree ordering with symbolic elimination. */
export function sparseSystem(size: number, couplings: readonly (readonly [number, number])[]): SparseSystem {
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of couplings) {
    if (a === b) continue;
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  }
  const left = new Set(Array.from({ length: size }, (_, i) => i));
  const order: number[] = [];
  const coupled: number[][] = [];
  while (left.size > 0) {
    let next = -1;
    for (const i of left) if (next < 0 || neighbours[i]!.size < neighbours[next]!.size) next = i;
    const around = [...neighbours[next]!];
    for (const a of around) {
      neighbours[a]!.delete(next);
      for (const b of around) if (a !== b) neighbours[a]!.add(b);
    }
    left.delete(next);
    order.push(next);
    coupled.push(around);
  }
  return { size, matrix: new Float64Array(size * size), rightSide: new Float64Array(size), order, coupled };
}

/**
 * Solves the system in place; the matrix and right side are consumed, the solution is left in `rightSide`.
 * No pivoting: the matrices here are diagonally dominant (every conductance stands on the diagonal too).
 */
export function solveInPlace(system: SparseSystem): Float64Array {
  const { size, matrix, rightSide, order, coupled } = system;
  for (let step = 0; step < size; step += 1) {
    const k = order[step]!;
    const around = coupled[step]!;
    const pivot = matrix[k * size + k]!;
    for (const i of around) {
      const factor = matrix[i * size + k]! / pivot;
      if (factor === 0) continue;
      for (const j of around) matrix[i * size + j]! -= factor * matrix[k * size + j]!;
      rightSide[i]! -= factor * rightSide[k]!;
    }
  }
  for (let step = size - 1; step >= 0; step -= 1) {
    const k = order[step]!;
    let sum = rightSide[k]!;
    for (const j of coupled[step]!) sum -= matrix[k * size + j]! * rightSide[j]!;
    rightSide[k] = sum / matrix[k * size + k]!;
  }
  return rightSide;
}
