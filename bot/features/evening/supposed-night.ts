import { celsiusToKelvin, FAN_PLACES, kelvinToCelsius, supposeNight, type EveningInput, type EveningPlan, type FanPlace, type Greenhouse, type NightChoices } from '../../../engine/index.js';
import type { StoredAction } from '../../ports.js';
import { pastControls } from './past-controls.js';

/** The night otherwise: another house, or the same with something else done in it. Plain data. */
export interface Supposing {
  readonly greenhouse: Greenhouse;
  /** All covers laid, or none. */
  readonly covers?: boolean;
  readonly curtain?: boolean;
  /** `null` runs at full power. */
  readonly heater?: false | { readonly setC: number | null };
  readonly fans?: Partial<Record<FanPlace, boolean>>;
  readonly ventsShut?: true;
}

/** What becomes of the night, beside the plan for it: differences in K, warmer positive; lows in degrees C. */
export interface Supposed {
  readonly changes: readonly { readonly at: 'inside' | 'plants'; readonly bed: string | null; readonly meanK: number; readonly q10K: number; readonly q90K: number }[];
  readonly insideLowC: number;
  readonly crops: readonly SupposedCrop[];
  /** Energy of the heater, kWh, beyond that of the plan. */
  readonly heatKwh: number;
}

export interface SupposedCrop {
  readonly asked: string;
  readonly bed: string;
  readonly before: number;
  readonly after: number;
}

const JOULES_PER_KWH = 3_600_000;

/** The night under the chosen plan beside the same night otherwise. */
export function supposedNight(supposing: Supposing, evening: { input: EveningInput; plan: EveningPlan; actions: readonly StoredAction[] }): Supposed {
  const { input, plan, actions } = evening;
  const { greenhouse } = supposing;
  const { chosen, standing, house } = plan;
  const coveredBeds = house.columns.filter((column, c) => standing.coverOn[c] || chosen.coveredBeds.includes(column.name)).map(({ name }) => name);
  const { issuedPlanId: _, ...otherwise } = input;
  const night = supposeNight(
    { ...otherwise, greenhouse, pastControls: pastControls(actions, greenhouse), doneTonight: doneOtherwise(supposing, input) },
    choicesOtherwise(supposing, evening),
    { greenhouse: input.greenhouse, ...(input.pastControls ? { pastControls: input.pastControls } : {}), outlook: chosen.outlook, coveredBeds },
  );
  const inside = night.outlook.places.find(({ key }) => key.place === 'inside')!;
  return {
    changes: night.changes,
    insideLowC: kelvinToCelsius(inside.q50K),
    crops: night.outlook.crops.flatMap(({ crop, damageProbability }) => {
      const before = chosen.outlook.crops.find((one) => one.crop.asked === crop.asked && one.crop.bed === crop.bed);
      return before ? [{ asked: crop.asked, bed: crop.bed, before: before.damageProbability, after: damageProbability }] : [];
    }),
    heatKwh: (night.outlook.meanHeaterJ - chosen.outlook.meanHeaterJ) / JOULES_PER_KWH,
  };
}

/** What stands already is changed as the grower's own word on tonight would change it. */
function doneOtherwise(supposing: Supposing, { doneTonight }: EveningInput): NonNullable<EveningInput['doneTonight']> {
  const { covers, curtain, heater, fans, greenhouse } = supposing;
  return {
    ...doneTonight,
    covers: covers === undefined ? (doneTonight?.covers ?? new Map()) : new Map(greenhouse.beds.map(({ name }) => [name, covers])),
    ...(curtain === undefined ? {} : { curtainDrawn: curtain }),
    ...(heater === undefined ? {} : { heater: heater === false ? { on: false, setK: null } : { on: true, setK: heater.setC === null ? null : celsiusToKelvin(heater.setC) } }),
    ...(fans === undefined ? {} : { fansOn: { ...doneTonight?.fansOn, ...fans } }),
  };
}

/** The plan without what is said to be otherwise. */
function choicesOtherwise({ covers, curtain, heater, fans, ventsShut }: Supposing, { input, plan }: { input: EveningInput; plan: EveningPlan }): NightChoices {
  const { choices } = plan.chosen;
  return {
    covers: covers === undefined ? choices.covers : new Map(),
    curtainFromS: curtain === undefined ? choices.curtainFromS : null,
    heater: heater === undefined ? choices.heater : null,
    fans: new Map([...choices.fans].filter(([place]) => !FAN_PLACES.some((one) => one === place && fans?.[one] !== undefined))),
    ventsShutS: ventsShut ? input.nowS : choices.ventsShutS,
  };
}
