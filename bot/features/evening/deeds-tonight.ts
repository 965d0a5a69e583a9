import { celsiusToKelvin, nightSpan, type DoneTonight, type Greenhouse } from '../../../engine/index.js';
import type { StoredAction } from '../../ports.js';
import type { Item } from '../../language/intent.js';

/** What the grower said was done tonight, as kept in the store. */
export interface Deed {
  readonly items: readonly Item[];
  /** Beds that the message named; null when it named none, which means all beds that have a cover. */
  readonly beds: readonly string[] | null;
  readonly setC: number | null;
  /** When its night began, where it was told after it; epoch seconds. */
  readonly fromS?: number;
}

const BEFORE_SUNSET_S = 8 * 3600;

/** What the grower said of tonight; the newest word on a thing counts, and what was not said is left as the file has it. */
export function deedsTonight(actions: readonly StoredAction[], context: { greenhouse: Greenhouse; nowS: number }): DoneTonight {
  const { sunsetS } = nightSpan(context.nowS, context.greenhouse.place);
  const sinceS = Math.min(sunsetS, context.nowS) - BEFORE_SUNSET_S;
  const rows = actions.filter(({ receivedAtS }) => receivedAtS >= sinceS);
  const coverable = context.greenhouse.beds.filter((bed) => bed.cover).map((bed) => bed.name);
  const covers = new Map<string, boolean>();
  let heater: DoneTonight['heater'];
  let ventsShut: boolean | undefined;
  let curtainDrawn: boolean | undefined;
  let fansOn: DoneTonight['fansOn'];
  for (const row of [...rows].sort((a, b) => a.receivedAtS - b.receivedAtS || a.id - b.id)) {
    const deed = JSON.parse(row.body) as Deed;
    if (deed.fromS !== undefined) continue;
    if (deed.items.includes('cover')) for (const bed of deed.beds ?? coverable) covers.set(bed, row.done);
    if (deed.items.includes('heater')) heater = { on: row.done, setK: row.done ? celsiusToKelvin(deed.setC ?? DEFAULT_SETTING_C) : null };
    if (deed.items.includes('vents')) ventsShut = row.done;
    if (deed.items.includes('curtain')) curtainDrawn = row.done;
    if (deed.items.includes('tube')) fansOn = { ...fansOn, tubes: row.done };
    if (deed.items.includes('fan')) fansOn = { ...fansOn, ...fansOfHouse(context.greenhouse, row.done) };
  }
  return { covers, ...(heater ? { heater } : {}), ...(ventsShut === undefined ? {} : { ventsShut }), ...(curtainDrawn === undefined ? {} : { curtainDrawn }), ...(fansOn ? { fansOn } : {}) };
}

/** "The fan" without more words is every fan of the house. */
const fansOfHouse = ({ tubes, stoneBox, compost, fan }: Greenhouse, on: boolean): DoneTonight['fansOn'] => ({ ...(tubes ? { tubes: on } : {}), ...(stoneBox?.fan ? { 'stone-box': on } : {}), ...(compost?.fan ? { heap: on } : {}), ...(fan ? { air: on } : {}) });

/** A heater that is "on" without a setting is taken at a low one: heat that is not there must not be counted on. */
const DEFAULT_SETTING_C = 2;
