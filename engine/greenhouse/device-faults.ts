import type { GreenhouseFault } from './fault.js';
import type { Greenhouse } from './greenhouse.js';

type Fan = NonNullable<Greenhouse['fan']>;

/** What the fields of devices alone cannot know. Units: m. Valid: a greenhouse that fits the schema. Outside: not applicable. Source: rules of this project. */
export function deviceFaults(greenhouse: Greenhouse): readonly GreenhouseFault[] {
  const { size, beds, solidWall, compost, layers, blower } = greenhouse;
  const faults: GreenhouseFault[] = [];
  if (solidWall?.height !== undefined && solidWall.height > size.height) faults.push({ field: 'solidWall.height', message: `the wall (${solidWall.height} m) is higher than the house (${size.height} m), for example ${(size.height * 0.7).toFixed(1)}` });
  if (compost?.against !== undefined && !beds.some(({ name }) => name === compost.against)) faults.push({ field: 'compost.against', message: `no bed is called ${JSON.stringify(compost.against)}; expected ${beds.length > 0 ? `one of ${beds.map(({ name }) => JSON.stringify(name)).join(', ')}` : 'the name of a bed'}, for example ${JSON.stringify(beds[0]?.name ?? 'north bed')}` });
  if (compost?.against !== undefined && compost.fan) faults.push({ field: 'compost', message: 'a heap with a fan stands outside and cannot lie against a bed; leave out "against" or "fan", for example {"volume": 1, "started": "2026-10-20", "against": "north bed"}' });
  if (blower && layers.length < 2) faults.push({ field: 'blower', message: 'a blower needs two layers of film to keep apart, for example "layers": [{"film": "standard"}, {"film": "standard"}]' });
  for (const [field, fan] of fansOf(greenhouse)) if (fan.supply === 'battery' && fan.battery === undefined) faults.push({ field: `${field}.battery`, message: 'a fan on a battery needs its capacity, for example "240 Wh"' });
  return faults;
}

const fansOf = ({ tubes, stoneBox, compost, fan }: Greenhouse): readonly (readonly [string, Fan])[] => {
  const fans: readonly (readonly [string, Fan | undefined])[] = [['tubes.fan', tubes?.fan], ['stoneBox.fan', stoneBox?.fan], ['compost.fan', compost?.fan], ['fan', fan]];
  return fans.filter((entry): entry is readonly [string, Fan] => entry[1] !== undefined);
};
