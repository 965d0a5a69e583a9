import type { CropRow } from '../crops/crop-row.js';
import { ALLIUMS } from './crops/alliums.js';
import { FRUIT_PLANTS } from './crops/fruit-plants.js';
import { HEADING_BRASSICAS } from './crops/heading-brassicas.js';
import { HERBS } from './crops/herbs.js';
import { LEAFY_GREENS } from './crops/leafy-greens.js';
import { LEGUMES } from './crops/legumes.js';
import { ORNAMENTALS } from './crops/ornamentals.js';
import { ROOTS_AND_STALKS } from './crops/roots-and-stalks.js';
import { STARTS } from './crops/starts.js';
import { TREE_FRUIT_BUDS } from './crops/tree-fruit-buds.js';
import { UNKNOWN_CROPS } from './crops/unknown-crops.js';
import { WARM_SEASON } from './crops/warm-season.js';

/** Every row of the crop table, one a crop or organ. */
export const CROP_ROWS: readonly CropRow[] = [
  ...LEAFY_GREENS,
  ...HEADING_BRASSICAS,
  ...ROOTS_AND_STALKS,
  ...ALLIUMS,
  ...HERBS,
  ...LEGUMES,
  ...WARM_SEASON,
  ...FRUIT_PLANTS,
  ...TREE_FRUIT_BUDS,
  ...ORNAMENTALS,
  ...STARTS,
  ...UNKNOWN_CROPS,
];
