import type { Quantity } from '../../language/house/clause.js';
import type { ShapeFact, SizeSaid } from '../../language/house/house-fact.js';
import { fileLength, metresOf, type FileQuantity, type PlainLength } from './file-quantities.js';
import type { SizeDraft } from './state.js';
import type { LengthHabit } from './units-of-place.js';

/** What a plastic house that one grower keeps can measure, in m (project estimate); only to tell feet from metres. */
const LIKELY_M = { width: [1.4, 13], length: [1.8, 62], height: [1.5, 5.6], side: [0, 4] } as const satisfies Record<'width' | 'length' | 'height' | 'side', readonly [number, number]>;
const SIDES = ['width', 'length', 'height', 'side'] as const;
type SideName = (typeof SIDES)[number];

/** The draft with what was just said; two lengths without a name are the width and the longer length. */
export function withSize(draft: SizeDraft, said: SizeSaid): SizeDraft {
  const pair = said.floor ?? (said.bare !== undefined && said.bare.length > 1 ? ([said.bare[0]!, said.bare[1]!] as const) : null);
  const height = said.height ?? barePart(draft, said.bare, 'height');
  const side = said.side ?? barePart(draft, said.bare, 'side');
  const [one, two] = pair ?? [];
  const floor = one === undefined || two === undefined ? {} : byLength(one, two);
  return {
    ...draft,
    ...floor,
    ...(said.width === undefined ? {} : { width: said.width }),
    ...(said.length === undefined ? {} : { length: said.length }),
    ...(height === null ? {} : { height }),
    ...(side === null ? {} : { side }),
  };
}

/** Bare numbers in a row: the floor, then the height, then the side; where the floor is known, the height first. */
function barePart(draft: SizeDraft, bare: readonly Quantity[] | undefined, part: 'height' | 'side'): Quantity | null {
  if (bare === undefined) return null;
  const floorKnown = draft.width !== undefined && draft.length !== undefined;
  const order: readonly (SideName | 'floor')[] = bare.length === 1 ? (draft.height === undefined ? ['height'] : ['side']) : floorKnown && bare.length === 2 ? ['height', 'side'] : ['floor', 'floor', 'height', 'side'];
  return bare[order.indexOf(part)] ?? null;
}

function byLength(one: Quantity, two: Quantity): Pick<SizeDraft, 'width' | 'length'> {
  const unit = one.unit ?? two.unit;
  const metres = ({ value, unit: own }: Quantity): number => metresOf({ value, unit: own ?? unit }, 'm') ?? value;
  return metres(one) <= metres(two) ? { width: one, length: two } : { width: two, length: one };
}

/** A plain "tunnel" changes no shape that was said before. */
export function withShape(draft: SizeDraft, said: ShapeFact): SizeDraft {
  if (said.shape === null || (said.general && draft.shape !== undefined) || said.shape === draft.shape) return draft;
  // Another shape may have a side wall that was not asked for before.
  const { sideSkipped: _asked, ...rest } = draft;
  return { ...rest, shape: said.shape };
}

const systemOf = ({ unit }: Quantity): PlainLength | null => (unit === 'ft' || unit === 'in' || unit === 'yd' ? 'ft' : unit === null ? null : 'm');

/** What plain numbers of the size are in: known, to be asked (both readings are offered), or open until the place is known. */
export type PlainUnit = { readonly unit: PlainLength } | { readonly asks: true } | null;

export function plainUnit(draft: SizeDraft, habit: LengthHabit | null): PlainUnit {
  const given = SIDES.flatMap((name) => (draft[name] === undefined ? [] : [[name, draft[name]] as const]));
  if (draft.plain !== undefined) return { unit: draft.plain };
  const spoken = given.map(([, quantity]) => systemOf(quantity)).find((system) => system !== null) ?? null;
  const bare = given.filter(([, { unit }]) => unit === null);
  if (bare.length === 0) return { unit: spoken ?? (habit === 'ft' ? 'ft' : 'm') };
  const fits = (unit: PlainLength): boolean => fitsIn(draft, unit);
  if (spoken !== null) return fits(spoken) ? { unit: spoken } : { asks: true };
  if (habit === null) return null;
  if (habit === 'either') return fits('ft') === fits('m') ? { asks: true } : { unit: fits('ft') ? 'ft' : 'm' };
  // A reading in the grower's own units that makes no house must not be swapped in silence.
  return fits(habit) ? { unit: habit } : { asks: true };
}

/** Whether the plain numbers make a house in a unit. */
const fitsIn = (draft: SizeDraft, unit: PlainLength): boolean =>
  SIDES.every((name) => {
    const quantity = draft[name];
    if (quantity === undefined || quantity.unit !== null) return true;
    const metres = metresOf(quantity, unit) ?? 0;
    return metres >= LIKELY_M[name][0] && metres <= LIKELY_M[name][1];
  });

/** Plain numbers that make a house in neither unit: nothing can be asked about them. */
export const makesNoHouse = (draft: SizeDraft): boolean => draft.plain === undefined && !fitsIn(draft, 'ft') && !fitsIn(draft, 'm');

export interface FileSize {
  readonly width: FileQuantity;
  readonly length: FileQuantity;
  readonly height: FileQuantity;
}

/** The size as the file has it, once all three lengths are said. */
export function fileSize(draft: SizeDraft, unit: PlainLength): FileSize | null {
  const { width, length, height } = draft;
  if (width === undefined || length === undefined || height === undefined) return null;
  return { width: fileLength(width, unit), length: fileLength(length, unit), height: fileLength(height, unit) };
}

const WRITTEN = /^([\d.]+) (ft|in|cm)$/u;

/** A length of a file as it was written; in metres where it is written in another way. */
export function quantityOf(written: FileQuantity, metres: number): Quantity {
  const parts = typeof written === 'string' ? WRITTEN.exec(written.trim()) : null;
  return parts === null ? { value: metres, unit: 'm' } : { value: Number(parts[1]), unit: parts[2] as 'ft' | 'in' | 'cm' };
}
