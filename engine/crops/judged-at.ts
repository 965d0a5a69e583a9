/** A temperature of the simulation: the air around the plant (under its cover), its leaf, or the soil it stands in. */
export type CropNode = 'air-at-plant' | 'leaf' | 'soil';

export interface JudgedAt {
  readonly damage: CropNode;
  readonly kill: CropNode;
}

/** How quickly the organ follows its surroundings; decides how long a dip must last to count. */
export type OrganKind = 'leaf-or-wood' | 'bud-or-flower' | 'bulky' | 'buried';

interface MeasuredOrgan extends JudgedAt {
  readonly organ: OrganKind;
}

const at = (node: CropNode, organ: OrganKind): MeasuredOrgan => ({ damage: node, kill: node, organ });
const TOP_AND_ROOT: MeasuredOrgan = { damage: 'leaf', kill: 'soil', organ: 'leaf-or-wood' };

// Every text of the crop table, once. A text that says "air" or "plant level" is compared with air; a text that names an organ
// above ground is compared with the leaf, which is what radiates to the sky; a crown, root or root-ball with the soil.
const MEASURED = {
  'air at plant level (under any cover)': at('air-at-plant', 'leaf-or-wood'),
  'leaf tissue (electrolyte leakage 15 % and 50 %) in an unheated greenhouse, midwinter': at('leaf', 'leaf-or-wood'),
  'heads; roots are far hardier': at('leaf', 'bulky'),
  'head tissue': at('leaf', 'bulky'),
  'curd tissue': at('leaf', 'bulky'),
  'foliage; roots follow soil temperature': at('leaf', 'leaf-or-wood'),
  'foliage and exposed root shoulder': at('leaf', 'leaf-or-wood'),
  'damage: foliage; kill: root in soil': TOP_AND_ROOT,
  foliage: at('leaf', 'leaf-or-wood'),
  'leaves; bulb is hardier': at('leaf', 'leaf-or-wood'),
  'tops; cloves in soil are hardier': at('leaf', 'leaf-or-wood'),
  // Chives die back and return: the kill number is the crown's.
  'tops; crown hardier': TOP_AND_ROOT,
  'damage: foliage; kill: crown in ground': TOP_AND_ROOT,
  'damage: foliage; kill: crown; sweet marjoram is tender': TOP_AND_ROOT,
  'damage: tops; kill: rhizomes in ground': TOP_AND_ROOT,
  'seedlings and vines': at('leaf', 'leaf-or-wood'),
  'flowers and pods': at('leaf', 'bud-or-flower'),
  'filling pods, field air temperature': at('air-at-plant', 'bulky'),
  // The strawberry crown sits at the soil surface and follows it, not the air.
  'crown tissue (T50 for kill)': at('soil', 'buried'),
  'bud; 22-27 F depending on closeness to opening': at('leaf', 'bud-or-flower'),
  'flower at plant level': at('air-at-plant', 'bud-or-flower'),
  'small green fruit': at('leaf', 'bud-or-flower'),
  'wood (hardened) / unhardened young trees in fall (tender)': at('leaf', 'leaf-or-wood'),
  'leaves and wood; chill value is stored fruit': at('leaf', 'leaf-or-wood'),
  'wood mid-20s F; fruit freezes at 26-28 F for several hours': at('leaf', 'leaf-or-wood'),
  'leaves and wood': at('leaf', 'leaf-or-wood'),
  'wood of hardened bearing trees': at('leaf', 'leaf-or-wood'),
  'fruit, air 26-28 F for several hours (4 h taken)': at('air-at-plant', 'bulky'),
  'dormant buds': at('leaf', 'bud-or-flower'),
  bud: at('leaf', 'bud-or-flower'),
  'green shoot': at('leaf', 'bud-or-flower'),
  'flower buds: damage = 10 % kill, kill = 90 % kill after 30 min': at('leaf', 'bud-or-flower'),
  'whole plant LT50 (V. gracilis, autumn-hardened)': at('leaf', 'leaf-or-wood'),
  'whole plant, autumn-hardened: no loss to -18, LT50 -20.3, all dead at -22': at('leaf', 'leaf-or-wood'),
  'seedling frozen in ice, lethal temperature': at('leaf', 'leaf-or-wood'),
  // The pot's own soil, which cools faster than a bed: where pots have no soil node of their own this is optimistic.
  'root-ball temperature': at('soil', 'buried'),
} as const satisfies Readonly<Record<string, MeasuredOrgan>>;

/** A row whose text is not listed here does not compile. */
export type RefersTo = keyof typeof MEASURED;
export const REFERS_TO_TEXTS = Object.keys(MEASURED) as readonly RefersTo[];

/**
 * The temperature with which a row's numbers are compared, one for damage and one for kill.
 * Units: none.
 * Valid: every row of the crop table.
 * Outside: does not compile.
 * Source: the row's own text (project reading: air stays air, organs above ground are leaves, crowns and roots are soil).
 */
export function judgedAt(row: { readonly refersTo: RefersTo }): JudgedAt {
  const { damage, kill } = MEASURED[row.refersTo];
  return { damage, kill };
}

/**
 * What kind of organ a row's numbers were measured on.
 * Units: none.
 * Valid: every row of the crop table.
 * Outside: does not compile.
 * Source: the row's own text (project reading).
 */
export const organKind = (row: { readonly refersTo: RefersTo }): OrganKind => MEASURED[row.refersTo].organ;

/**
 * Whether the damage and the kill number belong to different organs (top, and crown or root), so that no one curve joins them.
 * Units: none.
 * Valid: every row of the crop table.
 * Outside: does not compile.
 * Source: the row's own text (thyme, sage, oregano, mint, parsnip, chives).
 */
export function hasDifferentOrgans(row: { readonly refersTo: RefersTo }): boolean {
  const { damage, kill } = judgedAt(row);
  return damage !== kill;
}
