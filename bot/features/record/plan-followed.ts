import type { Item } from '../../language/intent.js';
import type { StoredAction } from '../../ports.js';
import type { Advisory, AdvisoryAction, AdvisoryReason } from '../evening/advisory.js';
import type { Deed } from '../evening/deeds-tonight.js';

/** Whether a night went as its plan had it; not told where a word on something planned is missing. */
export type Followed = 'as-planned' | 'otherwise' | 'not-told';

/** An advisory tells its time to the minute: words of that minute came after it. */
const ROUNDED_S = 60;
/** What changes the temperatures of a night. Vents are shut for the night anyway. */
const CHANGES_A_NIGHT: readonly Item[] = ['cover', 'curtain', 'heater', 'fan', 'tube'];

/** What was told of a night after its advisory, beside the plan in it. */
export function planFollowed({ issuedAt, plan, reasons }: Pick<Advisory, 'issuedAt' | 'plan' | 'reasons'>, told: readonly StoredAction[]): Followed {
  const fromS = Date.parse(issuedAt) / 1000 - ROUNDED_S;
  const deeds = told.filter(({ receivedAtS }) => receivedAtS >= fromS).map(({ body, done }) => ({ ...(JSON.parse(body) as Deed), done }));
  const doneOf = (item: Item, bed?: string): boolean | null => deeds.findLast(({ items, beds }) => items.includes(item) && (bed === undefined || beds === null || beds.includes(bed)))?.done ?? null;
  const planned = plan.actions.filter(({ action }) => action !== 'harvest' && action !== 'vents');
  const answers = planned.map((action) => ({ wanted: action.run !== false, done: doneOf(itemOf(action), action.action === 'cover' ? action.target : undefined) }));
  const unplanned = CHANGES_A_NIGHT.filter((item) => !planned.some((action) => itemOf(action) === item));
  const counted = reasons.find((reason) => reason.code === 'counts-on');
  const changed = unplanned.some((item) => doneOf(item) !== null && doneOf(item) !== isCountedOn(item, counted));
  if (changed || answers.some(({ wanted, done }) => done !== null && done !== wanted)) return 'otherwise';
  return answers.some(({ done }) => done === null) ? 'not-told' : 'as-planned';
}

const itemOf = ({ action }: AdvisoryAction): Item => (action === 'tube-fan' ? 'tube' : action);

/** What lay on the beds or ran when the advisory was made is in it already. */
function isCountedOn(item: Item, counted: Extract<AdvisoryReason, { code: 'counts-on' }> | undefined): boolean {
  if (counted === undefined) return false;
  if (item === 'cover') return counted.coveredBeds.length > 0;
  if (item === 'curtain') return counted.curtainDrawn;
  if (item === 'heater') return counted.heaterOn;
  return counted.fans.some((fan) => (fan === 'tubes') === (item === 'tube'));
}
