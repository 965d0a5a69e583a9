import { kelvinToCelsius, type EveningPlan, type PlannedAction } from '../../engine/index.js';
import type { NightFlag } from './night-picture.js';

/** The plan as flags on the time axis, in order of time; beds and crops that are due together share one. */
export function nightFlags({ chosen, crops }: Pick<EveningPlan, 'chosen' | 'crops'>): readonly NightFlag[] {
  const { actions, harvested } = chosen;
  const picked = [...new Set(harvested.map((k) => crops[k]!.asked))];
  const flags = actions.flatMap((action, i): NightFlag[] => {
    const isFirst = actions.findIndex((other) => isDueTogether(other, action)) === i;
    switch (action.action) {
      case 'cover':
        return isFirst ? [{ atS: action.byS, does: 'cover', beds: actions.flatMap((other) => (other.action === 'cover' && isDueTogether(other, action) ? [other.target] : [])) }] : [];
      case 'harvest':
        return isFirst ? [{ atS: action.byS, does: 'pick', crops: picked }] : [];
      case 'vents':
        return [{ atS: action.byS, does: 'shut-vents' }];
      case 'curtain':
        return [{ atS: action.byS, does: 'draw-curtain' }];
      case 'fan':
        return [{ atS: action.fromS, does: 'fan', fan: action.target, run: action.run }];
      case 'heater':
        return [{ atS: action.fromS, does: 'heater', setC: action.setK === null ? null : kelvinToCelsius(action.setK) }];
    }
  });
  return flags.sort((a, b) => a.atS - b.atS);
}

const isDueTogether = (a: PlannedAction, b: PlannedAction): boolean => a.action === b.action && 'byS' in a && 'byS' in b && a.byS === b.byS;
