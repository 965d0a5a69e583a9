import { layerNearest } from '../../ground/soil-column.js';
import { HEAP_HEAT_CAPACITY_J_PER_M3K, heapConductancesWPerK } from '../../heat/compost-heap.js';
import { sensibleStore } from '../../network/enthalpy.js';
import type { AirIndex } from './air-part.js';
import type { ColumnIndex } from './floor-part.js';
import { BOUNDARY, type NetworkBuilder } from './network-builder.js';

/** A heap against a bed warms its soil about this deep. */
const CONTACT_DEPTH_M = 0.15;

/** A compost heap: in the house against a bed or free, or outside with pipes that house air is blown through. Its core; null without one. */
export function addHeap(builder: NetworkBuilder, around: { air: AirIndex; columns: readonly ColumnIndex[] }): number | null {
  const { heap } = builder.house;
  if (!heap) return null;
  const core = builder.addNode({ name: 'compost', store: sensibleStore(HEAP_HEAT_CAPACITY_J_PER_M3K * heap.volumeM3) });
  const { oneFace, freeFaces } = heapConductancesWPerK(heap.volumeM3);
  const { air } = around.air;
  builder.couple(core, heap.fan ? BOUNDARY.outside : air, freeFaces);
  const standsOn = around.columns[heap.column ?? around.columns.length - 1]!;
  if (heap.fan) builder.couple(core, BOUNDARY.deep, oneFace);
  else builder.couple(core, standsOn.surface + layerNearest(CONTACT_DEPTH_M), oneFace);
  builder.coupleBy(core, air, () => builder.conditions.fanWPerK.heap);
  return core;
}
