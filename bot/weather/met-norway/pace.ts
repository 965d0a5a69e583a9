export interface PaceOptions {
  readonly mostPerSecond: number;
  /** Milliseconds of a clock that is never put back. */
  readonly monotonicMs: () => number;
  readonly sleepS: (seconds: number) => Promise<void>;
}

const MS_PER_S = 1000;

/** Keeps requests apart, so that many places at once do not become a burst. */
export class Pace {
  private nextMs = Number.NEGATIVE_INFINITY;

  constructor(private readonly options: PaceOptions) {}

  /** Returns when the next request may go out. Callers take turns: one waits at a time. */
  async turn(): Promise<void> {
    const { mostPerSecond, monotonicMs, sleepS } = this.options;
    const waitMs = this.nextMs - monotonicMs();
    if (waitMs > 0) await sleepS(waitMs / MS_PER_S);
    this.nextMs = monotonicMs() + MS_PER_S / mostPerSecond;
  }
}
