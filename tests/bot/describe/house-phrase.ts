import { readFacts, type Asked, type HouseSaid } from '../../../bot/language/house/read-facts.js';
import { CROP_WORDS } from '../../../bot/conversation.js';

/** What somebody says, and what must at least be understood; `asked`: the question that it answers. */
export interface HousePhrase {
  readonly says: string;
  readonly asked?: Asked;
  readonly is: readonly Readonly<Record<string, unknown>>[];
}

/** A length, volume or the like as it is said: "20 ft", "9". */
export function q(written: string): { value: number; unit: string | null } {
  const [value = '', ...unit] = written.split(' ');
  return { value: Number(value), unit: unit.length === 0 ? null : unit.join(' ') };
}

/** Wednesday 25 November 2026, 15:00 in New York. */
export const NOW = { atS: Date.parse('2026-11-25T20:00:00Z') / 1000, zone: 'America/New_York' };

export const understood = ({ says, asked }: HousePhrase): HouseSaid => readFacts(says, { crops: CROP_WORDS, now: NOW, asked: asked ?? null });

const crop = (name: string): Readonly<Record<string, unknown>> => ({ name, known: true });
export const crops = (...names: readonly string[]): readonly Readonly<Record<string, unknown>>[] => names.map(crop);
