import { celsiusToKelvin, nextSunriseS, toHouse, usualControls, type ControlPlan, type Greenhouse } from '../../../engine/index.js';
import type { StoredAction } from '../../ports.js';
import type { Deed } from './deeds-tonight.js';

const DAY_S = 86_400;
/** Covers come off and heaters go out about this long after sunrise, when nobody says otherwise. */
const AFTER_SUNRISE_S = 5_400;

interface PastDeed {
  readonly fromS: number;
  readonly untilS: number;
  readonly done: boolean;
  readonly deed: Deed;
}

/** What was covered and lit in the past fortnight, from what the grower said; as the file says where nothing was said. */
export function pastControls(actions: readonly StoredAction[], greenhouse: Greenhouse): ControlPlan {
  const house = toHouse(greenhouse);
  const standing = usualControls(greenhouse, house);
  const deeds = actions.map((row): PastDeed => {
    const deed = JSON.parse(row.body) as Deed;
    const fromS = deed.fromS ?? row.receivedAtS;
    const sunriseS = nextSunriseS(fromS, greenhouse.place) ?? fromS + DAY_S;
    return { fromS, untilS: sunriseS + AFTER_SUNRISE_S, done: row.done, deed };
  });
  return (timeS) => {
    const said = deeds.filter(({ fromS, untilS }) => timeS >= fromS && timeS < untilS);
    const heat = said.findLast(({ deed }) => deed.items.includes('heater'));
    const cover = (bed: string): PastDeed | undefined => said.findLast(({ deed }) => deed.items.includes('cover') && (deed.beds === null || deed.beds.includes(bed)));
    return {
      ...standing,
      coverOn: standing.coverOn.map((on, c) => (house.columns[c]!.rowCover === null ? on : (cover(house.columns[c]!.name)?.done ?? on))),
      heaterOn: heat?.done ?? standing.heaterOn,
      heaterSetK: heat === undefined ? standing.heaterSetK : heat.deed.setC === null ? null : celsiusToKelvin(heat.deed.setC),
    };
  };
}
