import { readSettings } from '../../config/settings.js';
import { fixedClock } from '../clock.js';
import { clockFrom, liveWeatherFrom } from '../from-settings.js';
import { eveningQuestion } from '../features/evening/issue-advisory.js';
import { workOutEvening } from '../features/evening/work-out-evening.js';
import { createLog } from '../log.js';
import type { WeatherSource } from '../ports.js';
import { openSqliteStore } from '../store/sqlite-store.js';
import { NO_SECOND_WEATHER } from '../text/second-weather-text.js';
import { zoneOf } from '../time-zone.js';
import { savedFileSource } from '../weather/saved-file.js';
import { readOptions, required } from './options.js';
import { readGreenhouse, readInstant } from './read-input.js';
import { writePicture } from './write-picture.js';

export const TONIGHT_USAGE = `duskward tonight --greenhouse FILE [--weather FILE] [--at TIME] [--json] [--picture FILE]
  One advisory for a greenhouse file. Weather from the service, or from a saved answer of it.
  --at TIME   an instant with offset such as 2026-01-14T16:00:00-05:00; now when left out
  --json      the advisory as data
  --picture FILE   the night as a picture for a phone, written as PNG`;

export async function tonight(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { greenhouse: { type: 'string' }, weather: { type: 'string' }, at: { type: 'string' }, json: { type: 'boolean' }, picture: { type: 'string' } }, TONIGHT_USAGE);
  if (options.help) return void console.log(TONIGHT_USAGE);
  const file = required(options.greenhouse, '--greenhouse', TONIGHT_USAGE);
  const greenhouse = await readGreenhouse(file);
  const settings = readSettings(process.env);
  const log = createLog(settings.DUSKWARD_LOG!);
  const clock = options.at === undefined ? clockFrom(settings, log) : fixedClock(readInstant(options.at, '--at'));
  const advise = async (weather: WeatherSource): Promise<void> => {
    const house = { greenhouse, zone: zoneOf(greenhouse) };
    const issued = workOutEvening(await eveningQuestion({ greenhouseId: file, ...house }, { clock, weather, store: null }));
    console.log(options.json ? JSON.stringify(issued.advisory, null, 2) : issued.advisory.text);
    if (options.picture !== undefined) await writePicture(options.picture, issued, house);
  };
  if (options.weather !== undefined) return advise(savedFileSource({ path: options.weather, atS: clock.nowS() }));
  // A single advisory keeps nothing: the service is asked afresh and the memory goes with the process.
  const store = await openSqliteStore({ path: ':memory:' });
  const { source, lacksSecond, close } = liveWeatherFrom(settings, { clock, store, log });
  if (lacksSecond) console.error(NO_SECOND_WEATHER);
  try {
    await advise(source);
  } finally {
    await close();
    await store.close();
  }
}
