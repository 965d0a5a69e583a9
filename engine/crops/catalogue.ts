import { CROP_ROWS } from '../data/crops.js';
import { CROP_FAMILIES, type CropFamily } from '../data/crops/families.js';
import type { CropId, CropRow, HardinessClass } from './crop-row.js';

export type { CropId, CropRow } from './crop-row.js';
export type { CropFamily } from '../data/crops/families.js';

export interface CropMatch {
  readonly row: CropRow;
  /** The family whose plain name was said ("kale"), so that it can be asked which one; the row is then its default. */
  readonly familyMeant: CropFamily | null;
  /** True when the row stands for a whole hardiness class and not for this crop. */
  readonly isClassFallback: boolean;
}

/** Classes that an unknown crop can fall to. A bud stage is never unknown. */
export type FallbackClass = Exclude<HardinessClass, 'bud stage'>;

const CLASS_ROW_IDS = {
  tender: 'class_tender',
  'half-hardy': 'class_half_hardy',
  hardy: 'class_hardy',
  'very hardy': 'class_very_hardy',
} as const satisfies Readonly<Record<FallbackClass, CropId>>;

const ROW_BY_ID: ReadonlyMap<CropId, CropRow> = new Map(CROP_ROWS.map((row) => [row.id, row]));
const CLASS_IDS: readonly CropId[] = Object.values(CLASS_ROW_IDS);

export const cropRows: readonly CropRow[] = CROP_ROWS;
export const cropFamilies: readonly CropFamily[] = CROP_FAMILIES;

const singular = (word: string): string => {
  if (word.length <= 3 || word.endsWith('ss')) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(?:o|sh|ch|x|ss)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
};

/**
 * One form for all spellings of a name that differ in case, accents, apostrophes, hyphens, spaces or plural.
 * Units: none.
 * Valid: any text.
 * Outside: text without letters or digits gives ''.
 * Source: project rule.
 */
export function normaliseCropWords(words: string): string {
  const plain = words.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/['’`]/g, '');
  return plain
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
    .map(singular)
    .join(' ');
}

const FAMILY_BY_NAME: ReadonlyMap<string, CropFamily> = new Map(CROP_FAMILIES.map((family) => [normaliseCropWords(family.name), family]));
const FAMILY_BY_MEMBER: ReadonlyMap<CropId, CropFamily> = new Map(
  CROP_FAMILIES.flatMap((family) => family.memberIds.map((id) => [id, family] as const)),
);
const ROW_BY_WORDS: ReadonlyMap<string, CropRow> = new Map(
  CROP_ROWS.flatMap((row) => [row.commonName, ...row.aliases, row.id].map((words) => [normaliseCropWords(words), row] as const)),
);

const found = (row: CropRow, familyMeant: CropFamily | null): CropMatch => ({ row, familyMeant, isClassFallback: CLASS_IDS.includes(row.id) });

/**
 * The row with this id, or null.
 * Units: none.
 * Valid: any text.
 * Outside: null.
 * Source: the crop table.
 */
export const cropById = (id: CropId): CropRow | null => ROW_BY_ID.get(id) ?? null;

/**
 * The family that a row belongs to, or null.
 * Units: none.
 * Valid: any text.
 * Outside: null.
 * Source: the crop table.
 */
export const cropFamilyOf = (id: CropId): CropFamily | null => FAMILY_BY_MEMBER.get(id) ?? null;

/**
 * The crop that a grower's words name: an id, a name or alias, or a family; never a guess at a misspelling.
 * Units: none.
 * Valid: any text.
 * Outside: null.
 * Source: the crop table.
 */
export function findCrop(words: string): CropMatch | null {
  const wanted = normaliseCropWords(words);
  const family = FAMILY_BY_NAME.get(wanted) ?? null;
  const row = ROW_BY_ID.get(words) ?? ROW_BY_WORDS.get(wanted) ?? (family === null ? undefined : ROW_BY_ID.get(family.defaultId));
  return row === undefined ? null : found(row, family);
}

/**
 * The row for an unknown crop of a hardiness class; the match says that it is such a stand-in.
 * Units: none.
 * Valid: the four classes of growing plants.
 * Outside: does not compile.
 * Source: the crop table.
 */
export function classCrop(hardinessClass: FallbackClass): CropMatch {
  const id = CLASS_ROW_IDS[hardinessClass];
  const row = ROW_BY_ID.get(id);
  if (row === undefined) throw new Error(`Crop table has no row ${id}: expected one for class ${hardinessClass}`);
  return found(row, null);
}
