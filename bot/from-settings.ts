import { isOn, type Settings } from '../config/settings.js';
import { systemClock, trialClock } from './clock.js';
import type { Clock, Log, Store } from './ports.js';
import { demoSource } from './weather/demo.js';
import { liveSource, type LiveSource } from './weather/live-source.js';

/** The clock that the settings ask for; one of their own is said in the log. */
export function clockFrom(settings: Settings, log: Log): Clock {
  if (settings.DUSKWARD_CLOCK === null) return systemClock;
  log.warn('the clock is set by DUSKWARD_CLOCK, for trials only');
  return trialClock(settings.DUSKWARD_CLOCK);
}

export interface WeatherPorts {
  readonly clock: Clock;
  readonly store: Store;
  readonly log: Log;
}

/** Weather of the services. */
export const liveWeatherFrom = (settings: Settings, ports: WeatherPorts): LiveSource =>
  liveSource({ ...ports, firstUrl: settings.DUSKWARD_WEATHER_URL, apiKey: settings.DUSKWARD_WEATHER_KEY, wantsMembers: isOn(settings, 'DUSKWARD_WEATHER_MEMBERS'), secondUrl: settings.DUSKWARD_WEATHER2_URL, contact: settings.DUSKWARD_CONTACT });

/** Invented weather where nobody named a service, and none is meant. */
export const demoWeatherUnlessNamed = (settings: Settings, ports: WeatherPorts): LiveSource =>
  settings.DUSKWARD_WEATHER_URL === null ? { source: demoSource(ports.clock), lacksSecond: false, close: () => Promise.resolve() } : liveWeatherFrom(settings, ports);
