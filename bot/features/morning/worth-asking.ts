/** What is known of the readings so far and of the night that is over. */
export interface MorningFacts {
  /** Mornings with a reading, ever. */
  readonly morningsRead: number;
  /** Questions of the past seven days. */
  readonly askedThisWeek: number;
  /** The night before had work to do, or a crop that was not safe. */
  readonly nightMattered: boolean;
  /** Clear and calm, or colder than most: such nights teach most. */
  readonly nightTeaches: boolean;
}

/** Decision rule of this project: every morning at first, then what teaches, seldom enough to be answered. */
const FIRST_MORNINGS = 14;
const MOST_A_WEEK = 2;

/** Is a reading of this morning worth a question? */
export function worthAsking({ morningsRead, askedThisWeek, nightMattered, nightTeaches }: MorningFacts): boolean {
  if (morningsRead < FIRST_MORNINGS || nightMattered) return true;
  return nightTeaches && askedThisWeek < MOST_A_WEEK;
}
