import { checkGreenhouse, HEATER_KINDS, type Greenhouse, type GreenhouseFile } from '../../../engine/index.js';
import type { Amount, Amounts, Item, Meaning } from '../../language/intent.js';
import type { Supposing } from '../evening/supposed-night.js';

export type Suppose = Extract<Meaning, { kind: 'suppose' }>;

/** What was taken because no amount was given, and what stands in the way. */
export type Assumed = 'ten-drums' | 'electric-1500' | 'set-2' | 'fabric-30' | 'cubic-metre-stones' | 'thermal-film' | 'barrier-film' | 'usual-wall' | 'usual-tube' | 'usual-fan' | 'usual-compost' | 'fabric-curtain' | 'second-film';
export type Refused = 'two-films' | 'which-heat' | 'picking' | 'no-film' | 'not-there' | 'no-vents' | 'too-much';

export type ChangedHouse = { readonly supposing: Supposing; readonly assumed: readonly Assumed[]; readonly built: boolean } | { readonly refused: Refused };

/** Usual things, where nothing else is said (project estimates). */
const DRUM_LITRES = 208;
const TEN = 10;
const HEATER_W = 1500;
const SET_C = 2;
const FABRIC_G_PER_M2 = 30;
const STIRRING_M3_PER_H = 300;
const TUBES = { count: 4, fan: { airflow: 300 } };
const COMPOST_AGE_S = 14 * 86_400;
/** A heap of stones with its air (from memory). */
const STONES_KG_PER_M3 = 1600;
const LITRES_PER_M3 = 1000;

interface Draft {
  file: Greenhouse | GreenhouseFile;
  controls: Omit<Supposing, 'greenhouse'>;
  assumed: Assumed[];
  built: boolean;
  refused: Refused | null;
}

/** The house and the night that a grower supposes; nothing of it is kept. */
export function changedHouse(greenhouse: Greenhouse, { items, without, amounts }: Suppose, nowS: number): ChangedHouse {
  const draft: Draft = { file: greenhouse, controls: {}, assumed: [], built: false, refused: null };
  if (items?.length === 0 && without === undefined) draft.controls = { covers: false, curtain: false, heater: false };
  for (const item of items ?? []) put(item, draft, { amounts, greenhouse, nowS });
  for (const item of without ?? []) take(item, draft, greenhouse);
  if (draft.refused !== null) return { refused: draft.refused };
  const check = checkGreenhouse(draft.file);
  return check.ok ? { supposing: { greenhouse: check.greenhouse, ...draft.controls }, assumed: draft.assumed, built: draft.built } : { refused: 'too-much' };
}

function put(item: Item, draft: Draft, said: { amounts: Amounts | undefined; greenhouse: Greenhouse; nowS: number }): void {
  const { greenhouse, nowS } = said;
  const amount = said.amounts?.[item];
  const build = (parts: Partial<GreenhouseFile>, assumed: Assumed | null): void => {
    draft.file = { ...(draft.file), ...parts };
    draft.built = true;
    if (assumed !== null) draft.assumed.push(assumed);
  };
  switch (item) {
    case 'cover': {
      draft.controls = { ...draft.controls, covers: true };
      const weight = amount?.unit === 'gram-per-m2' ? amount.value : null;
      if (weight === null && greenhouse.beds.some(({ cover }) => cover)) return;
      return build({ beds: greenhouse.beds.map((bed) => ({ ...bed, cover: { kind: 'fabric', weight: weight ?? FABRIC_G_PER_M2 } })) }, weight === null ? 'fabric-30' : null);
    }
    case 'curtain':
      draft.controls = { ...draft.controls, curtain: true };
      if (!greenhouse.curtain) build({ curtain: { kind: 'fabric' } }, 'fabric-curtain');
      return;
    case 'heater':
      return heat(amount, draft, { greenhouse, build });
    case 'fan':
    case 'tube': {
      const own = { ...(greenhouse.tubes ? { tubes: true } : {}), ...(item === 'fan' && greenhouse.stoneBox?.fan ? { 'stone-box': true } : {}), ...(item === 'fan' && greenhouse.compost?.fan ? { heap: true } : {}), ...(item === 'fan' && greenhouse.fan ? { air: true } : {}) };
      if (Object.keys(own).length > 0) draft.controls = { ...draft.controls, fans: own };
      else if (item === 'fan') {
        draft.controls = { ...draft.controls, fans: { air: true } };
        build({ fan: { airflow: STIRRING_M3_PER_H, on: true } }, 'usual-fan');
      } else {
        draft.controls = { ...draft.controls, fans: { tubes: true } };
        build({ tubes: { ...TUBES, length: amount?.unit === 'metre' ? amount.value : greenhouse.size.length, fan: { ...TUBES.fan, on: true } } }, 'usual-tube');
      }
      return;
    }
    case 'vents':
      if (!greenhouse.vents) draft.refused = 'no-vents';
      draft.controls = { ...draft.controls, ventsShut: true };
      return;
    case 'water': {
      const count = amount?.unit === 'count' ? Math.round(amount.value) : amount?.unit === 'litre' || amount?.unit === 'kilogram' ? Math.max(1, Math.round(amount.value / DRUM_LITRES)) : TEN;
      const litres = amount?.unit === 'litre' || amount?.unit === 'kilogram' ? amount.value / count : DRUM_LITRES;
      return build({ drums: [...greenhouse.drums, { litres, count }] }, amount === undefined ? 'ten-drums' : null);
    }
    case 'stones': {
      const volume = amount?.unit === 'kilogram' ? amount.value / STONES_KG_PER_M3 : amount?.unit === 'litre' ? amount.value / LITRES_PER_M3 : 1;
      return build({ stones: [...greenhouse.stones, { volume, blackened: true }] }, amount === undefined ? 'cubic-metre-stones' : null);
    }
    case 'layer':
      if (greenhouse.layers.length > 1) draft.refused = 'two-films';
      return build({ layers: [...greenhouse.layers, { film: 'standard' }] }, 'second-film');
    case 'film': {
      const isThermal = greenhouse.layers.some(({ film }) => film === 'thermal');
      return build({ layers: greenhouse.layers.map(() => ({ film: isThermal ? 'ir-barrier' : 'thermal' })) }, isThermal ? 'barrier-film' : 'thermal-film');
    }
    case 'wall':
      return build({ solidWall: {} }, 'usual-wall');
    case 'compost': {
      const bed = greenhouse.beds.find(({ crops }) => crops.length > 0) ?? greenhouse.beds[0];
      return build({ compost: { volume: 1, started: new Date((nowS - COMPOST_AGE_S) * 1000).toISOString().slice(0, 10), ...(bed ? { against: bed.name } : {}) } }, 'usual-compost');
    }
    case 'harvest':
      draft.refused = 'picking';
  }
}

