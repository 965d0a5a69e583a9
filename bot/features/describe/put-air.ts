import type { CurtainFact, FanFact, FanSaid, TubesFact, VentsFact } from '../../language/house/house-fact.js';
import { areaOfSides, celsiusOf, fileAirflow, fileArea, fileEnergy, fileLength, filePower, metresOf, type FileQuantity } from './file-quantities.js';
import type { DraftFile } from './state.js';
import { lacks, put, type Measures, type Put } from './thing.js';

type FileFan = NonNullable<DraftFile['fan']>;

/** A fan as the file has it; without its airflow it cannot be counted on. */
export function fanOf(known: FileFan | undefined, said: FanSaid): { readonly fan: FileFan } | { readonly lacks: 'airflow' | 'battery' } {
  const airflow = said.airflow === undefined ? (known?.airflow) : (fileAirflow(said.airflow) ?? undefined);
  if (airflow === undefined) return { lacks: 'airflow' };
  const supply = said.supply ?? known?.supply;
  const battery = said.battery === undefined ? known?.battery : fileEnergy(said.battery);
  if (supply === 'battery' && battery === undefined) return { lacks: 'battery' };
  const power = said.power === undefined ? known?.power : (filePower(said.power) ?? undefined);
  return {
    fan: {
      airflow,
      ...(power === undefined ? {} : { power }),
      ...(supply === undefined ? {} : { supply }),
      ...(battery === undefined || supply !== 'battery' ? {} : { battery }),
      ...(said.on === undefined ? {} : { on: said.on }),
    },
  };
}

/** A fan that stirs the air. */
export function putFan(file: DraftFile, fact: FanFact): Put {
  const fan = fanOf(file.fan, fact.fan);
  return 'lacks' in fan ? lacks(fan.lacks) : put({ ...file, fan: fan.fan });
}

export function putTubes(file: DraftFile, fact: TubesFact, { plain }: Measures): Put {
  const known = file.tubes;
  const length = fact.length === undefined ? (known?.length) : fact.length.unit === 'yd' ? Math.round((metresOf(fact.length, plain) ?? 0) * 100) / 100 : fileLength(fact.length, plain);
  if (length === undefined) return lacks('length');
  const fan = fanOf(known?.fan, fact.fan ?? {});
  if ('lacks' in fan) return lacks(fan.lacks);
  return put({
    ...file,
    tubes: {
      ...known,
      length,
      fan: fan.fan,
      ...(fact.count === undefined ? {} : { count: fact.count }),
      ...(fact.diameter === undefined ? {} : { diameter: fileLength(fact.diameter, plain) }),
      ...(fact.depth === undefined ? {} : { depth: fileLength(fact.depth, plain) }),
    },
  });
}

export function putVents(file: DraftFile, fact: VentsFact, { plain, habits }: Measures): Put {
  const one = fact.area !== undefined ? fileArea(fact.area, plain) : fact.opening !== undefined ? areaOfSides(fact.opening, plain) : null;
  const area = one === null ? (file.vents?.area) : fact.opening !== undefined && fact.count !== undefined ? times(one, fact.count) : one;
  if (area === undefined) return lacks('area');
  return put({ ...file, vents: { ...file.vents, area, ...(fact.opener === true ? { opener: true } : {}), ...(fact.openAbove === undefined ? {} : { openAbove: celsiusOf(fact.openAbove, habits.temperature) }) } });
}

/** The same area, so many times. */
function times(area: FileQuantity, count: number): FileQuantity {
  if (typeof area === 'number') return area * count;
  const [value, ...unit] = area.split(' ');
  return `${Number(value) * count} ${unit.join(' ')}`;
}

export function putCurtain(file: DraftFile, fact: CurtainFact): Put {
  const kind = fact.kind ?? file.curtain?.kind;
  return kind === undefined ? lacks('curtain-kind') : put({ ...file, curtain: { ...file.curtain, kind } });
}
