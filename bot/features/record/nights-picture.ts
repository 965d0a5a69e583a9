import type { TempUnits } from '../../text/temperature.js';
import { keyOf, saidOf, type PastNight, type SaidLow, type Thermometer } from './past-nights.js';

/** One night of the picture. */
export interface PicturedNight {
  readonly date: string;
  readonly said: SaidLow | null;
  /** `bound`: the thermometer was not reset, so that it was no colder. */
  readonly read: { readonly tempC: number; readonly kind: 'low' | 'bound' } | null;
  /** What was said is about the night as it was. */
  readonly compares: boolean;
}

/** Said and read, night by night, of one thermometer: degrees C, oldest first. */
export interface NightsPicture {
  readonly greenhouse: string;
  readonly units: TempUnits;
  readonly thermometer: Thermometer;
  readonly nights: readonly PicturedNight[];
  /** Who gave the weather. */
  readonly sources: readonly string[];
}

/** Draws it as a PNG, base64, away from the thread that talks; null where that fails. */
export type DrawNights = (picture: NightsPicture) => Promise<string | null>;

/** More would be too thin for a phone. */
const MOST_NIGHTS = 40;

export function nightsPicture(nights: readonly PastNight[], thermometer: Thermometer, { greenhouse, units }: { greenhouse: string; units: TempUnits }): NightsPicture {
  const shown = nights.slice(-MOST_NIGHTS);
  return {
    greenhouse,
    units,
    thermometer,
    sources: [...new Set(shown.flatMap(({ source }) => source ?? []))],
    nights: shown.map(({ date, places, reads }): PicturedNight => {
      const read = reads.find((one) => keyOf(one) === keyOf(thermometer) && one.judged !== 'open');
      return {
        date,
        said: read?.said ?? saidOf(places, thermometer.place),
        read: read === undefined ? null : { tempC: read.tempC, kind: read.judged === 'good' ? 'low' : 'bound' },
        compares: read === undefined || read.said === null || read.compares,
      };
    }),
  };
}

const INSIDE: Thermometer = { place: 'inside', name: null };

/** The thermometer that was read most; the one inside where none was. */
export function mainThermometer(nights: readonly PastNight[], counts: (read: PastNight['reads'][number]) => boolean = () => true): Thermometer {
  const times = new Map<string, { thermometer: Thermometer; count: number }>();
  for (const read of nights.flatMap(({ reads }) => reads).filter(counts)) {
    const known = times.get(keyOf(read));
    times.set(keyOf(read), { thermometer: { place: read.place, name: read.name }, count: (known?.count ?? 0) + 1 });
  }
  const [most] = [...times.values()].sort((a, b) => b.count - a.count || Number(b.thermometer.place === 'inside') - Number(a.thermometer.place === 'inside'));
  return most?.thermometer ?? INSIDE;
}
