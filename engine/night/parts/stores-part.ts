import { BODY_TO_AIR_SHARE } from '../../mass/standing-body.js';
import { waterStore } from '../../mass/water-drum.js';
import { MASSLESS, sensibleStore, type HeatStore } from '../../network/enthalpy.js';
import type { AirIndex } from './air-part.js';
import type { CoverIndex } from './cover-part.js';
import type { ColumnIndex } from './floor-part.js';
import type { NetworkBuilder } from './network-builder.js';

/** Pane of a stone box to the house air by convection, and to the film over it by radiation (project estimate; Duffie2013 ch. 6 gives 3 to 10 together). */
export const PANE_TO_AIR_W_PER_M2K = 3.5;
export const PANE_TO_FILM_W_PER_M2K = 4;
/** Stones to the pane over them, convection 2 to 3 and radiation 4 to 5 W/(m2 K) together (Duffie2013 ch. 6, from memory). */
export const STONES_TO_PANE_W_PER_M2K = 6.5;

export interface StoneIndex {
  readonly skin: number;
  readonly core: number;
}

export interface StoneBoxIndex extends StoneIndex {
  readonly pane: number;
}

export interface StoresIndex {
  readonly drums: readonly number[];
  readonly stones: readonly StoneIndex[];
  readonly stoneBox: StoneBoxIndex | null;
}

interface Around {
  readonly air: AirIndex;
  readonly cover: CoverIndex;
  readonly columns: readonly ColumnIndex[];
}

/** Water drums, stones and the glazed stone box: what they give to the air. Drums and stones are planes of the longwave enclosure for the rest. */
export function addStores(builder: NetworkBuilder, around: Around): StoresIndex {
  const { house } = builder;
  const drums = house.drums.map((group, d) => {
    const node = builder.addNode({ name: `drums ${d + 1}`, store: times(waterStore(group.litresEach), group.count) });
    builder.couple(node, around.air.air, BODY_TO_AIR_SHARE * group.conductanceWPerK);
    return node;
  });
  const stones = house.stones.map(({ lumps }, s) => {
    const index = { skin: builder.addNode({ name: `stones ${s + 1} skin`, store: sensibleStore(lumps.skinJPerK) }), core: builder.addNode({ name: `stones ${s + 1} core`, store: sensibleStore(lumps.coreJPerK) }) };
    builder.couple(index.skin, index.core, lumps.skinToCoreWPerK);
    builder.couple(index.skin, around.air.air, BODY_TO_AIR_SHARE * lumps.surfaceWPerK);
    return index;
  });
  return { drums, stones, stoneBox: addStoneBox(builder, around) };
}

const groundUnder = ({ columns }: Around): number => columns.at(-1)!.surface;

function addStoneBox(builder: NetworkBuilder, around: Around): StoneBoxIndex | null {
  const box = builder.house.stoneBox;
  if (!box) return null;
  const { lumps, glazedM2 } = box;
  const pane = builder.addNode({ name: 'stone box pane', store: MASSLESS });
  const skin = builder.addNode({ name: 'stone box skin', store: sensibleStore(lumps.skinJPerK) });
  const core = builder.addNode({ name: 'stone box core', store: sensibleStore(lumps.coreJPerK) });
  const { air } = around.air;
  builder.couple(pane, air, PANE_TO_AIR_W_PER_M2K * glazedM2);
  builder.couple(pane, around.cover.films[0]!, PANE_TO_FILM_W_PER_M2K * glazedM2);
  builder.couple(skin, pane, STONES_TO_PANE_W_PER_M2K * glazedM2);
  builder.couple(skin, core, lumps.skinToCoreWPerK);
  builder.couple(core, air, box.sidesWPerK / 2);
  builder.couple(core, groundUnder(around), box.sidesWPerK / 2);
  const skinShare = lumps.skinJPerK / (lumps.skinJPerK + lumps.coreJPerK);
  builder.coupleBy(skin, air, () => skinShare * builder.conditions.fanWPerK['stone-box']);
  builder.coupleBy(core, air, () => (1 - skinShare) * builder.conditions.fanWPerK['stone-box']);
  return { pane, skin, core };
}

const times = (one: HeatStore, count: number): HeatStore => ({ ...one, thawedJPerK: one.thawedJPerK * count, frozenJPerK: one.frozenJPerK * count, latentJ: one.latentJ * count });
