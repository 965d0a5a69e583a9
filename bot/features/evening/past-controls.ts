import { celsiusToKelvin, nextSunriseS, standingControls, toHouse, type ControlPlan, type Greenhouse } from '../../../engine/index.js';
import type { Store } from '../../ports.js';
import type { Deed } from './deeds-tonight.js';

const FORTNIGHT_S = 15 * 86_400;
/** Covers come off and heaters go out about this long after sunrise, when nobody says otherwise. */
const AFTER_SUNRISE_S = 5_400;

interface PastDeed {
  readonly fromS: number;
  readonly untilS: number;
  readonly deed: Deed;
}

/** What was covered and lit in the past fortnight, from what the grower said; as the file says where nothing was said. */
export async function pastControls(store: Store, greenhouseId: string, context: { greenhouse: Greenhouse; nowS: number }): Promise<ControlPlan> {
  const { greenhouse, nowS } = context;
  const house = toHouse(greenhouse);
  const standing = standingControls(greenhouse, house);
  const rows = await store.actions(greenhouseId, nowS - FORTNIGHT_S);
  const deeds = rows.filter(({ done }) => done).map((row): PastDeed => {
    const sunriseS = nextSunriseS(row.receivedAtS, greenhouse.place) ?? row.receivedAtS + 86_400;
    return { fromS: row.receivedAtS, untilS: sunriseS + AFTER_SUNRISE_S, deed: JSON.parse(row.body) as Deed };
  });
  return (timeS) => {
    const now = deeds.filter(({ fromS, untilS }) => timeS >= fromS && timeS < untilS).map(({ deed }) => deed);
    const heat = now.findLast(({ items, setC }) => items.includes('heater') && setC !== null);
    return {
      ...standing,
      coverOn: standing.coverOn.map((on, c) => on || (house.columns[c]!.rowCover !== null && now.some(({ items, beds }) => items.includes('cover') && (beds === null || beds.includes(house.columns[c]!.name))))),
      heaterOn: standing.heaterOn || heat !== undefined,
      heaterSetK: heat === undefined || heat.setC === null ? standing.heaterSetK : celsiusToKelvin(heat.setC),
    };
  };
}
