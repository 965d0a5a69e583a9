import { cellNight, forecastMiss, kelvinToCelsius, learnHouse, mixtureMeanK, mixtureQuantileK, nightSpan, predictNight, type AcceptedReading, type CellNight, type EveningInput, type ForecastMiss, type Greenhouse, type LearnedHouse, type Mixture, type PlaceLow, type WeatherHours } from '../../engine/index.js';
import { mergedHours } from '../weather/merge.js';
import { savedAnswer } from '../weather/saved-file.js';
import { loggedControls } from './logged-controls.js';
import { replayGate, type JudgedCells } from './replay-gate.js';
import type { SeasonFolder } from './season-folder.js';

/** One line of a replay: what was said of a place before its night. */
export interface NightPlace {
  readonly season: string;
  readonly night: number;
  readonly place: string;
  readonly mean_c: number;
  readonly lo80_c: number;
  readonly hi80_c: number;
  readonly n_readings: number;
  readonly decision: string;
}

export interface ReplayedNight {
  /** What the night was said from. */
  readonly evening: Omit<EveningInput, 'bedtimeS'> & Required<Pick<EveningInput, 'pastControls' | 'learned'>>;
  readonly lines: readonly NightPlace[];
  readonly lows: readonly PlaceLow[];
  /** Readings since the evening before, as they were judged. */
  readonly judged: readonly JudgedCells[];
}

const SHOWN = ['outside', 'inside', 'cover'] as const;
const tenthOfPercent = (value: number): number => Math.round(value * 1000) / 1000;

/** Season nights in order: each is predicted from what was known that evening, and only then are its readings learned. */
export function* replaySeason(season: SeasonFolder, greenhouse: Greenhouse, learnUntil: number): Generator<ReplayedNight> {
  const { place } = greenhouse;
  const asked = { latitude: place.latitude, longitude: place.longitude, elevationM: place.elevation ?? null };
  const controls = loggedControls(season, greenhouse);
  let past: WeatherHours | null = null;
  let issued: CellNight | null = null;
  let beforeS = 0;
  let learned: LearnedHouse | null = null;
  let taken = 0;
  let lows: readonly PlaceLow[] = [];
  const gate = replayGate(greenhouse);
  const misses: ForecastMiss[] = [];
  const readings: AcceptedReading[] = [];
  for (const evening of season.evenings) {
    const nowS = evening.issuedS;
    const answer = savedAnswer(evening.response, { place: asked, atS: nowS });
    const weather: WeatherHours = past === null ? answer.hours : mergedHours(past, answer.hours, past.timeS[0]!);
    const house = withAddedDrums(greenhouse, season, evening.night);
    const miss = issued && taken < learnUntil ? forecastMiss(issued, answer.hours) : null;
    if (miss) misses.push(miss);
    const fresh = season.readings.filter((cells) => Number(cells['unix']) <= nowS && Number(cells['unix']) > beforeS);
    const judged: JudgedCells[] = [];
    for (const cells of fresh) {
      const isInsideLow = cells['place'] === 'inside' && cells['statistic'] === 'low';
      if (taken >= learnUntil) break;
      if (isInsideLow) taken += 1;
      const one = gate(cells, lows);
      judged.push(one);
      if (one.accepted !== null) readings.push(one.accepted);
    }
    learned = learnHouse({ greenhouse: house, weather, ground: answer.ground, controls, readings, forecastMisses: misses, changes: [], untilS: nowS }, learned);
    lows = predictNight({ greenhouse: house, weather, nowS, weatherAgeS: 0, controls }, learned);
    yield { evening: { greenhouse: house, weather, ground: answer.ground, nowS, weatherAgeS: 0, pastControls: controls, learned }, lows, judged, lines: linesOf({ season: season.name, night: evening.night, n: taken, decision: decisionOf(season, evening.night) }, lows) };
    past = cutAt(weather, nowS);
    issued = cellNight(answer.hours, nightSpan(nowS, place));
    beforeS = nowS;
  }
}

/** Drums that the log says were added, up to and with the day of this evening. */
function withAddedDrums(greenhouse: Greenhouse, season: SeasonFolder, night: number): Greenhouse {
  const added = season.actions.flatMap((row) => {
    const words = Number(row['night']) <= night ? /added (\d+) .*?(\d+)-lit(?:re|er) water drums/u.exec(row['note'] ?? '') : null;
    // A row along a side stands shoulder to shoulder.
    return words ? [{ count: Number(words[1]), litres: Number(words[2]), touching: /\balong\b/u.test(row['note']!), sunny: true }] : [];
  });
  return added.length === 0 ? greenhouse : { ...greenhouse, drums: [...greenhouse.drums, ...added] };
}

function linesOf(of: { season: string; night: number; n: number; decision: string }, lows: readonly PlaceLow[]): readonly NightPlace[] {
  return lows.flatMap(({ key, low }) => (SHOWN.some((place) => place === key.place) ? [{ season: of.season, night: of.night, place: key.place, mean_c: celsius(mixtureMeanK(low)), lo80_c: celsius(quantile(low, 0.1)), hi80_c: celsius(quantile(low, 0.9)), n_readings: of.n, decision: of.decision }] : []));
}

const quantile = (low: Mixture, p: number): number => mixtureQuantileK(low, p);
const celsius = (tempK: number): number => tenthOfPercent(kelvinToCelsius(tempK));

/** Hours up to an instant: what came is kept, what was only forecast is not. */
function cutAt(hours: WeatherHours, untilS: number): WeatherHours {
  const end = hours.timeS.findIndex((timeS) => timeS > untilS);
  const keep = end < 0 ? hours.timeS.length : end;
  return Object.fromEntries(Object.entries(hours).map(([name, column]) => [name, (column as readonly unknown[]).slice(0, keep)])) as unknown as WeatherHours;
}

const decisionOf = (season: SeasonFolder, night: number): string => {
  const cells = season.actions.find((row) => Number(row['night']) === night);
  const words = [cells?.['cover'] === '1' ? 'cover' : '', cells?.['fan'] === '1' ? 'fan' : '', cells?.['heater'] === '1' ? 'heater' : ''].filter((word) => word !== '');
  return words.length === 0 ? 'nothing' : words.join(' + ');
};
