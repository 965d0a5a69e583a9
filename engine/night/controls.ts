/** What the grower has shut, covered and lit at an instant, and what has gone wrong. */
export interface Controls {
  /** One for each floor column; only columns with a row cover can be covered. */
  readonly coverOn: readonly boolean[];
  readonly curtainDrawn: boolean;
  /** By day vents open by themselves or by hand when it gets warm; once shut for the night they stay shut. */
  readonly ventsMayOpen: boolean;
  readonly heaterOn: boolean;
  /** Thermostat setting while on; null runs at full power. */
  readonly heaterSetK: number | null;
  /** Fans that are switched on; one that the sun drives runs only while it shines. */
  readonly fansOn: Readonly<Record<FanPlace, boolean>>;
  readonly troubles: Troubles;
}

/** Where a fan blows: through the buried tubes, through the stone box, through the heap, or only stirring the air. */
export const FAN_PLACES = ['tubes', 'stone-box', 'heap', 'air'] as const;
export type FanPlace = (typeof FAN_PLACES)[number];
export const NO_FANS: Readonly<Record<FanPlace, boolean>> = { tubes: false, 'stone-box': false, heap: false, air: false };

/** What lies on the roof or does not work. */
export interface Troubles {
  readonly roofSnowM: number;
  readonly powerOut: boolean;
  readonly blowerOff: boolean;
  /** Holes and open doors. */
  readonly openingM2: number;
  readonly fansDead: boolean;
}

export const NO_TROUBLES: Troubles = { roofSnowM: 0, powerOut: false, blowerOff: false, openingM2: 0, fansDead: false };

/** Controls through time. */
export type ControlPlan = (timeS: number) => Controls;
