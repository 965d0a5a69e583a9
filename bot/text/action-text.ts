import type { AdvisoryAction, AdvisoryMorning } from '../features/evening/advisory.js';
import { clockOf } from './local-time.js';
import { temperature, type TempUnits } from './temperature.js';

interface ActionWords {
  readonly units: TempUnits;
  readonly cropName: (id: string) => string;
}

const FAN_WORDS: Readonly<Record<string, string>> = { tubes: 'the tube fan', stones: 'the stone-box fan', compost: 'the compost fan', air: 'the stirring fan' };

export const fanWords = (fan: string | undefined): string => FAN_WORDS[fan ?? ''] ?? 'the fan';

/** One action as an imperative with its latest time. */
export function actionSentence(action: AdvisoryAction, words: ActionWords): string {
  switch (action.action) {
    case 'cover':
      return `Cover ${action.target} by ${clockOf(action.by!)}.`;
    case 'vents':
      return `Shut the vents by ${clockOf(action.by!)}.`;
    case 'curtain':
      return `Draw the curtain by ${clockOf(action.by!)}.`;
    case 'tube-fan':
    case 'fan': {
      const fan = fanWords(action.action === 'tube-fan' ? 'tubes' : action.target);
      return action.run ? `Run ${fan} from ${clockOf(action.from!)} to ${clockOf(action.until!)}.` : `Switch off ${fan} for the night.`;
    }
    case 'heater':
      return action.setC === null || action.setC === undefined
        ? `Run the heater from ${clockOf(action.from!)} to ${clockOf(action.until!)}.`
        : `Set the heater to ${temperature(action.setC, words.units)} from ${clockOf(action.from!)} to ${clockOf(action.until!)}.`;
    case 'harvest':
      return `Pick the ${words.cropName(action.crop ?? '').toLowerCase()} in ${action.target} by ${clockOf(action.by!)}.`;
  }
}

export function morningSentence(step: AdvisoryMorning): string {
  switch (step.action) {
    case 'uncover':
      return `Uncover ${step.target} from about ${clockOf(step.from)}, once the leaves are soft again.`;
    case 'vents':
      return `Open the vents from about ${clockOf(step.from)} if the sun is out.`;
    case 'curtain':
      return `Open the curtain from about ${clockOf(step.from)}.`;
    case 'clear-snow':
      return `Clear the snow off the film from ${clockOf(step.from)}.`;
    case 'harvest':
      return `Leave frozen leaves ${step.target === undefined ? '' : `in ${step.target} `}alone until about ${clockOf(step.from)}: they break. Pick after the thaw.`;
  }
}

/** Beds that are due at the same time are one sentence; beds that thaw at another time than the others are named. */
export function mergedMorning(steps: readonly AdvisoryMorning[]): readonly AdvisoryMorning[] {
  const merged = (action: 'uncover' | 'harvest'): readonly AdvisoryMorning[] => {
    const of = steps.filter((step) => step.action === action);
    const times = [...new Set(of.map(({ from }) => from))];
    return times.map((from): AdvisoryMorning => {
      const beds = of.filter((step) => step.from === from).flatMap(({ target }) => target ?? []);
      const isPlain = action === 'harvest' && times.length === 1;
      return { action, from, ...(isPlain || beds.length === 0 ? {} : { target: [...new Set(beds)].join(' and ') }) };
    });
  };
  return [...steps.filter(({ action }) => action === 'clear-snow'), ...merged('uncover'), ...merged('harvest'), ...steps.filter(({ action }) => action === 'curtain' || action === 'vents')];
}
