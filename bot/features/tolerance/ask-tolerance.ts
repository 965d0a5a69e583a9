import { bedStakes, tripsHeld, type BedStake, type Greenhouse, type GreenhouseFile, type ToleranceNights } from '../../../engine/index.js';
import type { Outgoing } from '../../chat.js';
import type { Records } from '../../ports.js';
import { joinedWords, TOLERANCE_ASKS, TOLERANCE_BUTTONS } from '../../text/tolerance-text.js';
import type { Advisory } from '../evening/advisory.js';

/** The questions, in this order; each may be skipped. */
export type ToleranceAsks = 'worth' | 'weekly' | 'trip' | 'trips';

/** What a chat was asked of how readily to call; JSON in its dialogue. */
export interface ToleranceQuestion {
  readonly about: 'tolerance';
  readonly asks: ToleranceAsks;
  /** The bed that is asked about. */
  readonly bed?: string;
  /** Weeks to regrow it, where that was said. */
  readonly weeks?: number;
  /** The file before the last answer, so that one word takes that back. */
  readonly house?: { readonly version: number; readonly before: string; readonly sinceS: number };
  /** The question that it answered. */
  readonly again?: ToleranceQuestion;
}

/** The bed of most worth among these, else among those that have a cover, else among all; null where nothing grows. */
function mainBed(greenhouse: Greenhouse, beds: readonly string[] = []): BedStake | null {
  const grown = bedStakes(greenhouse).filter(({ crops }) => crops.length > 0).sort((a, b) => b.worth - a.worth);
  return grown.find(({ name }) => beds.includes(name)) ?? grown.find(({ coverMinutes }) => coverMinutes !== null) ?? grown[0] ?? null;
}

/** The first question. */
function firstAsked(greenhouse: Greenhouse, beds: readonly string[] = []): ToleranceQuestion {
  const bed = mainBed(greenhouse, beds);
  return bed === null ? { about: 'tolerance', asks: 'trip' } : { about: 'tolerance', asks: 'worth', bed: bed.name };
}

/** The question after this one; null after the last. */
export const nextAsked = ({ asks }: ToleranceQuestion): ToleranceQuestion | null => (asks === 'trips' ? null : { about: 'tolerance', asks: asks === 'trip' ? 'trips' : 'trip' });

const BUTTON_MARK = 'calls';

/** The question and the answer that a button stands for; null for any other button. */
export function readToleranceButton(id: string): { readonly asks: string; readonly says: string } | null {
  const [mark, asks, says] = id.split(':');
  return mark === BUTTON_MARK && asks !== undefined && says !== undefined ? { asks, says } : null;
}

/** A house, and what its nights have taught of how readily to call. */
export interface HouseAsked {
  readonly greenhouse: Greenhouse;
  readonly nights?: ToleranceNights;
}

/** A question as it goes out, below what was said before it. */
export const askedMessage = (question: ToleranceQuestion, house: HouseAsked, before: readonly string[], gap = '\n\n'): Outgoing => ({
  text: [...before, askedWords(question, house)].join(gap),
  buttons: [labelsOf(question, house).map((label) => ({ id: `${BUTTON_MARK}:${question.asks}:${label.toLowerCase()}`, label }))],
});

const labelsOf = ({ asks }: ToleranceQuestion, { greenhouse, nights }: HouseAsked): readonly string[] => (asks === 'trips' ? TOLERANCE_BUTTONS.trips(tripsHeld(greenhouse, nights)) : TOLERANCE_BUTTONS[asks]);

function askedWords({ asks, bed: name }: ToleranceQuestion, { greenhouse, nights }: HouseAsked): string {
  const stakes = bedStakes(greenhouse);
  switch (asks) {
    case 'worth': {
      const bed = stakes.find((one) => one.name === name);
      return TOLERANCE_ASKS.worth(bed === undefined ? 'the bed' : `${joinedWords(bed.crops.map(({ asked }) => `the ${asked}`))} in ${bed.name}`);
    }
    case 'weekly':
      return TOLERANCE_ASKS.weekly;
    case 'trip':
      return TOLERANCE_ASKS.trip(stakes.some(({ coverMinutes }) => coverMinutes !== null));
    case 'trips':
      return TOLERANCE_ASKS.trips(tripsHeld(greenhouse, nights));
  }
}

export const remembered = (question: ToleranceQuestion, atS: number): string => JSON.stringify({ ...question, atS });

interface AfterCall {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly night: string;
  readonly receivedAtS: number;
}

/** After the first answer to a call the questions come by themselves, once, where the chat is in the middle of nothing else; null where they do not. */
export async function askedAfterCall({ greenhouseId, greenhouse, night, receivedAtS }: AfterCall, store: Records): Promise<Outgoing | null> {
  const { carefulAsked, carefulSince, tripSince } = greenhouse.grower;
  if (carefulAsked || (carefulSince ?? tripSince) !== undefined || store.keepPending === undefined || store.isBusy === true) return null;
  const called = await store.advisoryBy(greenhouseId, night, receivedAtS);
  const actions = called === null ? [] : (JSON.parse(called.body) as Pick<Advisory, 'plan'>).plan.actions;
  const stored = await store.greenhouse(greenhouseId);
  if (actions.length === 0 || stored === null) return null;
  const file = JSON.parse(stored.body) as GreenhouseFile;
  await store.saveGreenhouse({ id: greenhouseId, body: JSON.stringify({ ...file, grower: { ...file.grower, carefulAsked: true } } satisfies GreenhouseFile), savedAtS: receivedAtS });
  return ask({ greenhouse, receivedAtS }, store, actions.flatMap(({ target }) => target ?? []));
}

/** The first question with what it is for; `beds` are those that a call was for. */
export async function ask({ greenhouse, receivedAtS }: Pick<AfterCall, 'greenhouse' | 'receivedAtS'>, store: Records, beds: readonly string[] = []): Promise<Outgoing> {
  const question = firstAsked(greenhouse, beds);
  await store.keepPending?.(remembered(question, receivedAtS));
  return askedMessage(question, { greenhouse }, [TOLERANCE_ASKS.opening], '\n');
}
