import tzLookup from 'tz-lookup';
import type { Button, Outgoing } from '../../bot/chat.js';
import { CROP_WORDS } from '../../bot/conversation.js';
import { describeStep, readState, start, writeState, type DescribeContext, type DescribeStep, type Said } from '../../bot/features/describe/describe.js';
import { PlaceSearchError, type PlaceFinder } from '../../bot/ports.js';

export const CONTEXT: DescribeContext = { nowS: Date.parse('2026-11-25T20:00:00Z') / 1000, cropWords: CROP_WORDS, zoneAt: (latitude, longitude) => tzLookup(latitude, longitude) };

/** A channel around the state machine: keeps the state as text, looks towns up, remembers the buttons. */
export class Talk {
  step: DescribeStep = start(null, CONTEXT);
  /** All that was sent, in order. */
  readonly sent: Outgoing[] = [this.step.reply];
  /** Messages of the grower so far. */
  messages = 0;
  /** How many messages the first advisory took. */
  firstAfter: number | null = null;

  constructor(private readonly finder: PlaceFinder) {}

  /** What stands on the screen since the grower last did something. */
  get heard(): string {
    return this.latest.map(({ text }) => text).join('\n');
  }

  private latest: Outgoing[] = [this.step.reply];

  async says(said: Said): Promise<void> {
    this.messages += 1;
    // The state goes through its text each time, as a store would have it.
    this.step = describeStep(kept(this.step), said, CONTEXT);
    if (this.step.look) this.step = describeStep(kept(this.step), { places: await this.lookUp(this.step.look.town) }, CONTEXT);
    if (this.step.isFirst) this.firstAfter = this.messages;
    this.latest = [this.step.reply, ...(this.step.after ? [this.step.after] : [])];
    this.sent.push(...this.latest);
  }

  async presses(label: string): Promise<void> {
    const buttons: readonly Button[] = this.latest.flatMap(({ buttons: rows = [] }) => rows.flat());
    const button = buttons.find((one) => one.label === label);
    if (button === undefined) throw new Error(`expected a button "${label}", got ${buttons.map((one) => one.label).join(', ') || 'none'} under: ${this.heard}`);
    await this.says({ button: button.id });
  }

  private async lookUp(town: string): Promise<NonNullable<Said['places']>> {
    try {
      return { town, found: await this.finder.placesCalled(town) };
    } catch (error) {
      if (error instanceof PlaceSearchError) return { town, failure: error.failure };
      throw error;
    }
  }
}

function kept({ state }: DescribeStep): DescribeStep['state'] {
  const read = readState(writeState(state));
  if (read === null) throw new Error('a state that was written must be read again');
  return read;
}
