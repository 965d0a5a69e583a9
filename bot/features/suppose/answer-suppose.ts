import { HEATER_KINDS } from '../../../engine/index.js';
import type { CautionCode } from '../evening/advisory.js';
import type { EveningSubject } from '../evening/issue-advisory.js';
import type { Supposing } from '../evening/supposed-night.js';
import type { WorkedOutEvening } from '../evening/work-out-evening.js';
import { supposeRefused, supposeText } from '../../text/suppose-text.js';
import { changedHouse, type Suppose } from './changed-house.js';

/** "What if": the same night otherwise, beside tonight's plan. Nothing is kept. */
export async function answerSuppose(suppose: Suppose, subject: EveningSubject, evening: { readonly nowS: number; readonly compose: (supposing: Supposing) => Promise<WorkedOutEvening> }): Promise<string> {
  const { greenhouse } = subject;
  const changed = changedHouse(greenhouse, suppose, evening.nowS);
  if ('refused' in changed) return supposeRefused(changed.refused);
  const { supposed, advisory } = await evening.compose(changed.supposing);
  if (supposed === undefined) throw new Error('expected an answer to what was supposed, got none');
  return supposeText(supposed, {
    items: suppose.items ?? [],
    without: suppose.without ?? [],
    assumed: changed.assumed,
    built: changed.built,
    units: greenhouse.grower.units,
    planned: advisory.plan.actions.length > 0,
    caution: heatCaution(changed.supposing),
  });
}

/** Heat that is supposed to burn comes with its caution. */
function heatCaution({ greenhouse, heater }: { greenhouse: EveningSubject['greenhouse']; heater?: false | object }): CautionCode | null {
  if (!heater || !greenhouse.heater) return null;
  const { combustion } = HEATER_KINDS[greenhouse.heater.kind];
  return combustion === 'none' ? 'heater-electric' : combustion === 'vented' ? 'flame-vented' : 'flame-unvented';
}
