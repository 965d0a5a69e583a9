/** Time as the service measures it. Not the clock of the product: that one may run at a speed of its own. */
export interface RealTime {
  /** Milliseconds since some instant; never goes back. */
  nowMs(): number;
  /** Resolves after so long, or as soon as the signal says stop. */
  sleepMs(ms: number, signal?: AbortSignal): Promise<void>;
}

export const realTime: RealTime = {
  nowMs: () => performance.now(),
  sleepMs: (ms, signal) =>
    new Promise((resolve) => {
      if (signal?.aborted) return resolve();
      const end = (): void => {
        clearTimeout(timer);
        signal?.removeEventListener('abort', end);
        resolve();
      };
      const timer = setTimeout(end, ms);
      signal?.addEventListener('abort', end, { once: true });
    }),
};
