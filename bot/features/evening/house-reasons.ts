import { kelvinToCelsius, type EveningPlan, type FanPlace, type Greenhouse } from '../../../engine/index.js';
import type { LocalTime } from '../../text/local-time.js';
import type { AdvisoryReason, FanName, TroubleCode } from './advisory.js';

const FAN_NAMES = { tubes: 'tubes', 'stone-box': 'stones', heap: 'compost', air: 'air' } as const satisfies Record<FanPlace, FanName>;

export const fanName = (place: FanPlace): FanName => FAN_NAMES[place];

/** A crop is named for a power cut when it is then marked on this many nights more. */
const WORSE_BY = 0.15;
const SECONDS_PER_HOUR = 3600;
const tenth = (value: number): number => Math.round(value * 10) / 10;
const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** What has gone wrong in the house, as the file has it. */
export function troublesReason({ now }: Greenhouse): AdvisoryReason[] {
  const found: readonly (readonly [TroubleCode, boolean])[] = [
    ['snow', now.snowOnRoof > 0],
    ['power-out', now.powerOut],
    ['blower-off', now.blowerOff],
    ['opening', now.doorOpen || now.tornFilm > 0],
    ['fans-dead', now.fansDead],
    ['fuel-out', now.fuelOut],
  ];
  const items = found.filter(([, isSo]) => isSo).map(([code]) => code);
  return items.length === 0 ? [] : [{ code: 'trouble', items }];
}

/** Each fan with what it would bring; every fan gets its word, because leaving one off is advice too. */
export const fanReasons = ({ moves }: EveningPlan): AdvisoryReason[] =>
  moves.fanAdvice.map((advice) => ({ code: 'fan', fan: fanName(advice.place), advice: advice.advice, worthC: 'worthK' in advice ? tenth(advice.worthK) : 0, batteryShort: 'batteryShort' in advice && advice.batteryShort }));

/** A filling that ends before the night does. */
export function burnsOut({ chosen, house, night }: EveningPlan, time: LocalTime): AdvisoryReason[] {
  const { heater } = chosen.choices;
  if (!heater || house.heater === null || house.heater.burnS === null || heater.untilS >= night.sunriseS) return [];
  return [{ code: 'burns-out', hours: tenth(house.heater.burnS / SECONDS_PER_HOUR), at: time.iso(heater.untilS) }];
}

export function ifPowerFails({ ifPowerFails: failure, chosen }: EveningPlan): AdvisoryReason[] {
  const inside = failure?.outlook.places.find(({ key }) => key.place === 'inside');
  if (!failure || !inside) return [];
  const crops = failure.outlook.crops
    .filter(({ damageProbability }, k) => damageProbability - chosen.outlook.crops[k]!.damageProbability >= WORSE_BY)
    .map(({ crop, damageProbability }) => ({ asked: crop.asked, damageProbability: hundredth(damageProbability) }));
  return [{ code: 'if-power-fails', stops: failure.stops, insideLowC: tenth(kelvinToCelsius(inside.q50K)), crops }];
}
