import { SECONDS_PER_DAY, SECONDS_PER_HOUR, SECONDS_PER_MINUTE } from '../../../engine/index.js';
import type { ServiceRequest } from './request.js';

/** Weighted calls that the free service allows one address, each counted anew with the wall clock's minute and hour and the UTC day. */
const FREE_LIMITS = [
  { windowS: SECONDS_PER_MINUTE, calls: 600 },
  { windowS: SECONDS_PER_HOUR, calls: 5_000 },
  { windowS: SECONDS_PER_DAY, calls: 10_000 },
] as const;
/** What only makes an answer better may take so much: without a forecast there is no advice at all. */
const SHARE_FOR_EXTRAS = 0.5;

/** Counts what was asked as the service bills it, so that members of the ensemble do not eat up the forecasts of others. */
export class CallBudget {
  private readonly spent = FREE_LIMITS.map(() => ({ window: Number.NaN, calls: 0 }));

  /** A paid plan has limits of its own, by the month. */
  constructor(private readonly isFree: boolean) {}

  spend({ weight }: Pick<ServiceRequest, 'weight'>, nowS: number): void {
    this.inWindows(nowS).forEach((window) => (window.calls += weight));
  }

  /** Whether something that could be left out leaves enough for what cannot. */
  hasRoomFor({ weight }: Pick<ServiceRequest, 'weight'>, nowS: number): boolean {
    return !this.isFree || this.inWindows(nowS).every(({ calls }, i) => calls + weight <= SHARE_FOR_EXTRAS * FREE_LIMITS[i]!.calls);
  }

  private inWindows(nowS: number): readonly { window: number; calls: number }[] {
    this.spent.forEach((one, i) => {
      const window = Math.floor(nowS / FREE_LIMITS[i]!.windowS);
      if (one.window !== window) Object.assign(one, { window, calls: 0 });
    });
    return this.spent;
  }
}
