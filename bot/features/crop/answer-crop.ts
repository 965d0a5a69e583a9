import { cropFamilies, cropFamilyOf } from '../../../engine/index.js';
import { cropLine } from '../../text/advisory-text.js';
import { actionSentence } from '../../text/action-text.js';
import { cropNotGrown } from '../../text/reply-text.js';
import type { TempUnits } from '../../text/temperature.js';
import type { Advisory, AdvisoryCrop } from '../evening/advisory.js';

/** Rows of an advisory that a word means: the crop itself, or every member of its family. */
function rowsFor(advisory: Advisory, wanted: string): readonly AdvisoryCrop[] {
  const family = cropFamilies.find(({ name }) => name === wanted);
  return advisory.crops.filter(({ crop, asked }) => crop === wanted || asked === wanted || (family !== undefined && cropFamilyOf(crop)?.name === family.name));
}

/** "Will the kale survive tonight": the verdict under the plan, and what would become of it without. */
export function answerCrop(wanted: readonly string[], advisory: Advisory, words: { units: TempUnits; cropName: (id: string) => string; dayName: string }): string {
  const found = wanted.flatMap((name) => rowsFor(advisory, name));
  const missing = wanted.filter((name) => rowsFor(advisory, name).length === 0);
  const lines = found.map((crop) => cropLine(crop, words));
  if (advisory.plan.actions.length > 0 && found.length > 0) {
    const nothing = advisory.alternatives.find(({ actions }) => actions.length === 0)!;
    lines.push(`That is with the plan: ${advisory.plan.actions.map((action) => actionSentence(action, words)).join(' ')}`);
    lines.push(...found.map((crop) => `Without it: ${cropLine(nothing.crops.find(({ crop: id, bed }) => id === crop.crop && bed === crop.bed)!, words)}`));
  }
  if (missing.length > 0) lines.push(cropNotGrown(missing.map(words.cropName), [...new Set(advisory.crops.map(({ asked }) => asked))]));
  return lines.join('\n');
}
