import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import { FAN_PLACES, NO_TROUBLES, type Controls, type ControlPlan, type FanPlace, type Troubles } from '../night/controls.js';
import { celsiusToKelvin } from '../units.js';
import type { NightChoices } from './action.js';

/** A door that stands open (project estimate: 0.9 by 1.8 m). */
const DOOR_M2 = 1.6;

/** How things stood without a word about them: as the grower's file says, with nothing gone wrong. */
export function usualControls(greenhouse: Greenhouse, house: House): Controls {
  return {
    coverOn: house.columns.map((column) => greenhouse.beds.some((bed) => bed.name === column.name && bed.cover?.on === true)),
    curtainDrawn: greenhouse.curtain?.drawn ?? false,
    ventsMayOpen: true,
    heaterOn: greenhouse.heater?.on ?? false,
    heaterSetK: greenhouse.heater?.set === undefined ? null : celsiusToKelvin(greenhouse.heater.set),
    fansOn: { tubes: greenhouse.tubes?.fan.on ?? false, 'stone-box': greenhouse.stoneBox?.fan?.on ?? false, heap: greenhouse.compost?.fan?.on ?? false, air: greenhouse.fan?.on ?? false },
    troubles: NO_TROUBLES,
  };
}

/** How things stand this evening without any action: as usual, with what has gone wrong now. */
export function standingControls(greenhouse: Greenhouse, house: House): Controls {
  const usual = usualControls(greenhouse, house);
  const { now } = greenhouse;
  return { ...usual, heaterOn: usual.heaterOn && !now.fuelOut, troubles: troublesNow(now) };
}

const troublesNow = (now: Greenhouse['now']): Troubles => ({
  roofSnowM: now.snowOnRoof,
  powerOut: now.powerOut,
  blowerOff: now.blowerOff || now.powerOut,
  openingM2: now.tornFilm + (now.doorOpen ? DOOR_M2 : 0),
  fansDead: now.fansDead,
});

/**
 * Controls through time for a set of choices on top of how things stand.
 * Units: epoch seconds, K.
 * Valid: bed names of the house; others are ignored.
 * Outside: not applicable.
 * Source: definition.
 */
export function controlsOfChoices(house: House, standing: Controls, choices: NightChoices): ControlPlan {
  const during = (span: { fromS: number; untilS: number } | null | undefined, timeS: number): boolean => span !== null && span !== undefined && timeS >= span.fromS && timeS < span.untilS;
  return (timeS) => {
    const heater = during(choices.heater, timeS) ? choices.heater : null;
    const fanOn = (place: FanPlace): boolean => (choices.fans.has(place) ? during(choices.fans.get(place), timeS) : standing.fansOn[place]);
    return {
      ...standing,
      coverOn: house.columns.map((column, c) => standing.coverOn[c]! || (column.rowCover !== null && timeS >= (choices.covers.get(column.name) ?? Infinity))),
      curtainDrawn: standing.curtainDrawn || (choices.curtainFromS !== null && timeS >= choices.curtainFromS),
      ventsMayOpen: standing.ventsMayOpen && (choices.ventsShutS === null || timeS < choices.ventsShutS),
      heaterOn: standing.heaterOn || heater !== null,
      heaterSetK: heater ? heater.setK : standing.heaterSetK,
      fansOn: Object.fromEntries(FAN_PLACES.map((place) => [place, fanOn(place)])) as Record<FanPlace, boolean>,
    };
  };
}
