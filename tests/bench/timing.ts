/** Milliseconds of one call: the median of repeated calls after a warm-up, with the fastest and slowest tenth beside it. */
export interface Timing {
  readonly medianMs: number;
  readonly lowMs: number;
  readonly highMs: number;
}

export function timed(work: () => void, rounds: { warmUp: number; measured: number }): Timing {
  for (let i = 0; i < rounds.warmUp; i += 1) work();
  const times = Array.from({ length: rounds.measured }, () => {
    const startMs = performance.now();
    work();
    return performance.now() - startMs;
  }).sort((a, b) => a - b);
  const at = (share: number): number => times[Math.min(times.length - 1, Math.floor(share * times.length))]!;
  return { medianMs: at(0.5), lowMs: at(0.1), highMs: at(0.9) };
}
