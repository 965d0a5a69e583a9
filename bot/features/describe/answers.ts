import type { Quantity } from '../../language/house/clause.js';
import type { BedFact, Fact } from '../../language/house/house-fact.js';
import type { Signal } from '../../language/house/signals.js';
import { FABRIC_WEIGHTS_GSM } from '../../language/house/read-beds.js';
import type { Asked } from '../../language/house/read-facts.js';
import type { Ask, DescribeState } from './state.js';

/** What a question expects, in the terms of the language room. */
export function askedOf({ topic, detail }: Ask): Asked {
  switch (detail) {
    case 'plain-unit':
      return 'units';
    case 'length':
      return 'tubes';
    case 'airflow':
    case 'battery':
      return topic === 'compost' ? 'compost' : 'fan';
    case 'area':
      return 'vents';
    case 'depth':
      return 'edge';
    case 'glazed':
      return 'stone-box';
    case 'amount':
      return 'stones';
    default:
      return topic === 'air' ? 'fan' : topic;
  }
}

const BARE = /^(?:about |around |roughly |maybe |approx\.? |it's |its )?(\d+(?:[.,]\d+)?)[.!]?$/iu;
const HARDINESS = /\b(half[- ]?hardy|very hardy|hardy|tender)\b/iu;
/** Fabrics are sold by 0.5 to 3 oz/yd2, or by 15 g/m2 and more: a bare number is one or the other. */
const MOST_OUNCES = 4;

/** The fact that a very short answer stands for; null where it has to be read as any other message. */
export function shortAnswer(ask: Ask, text: string, state: DescribeState): readonly Fact[] | null {
  const bare = BARE.exec(text.trim());
  const value = bare === null ? null : Number(bare[1]!.replace(',', '.'));
  const plain = (unit: Quantity['unit'] = null): Quantity => ({ value: value ?? 0, unit });
  const { habits } = state;
  const byHabit = (feet: Quantity['unit'], metres: Quantity['unit']): Quantity | null => (habits === null || habits.lengths === 'either' ? null : plain(habits.lengths === 'ft' ? feet : metres));
  const about = (fact: Fact): readonly Fact[] => [fact];
  switch (ask.detail) {
    case 'weight':
      return weightAnswer(text, value);
    case 'hardiness':
      return hardinessAnswer(text, state);
    case 'which-bed': {
      const waiting = state.pending.find(({ fact }) => fact.about === 'bed')?.fact;
      const said = text.toLowerCase().replace(/[.!]/gu, '').trim();
      const bed = (state.file.beds ?? []).find(({ name }) => said.includes(name.toLowerCase().replace(/^the | bed$/gu, '')))?.name;
      return waiting?.about === 'bed' && bed !== undefined ? about({ ...waiting, bed }) : null;
    }
    case 'each':
      return value === null ? null : about({ about: 'water', each: plain() });
    case 'length':
      return value === null ? null : about({ about: 'tubes', length: plain() });
    case 'depth':
      return value === null ? null : about({ about: 'edge', depth: plain() });
    case 'area':
      return value === null ? null : about({ about: 'vents', area: plain() });
    case 'glazed':
      return value === null ? null : about({ about: 'stone-box', glazed: plain() });
    case 'hang':
      return value === null ? null : about({ about: 'thermometer', height: plain() });
    case 'airflow': {
      const airflow = value === null ? null : byHabit('cfm', 'm3/h');
      return airflow === null ? null : about(fanAnswer({ airflow }, state));
    }
    case 'volume': {
      const volume = value === null ? null : byHabit('cu yd', 'm3');
      return volume === null ? null : about({ about: 'compost', volume });
    }
    case 'power': {
      const electric = state.pending.some(({ fact }) => fact.about === 'heater' && fact.fuel === 'electric');
      return value !== null && electric ? about({ about: 'heater', power: plain('w') }) : null;
    }
    default:
      return null;
  }
}

/** A fan's missing figure goes to the thing that waits for it. */
export function fanAnswer(fan: Extract<Fact, { about: 'fan' }>['fan'], state: DescribeState): Fact {
  const waiting = state.pending.find(({ fact, parked }) => !parked && (fact.about === 'tubes' || fact.about === 'fan' || fact.about === 'compost' || fact.about === 'stone-box'))?.fact.about;
  return waiting === 'tubes' || waiting === 'compost' || waiting === 'stone-box' ? { about: waiting, fan } : { about: 'fan', fan };
}

/** How much stone there is goes to the box that waits for it. */
export function stoneAnswer(fact: Fact, { pending }: DescribeState): Fact {
  const waiting = pending.find(({ fact: open, parked }) => !parked && (open.about === 'stones' || open.about === 'stone-box'))?.fact;
  return fact.about === 'stones' && fact.amount !== undefined && waiting?.about === 'stone-box' ? { about: 'stone-box', amount: fact.amount, ...(waiting.kind === undefined ? { kind: fact.kind } : {}) } : fact;
}

function weightAnswer(text: string, value: number | null): readonly Fact[] | null {
  const cover = { about: 'cover', kind: 'fabric', beds: [], crops: [] } as const;
  if (value !== null) return [{ ...cover, weight: { value, unit: value <= MOST_OUNCES ? 'oz' : 'g/m2' } }];
  const word = /\b(light|thin|medium|middle|heavy|thick)\b/iu.exec(text)?.[1]?.toLowerCase();
  if (word === undefined || text.trim().split(/\s+/u).length > 4) return null;
  const weight = word === 'light' || word === 'thin' ? 'light' : word === 'heavy' || word === 'thick' ? 'heavy' : 'medium';
  return [{ ...cover, weightGsm: FABRIC_WEIGHTS_GSM[weight] }];
}

function hardinessAnswer(text: string, state: DescribeState): readonly Fact[] | null {
  const waiting = state.pending.find(({ fact, parked }) => !parked && fact.about === 'bed')?.fact as BedFact | undefined;
  const said = HARDINESS.exec(text)?.[1]?.toLowerCase().replace(/half[- ]?hardy/u, 'half-hardy') as 'tender' | 'half-hardy' | 'hardy' | 'very hardy' | undefined;
  if (waiting === undefined || said === undefined) return null;
  const first = waiting.crops.findIndex(({ known, hardiness }) => !known && hardiness === undefined);
  return [{ ...waiting, crops: waiting.crops.map((crop, at) => (at === first ? { ...crop, hardiness: said } : crop)) }];
}

/** Yes and no, where they say something of the greenhouse. */
export function yesOrNo(ask: Ask, signal: Signal['kind'], state: DescribeState): readonly Fact[] | null {
  if (signal !== 'yes' && signal !== 'no') return null;
  if (ask.detail === 'flue') return [{ about: 'heater', vented: signal === 'yes' }];
  if (ask.detail === 'side' && signal === 'no') return [{ about: 'size', side: { value: 0, unit: 'm' } }];
  if (ask.detail === 'likely-height' && signal === 'yes' && state.size.width !== undefined) return [{ about: 'size', height: { value: state.size.width.value / 2, unit: state.size.width.unit } }];
  if (ask.detail !== 'all' || signal !== 'no') return null;
  switch (ask.topic) {
    case 'covers':
      return [{ about: 'none', thing: 'covers' }];
    case 'water':
      return [{ about: 'none', thing: 'water' }, { about: 'none', thing: 'stones' }];
    case 'air':
      return [{ about: 'none', thing: 'tubes' }, { about: 'none', thing: 'fan' }];
    case 'compost':
    case 'heater':
    case 'thermometers':
      return [{ about: 'none', thing: ask.topic }];
    default:
      return null;
  }
}
