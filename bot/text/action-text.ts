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
      return `Leave frozen leaves alone until about ${clockOf(step.from)}: they break. Pick after the thaw.`;
  }
}
