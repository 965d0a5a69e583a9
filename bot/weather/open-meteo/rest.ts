import { SECONDS_PER_MINUTE } from '../../../engine/index.js';

const FAILURES_BEFORE_REST = 3;
const REST_S = 15 * SECONDS_PER_MINUTE;

/** When a service is left alone: after failures in a row (a circuit breaker), or because it said how long. */
export class Rest {
  private failures = 0;
  private untilS = Number.NEGATIVE_INFINITY;
  private cause = '';

  /** Until when and why not to ask; null when asking is all right. */
  at(nowS: number): { readonly untilS: number; readonly cause: string } | null {
    return nowS < this.untilS ? { untilS: this.untilS, cause: this.cause } : null;
  }

  succeeded(): void {
    this.failures = 0;
  }

  /** After the rest one call is let through; if it fails too, the next rest begins at once. */
  failed(nowS: number, cause: string): void {
    this.failures += 1;
    if (this.failures >= FAILURES_BEFORE_REST) this.until(nowS + REST_S, `${this.failures} failures in a row, the last: ${cause}`);
  }

  until(untilS: number, cause: string): void {
    this.untilS = untilS;
    this.cause = cause;
  }
}
