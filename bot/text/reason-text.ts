import type { AdvisoryAction, AdvisoryReason, TroubleCode } from '../features/evening/advisory.js';
import { fanWords } from './action-text.js';
import { nights } from './chance.js';
import { clockOf } from './local-time.js';
import { secondWeather } from './second-weather-text.js';
import { EXAMPLE, temperature, temperatureDifference, type TempUnits } from './temperature.js';

const CHOICE_WORDS: Readonly<Record<string, string | null>> = {
  'nothing-at-risk': null,
  'gain-worth-it': null,
  'gain-too-small': 'What the work would save is not worth the trip tonight.',
  'best-is-nothing': 'No cover or heat that you have would save more than it costs tonight.',
  'kept-as-issued': 'The plan stays as it was.',
  switched: 'The forecast has changed, and so has the plan.',
  'stand-down': 'The forecast has turned milder: you can leave it.',
};

const NOTE_WORDS: Readonly<Record<string, string | null>> = {
  'coarse-steps': 'The forecast goes hour by hour only',
  'short-horizon': 'The forecast reaches only',
  'short-history': 'Past weather is known only',
  'filled-gap': 'A short gap in the forecast was bridged:',
  'second-model-used': 'Part of the forecast comes from the second model:',
  'missing-variable': 'Missing in the forecast:',
  'no-ensemble': 'No word from the ensemble on how sure the forecast is:',
  // The operator's matter: logged where the weather comes in.
  'no-members': null,
};

/** One sentence for a reason; null where there is nothing worth saying. */
export function reasonSentence(reason: AdvisoryReason, words: { units: TempUnits; cropName: (id: string) => string }): string | null {
  switch (reason.code) {
    case 'counts-on': {
      const parts = [...(reason.coveredBeds.length > 0 ? [`covers on ${list(reason.coveredBeds)}`] : []), ...(reason.heaterOn ? [reason.heaterSetC === null ? 'the heater on' : `the heater at ${temperature(reason.heaterSetC, words.units)}`] : []), ...(reason.curtainDrawn ? ['the curtain drawn'] : []), ...reason.fans.map((fan) => `${fanWords(fan)} running`)];
      return `This counts on what is in place: ${parts.join(', ')}.`;
    }
    case 'trouble':
      return `This counts with what is wrong now: ${reason.items.map((item) => TROUBLE_WORDS[item]).join(', ')}. Tell me when it is mended.`;
    case 'fan':
      return fanSentence(reason, words.units);
    case 'burns-out':
      return `One filling of the heater burns about ${reason.hours} h: it is out about ${clockOf(reason.at)}, before the coldest hours, unless somebody refills it.`;
    case 'if-power-fails': {
      const harmed = reason.crops.map(({ asked, damageProbability }) => `the ${asked} gets marked on ${nights(damageProbability)} like this`);
      return `If the power fails, the ${reason.stops.join(' and ')} ${reason.stops.length > 1 ? 'stop' : 'stops'} and it falls to about ${temperature(reason.insideLowC, words.units)} inside${harmed.length > 0 ? `: ${harmed.join(', ')}` : ''}.`;
    }
    case 'clear-and-calm':
      return 'Clear and calm: heat goes straight to the sky, and hollows run colder than any forecast. The range allows for it.';
    case 'partly-clear':
      return 'Partly clear: if the cloud clears, it gets colder than this.';
    case 'cloudy-or-windy':
      return 'Cloud or wind keeps the air mixed: the forecast is surer than on a clear night.';
    case 'heat':
      // Told when it is asked for: see why-text.
      return null;
    case 'choice':
      return CHOICE_WORDS[reason.why] ?? null;
    case 'plan-helps':
      return `Without the plan, the ${reason.asked} in ${reason.bed} gets marked on ${nights(reason.withoutDamageProbability)} like this; with it, on ${nights(reason.withDamageProbability)}.`;
    case 'not-needed-if-milder':
      return `If it stays above ${temperature(reason.outsideLowC, words.units)} outside, none of it is needed.`;
    case 'not-enough-if-colder':
      return `If it falls to ${temperature(reason.outsideLowC, words.units)} outside, ${list(reason.crops)} will be marked all the same.`;
    case 'too-late':
      return `Too late now for: ${reason.actions.map((action) => missedWork(action, words.units, words.cropName)).join(', ')}.${reason.actions.some(({ action }) => action === 'cover') ? ' Cover by a light only where you can walk safely.' : ''}`;
    case 'class-fallback':
      return `I do not know ${reason.asked}: it is judged as a ${reason.hardinessClass} crop. Name its hardiness in the greenhouse file to better that.`;
    case 'not-learned-yet':
      if ((reason.kept ?? 0) > 0) return `Your readings are kept. None has gone into this yet: it takes the low of a night, for example ${EXAMPLE[words.units].low}. Until then the ranges are wide.`;
      return `No reading of yours has gone into this yet, so the ranges are wide. A morning low, for example ${EXAMPLE[words.units].inside}, helps.`;
    case 'learned':
      return reason.nights === 1 ? 'Your readings of one night have gone into this.' : `Your readings of ${reason.nights} nights have gone into this.`;
    case 'short-history':
      return `Only ${reason.hours} hours of past weather were known: soil and drums start from a guess, and the range is wider for it.`;
    case 'ground-guessed':
      return 'The ground temperature is a guess from the past air temperature.';
    case 'stale-weather':
      return `OLD FORECAST: the weather service does not answer. This stands on a forecast ${reason.ageHours} h old, and the range is wider for it.`;
    case 'second-weather':
      return secondWeather(reason.failure);
    case 'weather-note': {
      const opening = NOTE_WORDS[reason.note];
      return opening === null ? null : `${opening ?? reason.note} ${plainNames(reason.detail)}.`;
    }
    case 'demo-weather':
      return 'INVENTED WEATHER: this is the demo. Nothing in it is a real forecast.';
  }
}

