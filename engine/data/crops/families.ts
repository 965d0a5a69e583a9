/** Crops that growers call by one name, and which of them is meant when nothing more is said. */
export interface CropFamily {
  readonly name: string;
  readonly defaultId: string;
  readonly memberIds: readonly string[];
}

const family = (name: string, defaultId: string, otherIds: readonly string[]): CropFamily => ({ name, defaultId, memberIds: [defaultId, ...otherIds] });

export const CROP_FAMILIES: readonly CropFamily[] = [
  family('kale', 'kale_curly', ['kale_russian', 'kale_lacinato']),
  family('spinach', 'spinach', ['spinach_smooth']),
  family('lettuce', 'lettuce_leaf', ['lettuce_romaine', 'lettuce_butterhead', 'lettuce_iceberg', 'lettuce_winter_small']),
  family('asian greens', 'mizuna', ['tatsoi', 'pak_choi', 'napa', 'komatsuna', 'mustard', 'tokyo_bekana']),
  family('cabbage', 'cabbage', ['cabbage_savoy']),
  family('broccoli', 'broccoli', ['broccoli_head', 'broccoli_sprouting']),
  family('cauliflower', 'cauliflower', ['cauliflower_curd']),
  family('radish', 'radish', ['daikon']),
  family('leek', 'leek_summer', ['leek_winter']),
  family('pea', 'pea', ['pea_bloom', 'pea_winter']),
  family('fava', 'fava', ['fava_pods']),
  family('squash', 'squash_summer', ['squash_winter']),
  family('strawberry', 'strawberry_crown', ['strawberry_bud', 'strawberry_bloom', 'strawberry_fruit']),
  family('citrus', 'citrus_fruit', ['lemon', 'orange', 'mandarin', 'satsuma']),
  family('grape', 'grape_dormant', ['grape_swell', 'grape_shoot']),
  family('apple', 'apple_full_bloom', [
    'apple_silver_tip', 'apple_green_tip', 'apple_half_inch_green', 'apple_tight_cluster', 'apple_first_pink', 'apple_full_pink',
    'apple_first_bloom', 'apple_post_bloom',
  ]),
  family('peach', 'peach_full_bloom', [
    'peach_first_swelling', 'peach_calyx_green', 'peach_calyx_red', 'peach_first_pink', 'peach_first_bloom', 'peach_post_bloom',
  ]),
  family('cherry', 'cherry_full_bloom', [
    'cherry_first_swelling', 'cherry_side_green', 'cherry_green_tip', 'cherry_tight_cluster', 'cherry_open_cluster', 'cherry_first_white',
    'cherry_first_bloom', 'cherry_post_bloom',
  ]),
];
