import { z } from 'zod';
import { celsiusToKelvin, FAN_PLACES, type Controls, type FanPlace, type House } from '../../engine/index.js';
import { InputError } from './input-error.js';
import { readInstant, readJson } from './read-input.js';

const planSchema = z.array(
  z.looseObject({
    action: z.enum(['cover', 'uncover', 'vents', 'curtain', 'tube-fan', 'fan', 'heater', 'harvest', 'clear-snow']),
    target: z.string().optional(),
    from: z.string().optional(),
    until: z.string().optional(),
    run: z.boolean().optional(),
    by: z.string().optional(),
    setC: z.number().nullable().optional(),
  }),
);

/** What an action does to the controls at an instant. */
export type ControlChange = (controls: Controls, timeS: number, house: House) => Controls;

/** A plan file: actions as in an advisory, put into effect at their latest time or from their start. */
export async function readPlan(path: string): Promise<readonly ControlChange[]> {
  const parsed = planSchema.safeParse(await readJson(path, 'the plan file'));
  if (!parsed.success) throw new InputError(`the plan file ${path}: ${parsed.error.issues.map((issue) => `[${issue.path.join('.')}] ${issue.message}`).join('; ')}; for example [{"action": "cover", "target": "north bed", "by": "2026-01-14T16:40:00-05:00"}]`);
  return parsed.data.map((action) => {
    const start = action.from ?? action.by;
    if (start === undefined && action.action !== 'harvest') throw new InputError(`the plan file ${path}: ${action.action} needs "from" or "by"`);
    const fromS = start === undefined ? 0 : readInstant(start, 'plan time');
    const untilS = action.until === undefined ? Infinity : readInstant(action.until, 'plan time');
    return (controls, timeS, house) => {
      if (action.target !== undefined && (action.action === 'cover' || action.action === 'uncover') && !house.columns.some(({ kind, name }) => kind === 'bed' && name === action.target)) throw new InputError(`the plan file ${path}: no bed called ${JSON.stringify(action.target)}; the beds are ${house.columns.filter(({ kind }) => kind === 'bed').map(({ name }) => JSON.stringify(name)).join(', ')}`);
      return timeS < fromS || timeS >= untilS ? controls : changed(action, controls, house);
    };
  });
}

/** The fan of a target as an advisory names it; without one, every fan that does not blow through tubes. */
const fansNamed = (target: string | undefined): readonly FanPlace[] => {
  const places: Readonly<Record<string, FanPlace>> = { stones: 'stone-box', compost: 'heap', air: 'air', tubes: 'tubes' };
  const place = target === undefined ? undefined : places[target];
  return place === undefined ? FAN_PLACES.filter((any) => any !== 'tubes') : [place];
};

function changed(action: z.infer<typeof planSchema>[number], controls: Controls, house: House): Controls {
  switch (action.action) {
    case 'cover':
    case 'uncover':
      return { ...controls, coverOn: controls.coverOn.map((on, c) => (house.columns[c]!.rowCover !== null && (action.target === undefined || house.columns[c]!.name === action.target) ? action.action === 'cover' : on)) };
    case 'vents':
      return { ...controls, ventsMayOpen: action.target === 'open' };
    case 'heater':
      return { ...controls, heaterOn: true, heaterSetK: action.setC === null || action.setC === undefined ? null : celsiusToKelvin(action.setC) };
    case 'curtain':
      return { ...controls, curtainDrawn: action.target !== 'open' };
    case 'tube-fan':
      return { ...controls, fansOn: { ...controls.fansOn, tubes: action.run !== false } };
    case 'fan':
      return { ...controls, fansOn: { ...controls.fansOn, ...Object.fromEntries(fansNamed(action.target).map((place) => [place, action.run !== false])) } };
    case 'clear-snow':
      return { ...controls, troubles: { ...controls.troubles, roofSnowM: 0 } };
    case 'harvest':
      return controls;
  }
}
