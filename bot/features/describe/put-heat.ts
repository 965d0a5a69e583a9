import { HEATER_KINDS, type HeaterKind } from '../../../engine/index.js';
import type { Fuel, HeaterFact } from '../../language/house/house-fact.js';
import { celsiusOf, filePower, type FileQuantity } from './file-quantities.js';
import type { DraftFile } from './state.js';
import { lacks, put, type Measures, type Put } from './thing.js';

/** A tea light, whatever pot stands over it (13 g of paraffin in 4 h, as in the engine's table of heaters). */
const TEA_LIGHT_W = 39;
const WITH_FLUE_OR_WITHOUT: ReadonlySet<Fuel> = new Set<Fuel>(['propane', 'kerosene', 'gas']);

const FUEL_OF: Readonly<Record<HeaterKind, Fuel>> = {
  electric: 'electric', 'vented-propane': 'propane', 'unvented-propane': 'propane', 'vented-kerosene': 'kerosene', 'unvented-kerosene': 'kerosene', 'vented-gas': 'gas', 'unvented-gas': 'gas', 'wood-stove': 'wood', candles: 'candles',
};

function kindOf(fuel: Fuel, vented: boolean): HeaterKind {
  switch (fuel) {
    case 'electric':
    case 'candles':
      return fuel;
    case 'wood':
      return 'wood-stove';
    default:
      return `${vented ? 'vented' : 'unvented'}-${fuel}`;
  }
}

/** Fuel, flue and power must be known; another kind of flame needs its safety words anew. */
export function putHeater(file: DraftFile, fact: HeaterFact, { habits }: Measures): Put {
  const known = file.heater;
  const fuel = fact.fuel ?? (fact.fuelUnsure === true || known === undefined ? undefined : FUEL_OF[known.kind]);
  if (fuel === undefined) return lacks('fuel');
  const sameFuel = known !== undefined && FUEL_OF[known.kind] === fuel;
  const vented = fact.vented ?? (sameFuel && WITH_FLUE_OR_WITHOUT.has(fuel) ? known.kind.startsWith('vented') : undefined);
  if (WITH_FLUE_OR_WITHOUT.has(fuel) && vented === undefined) return lacks('flue');
  const candles = fuel === 'candles' && fact.count !== undefined ? TEA_LIGHT_W * fact.count : null;
  const power: FileQuantity | null | undefined = candles ?? (fact.power === undefined ? (sameFuel ? (known.power) : undefined) : filePower(fact.power));
  if (power === undefined || power === null) return lacks(fuel === 'candles' ? 'candles' : 'power');
  const kind = kindOf(fuel, vented ?? false);
  const running = fact.on === true || (fact.set !== undefined && fact.on !== false);
  return put({
    ...file,
    heater: {
      ...(sameFuel ? known : {}),
      kind,
      power,
      ...(fact.thermostat === undefined ? {} : { thermostat: fact.thermostat }),
      ...(fact.set === undefined ? {} : { set: celsiusOf(fact.set, habits.temperature) }),
      ...(running ? { on: true } : {}),
      ...(fact.price === undefined ? {} : { price: fact.price }),
      safetyRead: known?.kind === kind && known.safetyRead === true,
    },
  });
}

/** A flame whose safety words have not been acknowledged. */
export const needsSafety = ({ heater }: DraftFile): boolean => heater !== undefined && HEATER_KINDS[heater.kind].combustion !== 'none' && heater.safetyRead !== true;
