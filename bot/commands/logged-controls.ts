import { celsiusToKelvin, toHouse, usualControls, type ControlPlan, type Controls, type FanPlace, type Greenhouse } from '../../engine/index.js';
import { localTime } from '../text/local-time.js';
import type { Cells, SeasonFolder } from './season-folder.js';

const HOUR_S = 3600;
const DAY_S = 86_400;
/** The one fan that a log speaks of: that of the tubes, where a house has several. */
const loggedFan = ({ tubes, stoneBox, fan }: Greenhouse): FanPlace | null => (tubes ? 'tubes' : stoneBox?.fan ? 'stone-box' : fan ? 'air' : null);

interface Span {
  readonly fromS: number;
  readonly toS: number;
}

/** What was laid, switched and lit through the season, as the log says: each night's row is known in its evening. */
export function loggedControls(season: Pick<SeasonFolder, 'evenings' | 'actions'>, greenhouse: Greenhouse): ControlPlan {
  const house = toHouse(greenhouse);
  const usual = usualControls(greenhouse, house);
  const time = localTime(greenhouse.place.timeZone ?? 'UTC');
  const byNight = new Map(season.actions.map((row) => [Number(row['night']), row]));
  const fan = loggedFan(greenhouse);
  const spans = season.evenings.map(({ night, issuedS }) => {
    const row = byNight.get(night) ?? {};
    const at = (clock: string | undefined, fallback: string): number => {
      const base = time.atClock(issuedS, clockOr(clock, fallback));
      return base < issuedS - 6 * HOUR_S ? base + DAY_S : base;
    };
    const during = (what: 'cover' | 'fan'): Span | null => {
      if (row[what] !== '1') return null;
      const fromS = at(row[`${what}_on`], '16:30');
      const offS = time.atClock(fromS, clockOr(row[`${what}_off`], '08:30'));
      return { fromS, toS: offS > fromS ? offS : time.atClock(fromS + DAY_S, clockOr(row[`${what}_off`], '08:30')) };
    };
    return { fromS: issuedS - 8 * HOUR_S, shutAllDay: row['vents_closed_at'] === 'closed all day', shutS: at(row['vents_closed_at'], '16:00'), cover: during('cover'), fan: during('fan'), heaterK: heaterSetK(row) };
  });
  return (timeS): Controls => {
    const day = Math.max(0, Math.min(spans.length - 1, Math.floor((timeS - spans[0]!.fromS) / DAY_S)));
    const span = spans[day]!;
    const isOn = (what: 'cover' | 'fan'): boolean => [spans[day - 1]?.[what], span[what]].some((one) => one && timeS >= one.fromS && timeS < one.toS);
    const heaterOn = span.heaterK !== null && timeS >= span.shutS;
    const covered = isOn('cover');
    return {
      ...usual,
      coverOn: house.columns.map((column) => covered && column.rowCover !== null),
      ventsMayOpen: timeS < span.shutS && !span.shutAllDay,
      heaterOn: heaterOn || usual.heaterOn,
      heaterSetK: heaterOn ? span.heaterK : usual.heaterSetK,
      fansOn: fan === null ? usual.fansOn : { ...usual.fansOn, [fan]: usual.fansOn[fan] || isOn('fan') },
    };
  };
}

const clockOr = (clock: string | undefined, fallback: string): string => (/^\d\d?:\d\d$/u.test(clock ?? '') ? clock! : fallback);
const heaterSetK = (row: Cells): number | null => (row['heater'] === '1' ? celsiusToKelvin(Number(row['heater_set_c'])) : null);
