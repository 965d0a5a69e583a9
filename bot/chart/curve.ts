import type { Point } from './rectangle.js';

/** A line of the picture that runs from left to right, with its height at every whole pixel across. */
export interface Curve {
  readonly name: string;
  readonly points: readonly Point[];
  /** How much worse than others it is behind letters. */
  readonly weight: number;
  readonly firstX: number;
  readonly heights: Float64Array;
}

/** A curve through points in order of x. */
export function curveThrough(name: string, points: readonly Point[], weight = 1): Curve {
  const [first, last] = [points[0]!, points.at(-1)!];
  const firstX = Math.ceil(first.x);
  const heights = new Float64Array(Math.max(0, Math.floor(last.x) - firstX + 1));
  let right = 1;
  for (let i = 0; i < heights.length; i += 1) {
    const x = firstX + i;
    while (right < points.length - 1 && points[right]!.x < x) right += 1;
    const [a, b] = [points[right - 1] ?? first, points[right] ?? last];
    heights[i] = b.x === a.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
  }
  return { name, points, weight, firstX, heights };
}

/** Heights between which something lies. */
export interface Span {
  readonly topY: number;
  readonly bottomY: number;
}

/** Between which heights a curve runs over a stretch; null where it does not reach it. */
export function spanOfY({ firstX, heights }: Curve, fromX: number, toX: number): Span | null {
  let [topY, bottomY] = [Infinity, -Infinity];
  for (let i = Math.max(0, Math.floor(fromX - firstX)); i <= Math.min(heights.length - 1, Math.ceil(toX - firstX)); i += 1) {
    topY = Math.min(topY, heights[i]!);
    bottomY = Math.max(bottomY, heights[i]!);
  }
  return topY === Infinity ? null : { topY, bottomY };
}
