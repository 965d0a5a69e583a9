/** What the grower has shut, covered and lit at an instant. */
export interface Controls {
  /** One for each floor column; only columns with a row cover can be covered. */
  readonly coverOn: readonly boolean[];
  /** By day vents open by themselves or by hand when it gets warm; once shut for the night they stay shut. */
  readonly ventsMayOpen: boolean;
  readonly heaterOn: boolean;
  /** Thermostat setting while on; null runs at full power. */
  readonly heaterSetK: number | null;
}

/** Controls through time. */
export type ControlPlan = (timeS: number) => Controls;
