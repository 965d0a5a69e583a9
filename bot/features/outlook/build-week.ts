import { HEATER_KINDS, kelvinToCelsius, type ColdSpell, type Greenhouse, type NightAhead, type Preparation, type WeekAhead } from '../../../engine/index.js';
import type { LocalTime } from '../../text/local-time.js';
import type { WeatherAnswer } from '../../ports.js';
import type { Week, WeekCrop, WeekLow, WeekNight, WeekPreparation, WeekSpell } from './week.js';

const tenth = (value: number): number => Math.round(value * 10) / 10;
const hundredth = (value: number): number => Math.round(value * 100) / 100;

/** The week as data; the caller adds the words. */
export function buildWeek(week: WeekAhead, context: { greenhouse: Greenhouse; answer: WeatherAnswer; time: LocalTime }): Week {
  const { greenhouse, answer, time } = context;
  return {
    greenhouse: greenhouse.name,
    weather: { source: answer.source, stale: answer.stale },
    nights: week.usual.map((usual, n) => weekNight(usual, week.covered[n]!, { greenhouse, time })),
    spell: week.spell ? weekSpell(week.spell, week.prepare, { greenhouse, time }) : null,
  };
}

function weekNight(usual: NightAhead, covered: NightAhead, { greenhouse, time }: { greenhouse: Greenhouse; time: LocalTime }): WeekNight {
  const low = (place: 'outside' | 'inside'): WeekLow => {
    const { q10K, q50K, q90K } = usual.outlook.places.find(({ key }) => key.place === place)!;
    return { q10: tenth(kelvinToCelsius(q10K)), q50: tenth(kelvinToCelsius(q50K)), q90: tenth(kelvinToCelsius(q90K)) };
  };
  const hasCurtain = greenhouse.curtain !== undefined;
  return {
    night: time.date(usual.span.sunsetS),
    day: time.day(usual.span.sunsetS),
    outside: low('outside'),
    inside: low('inside'),
    crops: usual.outlook.crops.map(({ crop, verdict, damageProbability }, k): WeekCrop => {
      const other = covered.outlook.crops[k]!;
      const canCover = hasCurtain || greenhouse.beds.some(({ name, cover }) => name === crop.bed && cover !== undefined);
      return {
        crop: crop.match.row.id,
        asked: crop.asked,
        bed: crop.bed,
        usual: { verdict, damageProbability: hundredth(damageProbability) },
        covered: canCover ? { verdict: other.verdict, damageProbability: hundredth(other.damageProbability) } : null,
      };
    }),
  };
}

/** Stores that a grower has built, or the soil where there are none: one line each. */
function storesOf({ stores }: ColdSpell): WeekSpell['stores'] {
  const places = [...new Set(stores.map(({ key }) => key.place))];
  return places.map((place) => {
    const own = stores.filter(({ key }) => key.place === place);
    const mean = (value: (store: (typeof own)[number]) => number): number => own.reduce((sum, store) => sum + value(store), 0) / own.length;
    return { place, firstC: tenth(kelvinToCelsius(mean(({ firstK }) => firstK))), lastC: tenth(kelvinToCelsius(mean(({ lastK }) => lastK))) };
  });
}

function weekSpell(spell: ColdSpell, prepare: readonly Preparation[], { greenhouse, time }: { greenhouse: Greenhouse; time: LocalTime }): WeekSpell {
  const from = spell.nights[0]!.span.sunsetS;
  return {
    from: time.date(from),
    fromDay: time.day(from),
    nights: spell.nights.length,
    worst: time.date(spell.worst.span.sunsetS),
    worstDay: time.day(spell.worst.span.sunsetS),
    stores: storesOf(spell),
    prepare: prepare.map((one): WeekPreparation => {
      switch (one.what) {
        case 'fuel':
          return { what: 'fuel', amount: tenth(one.units), unit: HEATER_KINDS[greenhouse.heater!.kind].unitSold, nights: one.nights };
        case 'pick':
          return { what: 'pick', asked: one.asked, bed: one.bed, before: time.iso(one.beforeS), beforeDay: time.day(one.beforeS) };
        default:
          return { what: one.what, beds: one.beds };
      }
    }),
  };
}
