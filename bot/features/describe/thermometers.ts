import type { Greenhouse } from '../../../engine/index.js';
import type { ThermometerFact } from '../../language/house/house-fact.js';
import { metresOf } from './file-quantities.js';
import { plainUnit } from './size.js';
import type { DescribeState, DraftFile, Thermometer } from './state.js';

type InFile = NonNullable<DraftFile['thermometers']>;

/** Thermometers by their name; height and shade may follow. */
export function withThermometer({ thermometers, asking, size, habits, file }: DescribeState, said: ThermometerFact): readonly Thermometer[] {
  const unit = plainUnit(size, habits?.lengths ?? null);
  const heightM = said.height === undefined ? null : metresOf(said.height, unit !== null && 'unit' in unit ? unit.unit : 'm');
  const last = thermometers.at(-1);
  const goesOn = said.name === undefined && said.spot === undefined && said.where === undefined && last !== undefined && (asking?.topic === 'thermometers' || said.height === undefined);
  const place = said.where ?? 'inside';
  const name = goesOn ? last.name : (said.name ?? said.spot ?? place);
  const known = thermometers.find((one) => one.name === name && (goesOn || said.where === undefined || one.place === place));
  const bed = known?.bed ?? bedAt(said.spot, file);
  const next: Thermometer = { name, place: known?.place ?? place, ...(bed === undefined ? {} : { bed }), heightM: heightM ?? known?.heightM ?? null, sunlit: said.sun ?? known?.sunlit ?? null };
  return known === undefined ? [...thermometers, next] : thermometers.map((one) => (one === known ? next : one));
}

const ARTICLE = /^the /u;
const bedAt = (spot: string | undefined, { beds = [] }: DraftFile): string | undefined => beds.find(({ name }) => name.toLowerCase().replace(ARTICLE, '') === spot?.replace(ARTICLE, ''))?.name;

const ROUND_TO = 1000;
/** What the file takes. */
const MOST = { thermometers: 12, heightM: 12, letters: 40 } as const;

/** As the file has them. Two of one name in different places are told apart by the place; a bed that is gone and a height that cannot be are left out. */
export const inFile = (thermometers: readonly Thermometer[], { beds = [] }: DraftFile): InFile =>
  thermometers.slice(0, MOST.thermometers).map(({ name, place, bed, heightM, sunlit }, at) => ({
    name: (thermometers.findIndex((one) => one.name === name) < at ? `${name} ${place}` : name).slice(-MOST.letters),
    place,
    ...(bed === undefined || !beds.some((one) => one.name === bed) ? {} : { bed }),
    ...(heightM === null || heightM > MOST.heightM ? {} : { height: Math.round(heightM * ROUND_TO) / ROUND_TO }),
    ...(sunlit === null ? {} : { hangs: sunlit ? ('sun' as const) : ('shade' as const) }),
  }));

/** One of a file, as the conversation has it. */
export const thermometerOf = ({ name, place, bed, height, hangs }: Greenhouse['thermometers'][number]): Thermometer => ({ name, place, ...(bed === undefined ? {} : { bed }), heightM: height ?? null, sunlit: hangs === undefined ? null : hangs === 'sun' });
