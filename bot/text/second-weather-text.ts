import type { WeatherFailure } from '../ports.js';

const FAILURE_WORDS: Readonly<Record<WeatherFailure, string>> = {
  network: 'could not be reached',
  'time-out': 'did not answer in time',
  'cut-off': 'broke off in the middle of its answer',
  'not-json': 'sent a web page instead of weather',
  server: 'is out of order',
  refused: 'refused the request',
  limited: 'has had too many requests',
  resting: 'failed a short while ago and is being left alone',
  unusable: 'sent an answer that cannot be used',
};

/** What the evening stands on when the first service failed, with the credit that the second one's licence asks for. */
export const secondWeather = (failure: WeatherFailure): string =>
  `The first weather service ${FAILURE_WORDS[failure]}; this stands on the second one, which tells no sunlight: that is estimated from the clouds. Weather data from MET Norway (met.no), CC BY 4.0.`;

/** For the operator, at the start. */
export const NO_SECOND_WEATHER = 'There is no second weather service: DUSKWARD_CONTACT is not set. If the first service fails, only old forecasts are left. Set it to your mail or web address.';
