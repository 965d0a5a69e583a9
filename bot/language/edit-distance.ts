/** Letters to add, drop, change or swap with a neighbour (each pair swapped at most once) to get from one word to the other. */
export function editDistance(from: string, to: string): number {
  let twoBack: readonly number[] = [];
  let back: readonly number[] = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const now: number[] = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      const swapped = row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      const steps = [(back[column] ?? 0) + 1, (now[column - 1] ?? 0) + 1, (back[column - 1] ?? 0) + (same ? 0 : 1)];
      if (swapped) steps.push((twoBack[column - 2] ?? 0) + 1);
      now.push(Math.min(...steps));
    }
    twoBack = back;
    back = now;
  }
  return back[to.length] ?? 0;
}