const TROUBLE_WORDS = { snow: 'snow on the roof', 'power-out': 'the power out', 'blower-off': 'the blower between the films stopped', opening: 'an open door or a hole in the film', 'fans-dead': 'the fans not running', 'fuel-out': 'no fuel' } as const satisfies Record<TroubleCode, string>;

function fanSentence(reason: Extract<AdvisoryReason, { code: 'fan' }>, units: TempUnits): string {
  const fan = fanWords(reason.fan);
  const worth = temperatureDifference(Math.abs(reason.worthC), units);
  switch (reason.advice) {
    case 'run':
      return `${capital(fan)} brings about ${worth} at the plants tonight.${reason.batteryShort ? ' The battery does not last all night: these are the hours that help most. Use a timer.' : ''}`;
    case 'leave-as-it-is':
      return reason.worthC < LITTLE_C ? `${capital(fan)} would bring next to nothing tonight: leave it as it is.` : `${capital(fan)} brings about ${worth} at the plants tonight: leave it on.`;
    case 'stop':
      return `${capital(fan)} takes more than it brings tonight, about ${worth} at the plants.`;
    case 'stands-still':
      return `${capital(fan)} runs on sun alone: it stands still at night, and nothing is counted on from it.`;
    case 'no-current':
      return `${capital(fan)} has no current: nothing is counted on from it.`;
  }
}

/** Less than this is nothing that a thermometer shows. */
const LITTLE_C = 0.1;
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Names of the service's variables in words. */
const VARIABLE_WORDS: readonly (readonly [RegExp, string])[] = [
  [/temperature_2m_spread/gu, 'the spread of the air temperature'],
  [/temperature_2m/gu, 'air temperature'],
  [/dew_point_2m/gu, 'dew point'],
  [/relative_humidity_2m/gu, 'humidity'],
  [/wind_speed_10m/gu, 'wind'],
  [/cloud_cover/gu, 'cloud'],
  [/shortwave_radiation|direct_radiation|diffuse_radiation/gu, 'sunlight'],
  [/surface_pressure/gu, 'air pressure'],
  [/snowfall/gu, 'snow'],
  [/soil_temperature_(\d+)cm/gu, 'soil temperature at $1 cm'],
];
const plainNames = (text: string): string => VARIABLE_WORDS.reduce((plain, [name, words]) => plain.replace(name, words), text);

const missedWork = ({ action, target, crop, setC }: Pick<AdvisoryAction, 'action' | 'target' | 'crop' | 'setC'>, units: TempUnits, cropName: (id: string) => string): string => {
  switch (action) {
    case 'cover':
      return `covering ${target ?? 'the beds'}`;
    case 'harvest':
      return `picking ${crop === undefined ? '' : `${cropName(crop).toLowerCase()} `}in ${target ?? 'the beds'}`;
    case 'vents':
      return 'shutting the vents early';
    case 'curtain':
      return 'drawing the curtain';
    case 'tube-fan':
    case 'fan':
      return fanWords(action === 'tube-fan' ? 'tubes' : target);
    case 'heater':
      return setC === null || setC === undefined ? 'the heater' : `the heater at ${temperature(setC, units)}`;
  }
};

const list = (items: readonly string[]): string => [...new Set(items)].join(' and ');
