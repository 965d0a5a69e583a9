import type { FanPlace, Verdict } from '../../engine/index.js';
import type { NightFlag, NightLine, PicturedCrop } from '../chart/night-picture.js';
import { nights } from './chance.js';
import { temperature, type TempUnits } from './temperature.js';

/** All words of the picture of a night. The picture is read at a third of its size: few and short. */

/** For a greenhouse whose name cannot be drawn. */
export const NAMELESS_GREENHOUSE = 'The greenhouse';

export const nightLine = (dayName: string, clockNow: string): string => `Night of ${dayName}, seen at ${clockNow}`;

export const VERDICT_TAGS = { safe: 'SAFE', watch: 'WATCH', 'at-risk': 'AT RISK', 'likely-lost': 'LIKELY LOST' } as const satisfies Record<Verdict, string>;

const capitalised = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** What stands beside the tag; the crop's name comes shortened to what fits. */
export function verdictLine({ verdict, damageProbability, lossProbability, isPicked }: PicturedCrop, cropName: string): string {
  const name = isPicked ? `${capitalised(cropName)} left out` : capitalised(cropName);
  switch (verdict) {
    case 'safe':
      return `all crops; ${cropName} comes nearest`;
    case 'watch':
    case 'at-risk':
      return `${name}: harmed on ${nights(damageProbability)}`;
    case 'likely-lost':
      return `${name}: lost on ${nights(lossProbability)}`;
  }
}

export const NO_CROPS = 'No crops are listed';

/** Names shortened to what fits into a label. */
export interface ShortNames {
  readonly crop: string;
  readonly bed: string;
}

/** The name of a line, written on it. */
export function lineName({ name, place }: NightLine, crop: PicturedCrop | null, names: ShortNames): string {
  switch (name) {
    case 'outside':
      return 'outside';
    case 'inside':
      return 'inside';
    case 'cover':
      return crop !== null && crop.bed === place.bed ? 'under the cover' : `${names.bed}, covered`;
    case 'plant':
      return crop === null ? 'inside' : plantName(place.place, crop, names.crop);
  }
}

function plantName(place: NightLine['place']['place'], { isUnderCover }: PicturedCrop, cropName: string): string {
  if (place === 'soil') return `soil at the ${cropName}`;
  if (place === 'inside') return `inside, at the ${cropName}`;
  return isUnderCover ? `${cropName} under the cover` : `${cropName} leaf`;
}

export const lowValue = (lowC: number, units: TempUnits): string => temperature(lowC, units);
export const lowTime = (clock: string): string => `lowest, at ${clock}`;

/** What the band means, in the words of the message; written in it. */
export const BAND_WORDS = '8 nights in 10';

/** The words of a limit of the crop; one that lies below all that the picture shows says so first. */
export const limitWords = (limit: { readonly cropName: string; readonly does: 'harm' | 'kill'; readonly tempC: number; readonly isFarBelow: boolean }, units: TempUnits): string =>
  `${limit.isFarBelow ? 'far below: ' : ''}${limit.cropName} ${limit.does === 'harm' ? 'harmed' : 'killed'} ${limit.isFarBelow ? 'at' : 'below'} ${temperature(limit.tempC, units)}`;

export const sunset = (clock: string): string => `sunset ${clock}`;
export const sunrise = (clock: string): string => `sunrise ${clock}`;

const FAN_NAMES = { tubes: 'tube fan', 'stone-box': 'stone-box fan', heap: 'compost fan', air: 'stirring fan' } as const satisfies Record<FanPlace, string>;

/** A flag on the time axis: the time first, then what to do. */
export function flagWords(flag: NightFlag, clock: string, units: TempUnits): string {
  switch (flag.does) {
    case 'cover':
      return `by ${clock}: cover ${severalOf(flag.beds, 'beds')}`;
    case 'pick':
      return `by ${clock}: pick ${severalOf(flag.crops, 'crops')}`;
    case 'shut-vents':
      return `by ${clock}: shut the vents`;
    case 'draw-curtain':
      return `by ${clock}: draw the curtain`;
    case 'heater':
      return flag.setC === null ? `from ${clock}: run the heater` : `from ${clock}: heater at ${temperature(flag.setC, units)}`;
    case 'fan':
      return flag.run ? `from ${clock}: run the ${FAN_NAMES[flag.fan]}` : `from ${clock}: ${FAN_NAMES[flag.fan]} off`;
  }
}

/** Two are named; more are counted, because a flag is one short line. */
const severalOf = (names: readonly string[], plural: string): string => (names.length <= 2 ? names.join(' and ') : `${names.length} ${plural}`);

export const moreFlags = (count: number): string => `and ${count} more: see the message`;
export const idleWords = (idle: 'calm' | 'not-worth-it' | 'too-late'): string => ({ calm: 'Nothing to do tonight.', 'not-worth-it': 'Nothing that is worth the work.', 'too-late': 'Too late for work in daylight.' })[idle];

const HOUR_S = 3600;
export const staleMark = (ageS: number): string => `OLD FORECAST, ${Math.round(ageS / HOUR_S)} h old: band widened`;
export const INVENTED_MARK = 'INVENTED WEATHER: not a forecast';
export const clockMark = (shiftS: number): string => `The clock goes ${shiftS > 0 ? 'forward' : 'back'} ${shiftHours(shiftS)} this night`;
const shiftHours = (shiftS: number): string => (Math.abs(shiftS) === HOUR_S ? '1 h' : `${Math.round(Math.abs(shiftS) / 60)} min`);

/** The licence of the weather data asks for this under every picture that is made of them. */
export function pictureAttribution(source: string): readonly string[] {
  if (source === 'demo') return ['Invented weather, our own model of the house.', 'An estimate, not a promise.'];
  const service = source === 'met-norway' ? 'MET Norway (met.no)' : 'Open-Meteo.com';
  return [`Weather data by ${service}, CC BY 4.0,`, 'changed by our model. An estimate, not a promise.'];
}
