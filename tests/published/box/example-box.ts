import type { z } from 'zod';
import type { boxCaseSchema } from './box-case.js';

const BOARD = { name: 'board', thicknessM: 0.05, conductivityWPerMK: 0.1, densityKgPerM3: 600, heatCapacityJPerKgK: 1200 } as const;
const PANE = { thicknessM: 0.004, conductivityWPerMK: 1, densityKgPerM3: 2500, heatCapacityJPerKgK: 750, longwaveEmittance: 0.84, sun: { transmittance: 0.82, reflectance: 0.075 } };

/** An invented small box with a south window, floating free. */
export const EXAMPLE_BOX: z.input<typeof boxCaseSchema> = {
  name: 'invented box',
  source: 'invented',
  site: { latitude: 45, longitude: -75, utcOffsetH: -5, groundReflectance: 0.2, terrain: 'open' },
  weather: { sunClock: 'standard', diffuse: 'given' },
  size: { eastWestM: 4, northSouthM: 3, heightM: 2.5 },
  constructions: { board: [BOARD] },
  walls: { north: 'board', east: 'board', south: 'board', west: 'board' },
  roof: 'board',
  floor: { construction: 'board', underside: { kind: 'outside-air' } },
  finish: { solarAbsorptanceOutside: 0.6, solarAbsorptanceInside: 0.6, longwaveEmittanceOutside: 0.9, longwaveEmittanceInside: 0.9 },
  glazing: { kind: 'panes', panes: [PANE, PANE], gaps: [{ widthM: 0.012 }] },
  windows: [{ wall: 'south', widthM: 2, heightM: 1.2, fromCornerM: 1, sillM: 0.8 }],
  gains: { convectiveW: 60, radiativeW: 40 },
  infiltration: { airChangesPerHour: 0.5 },
  ventilation: [],
};
