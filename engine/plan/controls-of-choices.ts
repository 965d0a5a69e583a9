import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { House } from '../greenhouse/house.js';
import { NO_FANS, NO_TROUBLES, type Controls, type ControlPlan } from '../night/controls.js';
import { celsiusToKelvin } from '../units.js';
import type { NightChoices } from './action.js';

/** How things stand without any action tonight: as the grower's file says. */
export function standingControls(greenhouse: Greenhouse, house: House): Controls {
  return {
    coverOn: house.columns.map((column) => greenhouse.beds.some((bed) => bed.name === column.name && bed.cover?.on === true)),
    ventsMayOpen: true,
    heaterOn: greenhouse.heater?.on ?? false,
    heaterSetK: greenhouse.heater?.set === undefined ? null : celsiusToKelvin(greenhouse.heater.set),
    curtainDrawn: greenhouse.curtain?.drawn ?? false,
    fansOn: NO_FANS,
    troubles: NO_TROUBLES,
  };
}

/**
 * Controls through time for a set of choices on top of how things stand.
 * Units: epoch seconds, K.
 * Valid: bed names of the house; others are ignored.
 * Outside: not applicable.
 * Source: definition.
 */
export function controlsOfChoices(house: House, standing: Controls, choices: NightChoices): ControlPlan {
  return (timeS) => {
    const heater = choices.heater && timeS >= choices.heater.fromS && timeS < choices.heater.untilS ? choices.heater : null;
    return {
      ...standing,
      coverOn: house.columns.map((column, c) => standing.coverOn[c]! || (column.rowCover !== null && timeS >= (choices.covers.get(column.name) ?? Infinity))),
      ventsMayOpen: standing.ventsMayOpen && (choices.ventsShutS === null || timeS < choices.ventsShutS),
      heaterOn: standing.heaterOn || heater !== null,
      heaterSetK: heater ? heater.setK : standing.heaterSetK,
    };
  };
}
