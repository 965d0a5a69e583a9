/** One thing that is wrong with a greenhouse file. */
export interface GreenhouseFault {
  /** Where: "beds[1].cover.weight". */
  readonly field: string;
  /** What was wrong and what was expected, with an example. */
  readonly message: string;
}