function heat(amount: Amount | undefined, draft: Draft, { greenhouse, build }: { greenhouse: Greenhouse; build: (parts: Partial<GreenhouseFile>, assumed: Assumed | null) => void }): void {
  if (amount !== undefined && amount.unit !== 'C' && amount.unit !== 'watt') {
    draft.refused = 'which-heat';
    return;
  }
  const own = greenhouse.heater;
  const power = amount?.unit === 'watt' ? amount.value : null;
  if (!own || power !== null) build({ heater: { ...(own ?? { kind: 'electric' as const }), power: power ?? HEATER_W } }, own || power !== null ? null : 'electric-1500');
  const held = (own?.thermostat ?? true) && HEATER_KINDS[own?.kind ?? 'electric'].burnHours === null;
  if (held && amount?.unit !== 'C') draft.assumed.push('set-2');
  draft.controls = { ...draft.controls, heater: { setC: held ? (amount?.unit === 'C' ? amount.value : SET_C) : null } };
}

function take(item: Item, draft: Draft, greenhouse: Greenhouse): void {
  const strip = (parts: Partial<GreenhouseFile>, isThere: boolean): void => {
    if (!isThere) draft.refused = 'not-there';
    draft.file = { ...(draft.file), ...parts };
    draft.built = true;
  };
  switch (item) {
    case 'cover':
      if (!greenhouse.beds.some(({ cover }) => cover)) draft.refused = 'not-there';
      draft.controls = { ...draft.controls, covers: false };
      return;
    case 'curtain':
      if (!greenhouse.curtain) draft.refused = 'not-there';
      draft.controls = { ...draft.controls, curtain: false };
      return;
    case 'heater':
      if (!greenhouse.heater) draft.refused = 'not-there';
      draft.controls = { ...draft.controls, heater: false };
      return;
    case 'fan':
    case 'tube':
      if (!greenhouse.tubes && (item === 'tube' || (!greenhouse.fan && !greenhouse.stoneBox?.fan && !greenhouse.compost?.fan))) draft.refused = 'not-there';
      draft.controls = { ...draft.controls, fans: { tubes: false, ...(item === 'fan' ? { 'stone-box': false, heap: false, air: false } : {}) } };
      return;
    case 'vents':
      // Vents left open for the night are an opening of their area.
      if (!greenhouse.vents) draft.refused = 'no-vents';
      draft.file = { ...draft.file, now: { ...greenhouse.now, tornFilm: Math.min(100, greenhouse.now.tornFilm + (greenhouse.vents?.area ?? 0)) } };
      return;
    case 'water':
      return strip({ drums: [] }, greenhouse.drums.length > 0);
    case 'stones':
      return strip({ stones: [] }, greenhouse.stones.length > 0);
    case 'layer':
      if (greenhouse.layers.length < 2) draft.refused = 'no-film';
      return strip({ layers: greenhouse.layers.slice(0, 1), blower: false }, true);
    case 'film':
      draft.refused = 'no-film';
      return;
    case 'wall':
      return strip({ solidWall: undefined }, greenhouse.solidWall !== undefined);
    case 'compost':
      return strip({ compost: undefined }, greenhouse.compost !== undefined);
    case 'harvest':
      draft.refused = 'picking';
  }
}
