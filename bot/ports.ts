/** The interfaces between the features and the world. No logic here. */
import type { GroundOutside, WeatherHours } from '../engine/index.js';

export interface Clock {
  /** Epoch seconds now. */
  nowS(): number;
}

export interface Log {
  info(event: string, fields?: Record<string, unknown>): void;
  warn(event: string, fields?: Record<string, unknown>): void;
  error(event: string, fields?: Record<string, unknown>): void;
}

export interface Place {
  readonly latitude: number;
  readonly longitude: number;
  readonly elevationM: number | null;
}

/** Why a weather service brought nothing: how the call ended, or "unusable" for an answer that must not be used. */
export type WeatherFailure = 'network' | 'time-out' | 'cut-off' | 'not-json' | 'server' | 'refused' | 'limited' | 'resting' | 'unusable';

/** What an answer of the weather service lacks, or how it is not what was asked for. */
export type WeatherNote =
  | { readonly code: 'second-service'; readonly failure: WeatherFailure; readonly cause: string }
  | { readonly code: 'coarse-steps'; readonly startsAtS: number; readonly stepHours: number }
  | { readonly code: 'stale'; readonly ageS: number; readonly cause: string }
  | { readonly code: 'short-horizon'; readonly endsAtS: number }
  | { readonly code: 'short-history'; readonly startsAtS: number }
  | { readonly code: 'filled-gap'; readonly variable: string; readonly hours: number }
  | { readonly code: 'second-model-used'; readonly variable: string }
  | { readonly code: 'missing-variable'; readonly variable: string; readonly instead: string }
  | { readonly code: 'no-ensemble'; readonly cause: string }
  | { readonly code: 'no-members'; readonly cause: string }
  | { readonly code: 'invented-demo' };

export interface WeatherAnswer {
  readonly hours: WeatherHours;
  readonly ground: GroundOutside;
  /** Who answered, for the reader: "open-meteo", "met-norway", "file", "demo". */
  readonly source: string;
  /** When the service gave this answer. */
  readonly issuedAtS: number;
  readonly stale: boolean;
  readonly notes: readonly WeatherNote[];
}

/** No usable weather at all: what was tried, and what went wrong. */
export class NoWeatherError extends Error {
  override readonly name = 'NoWeatherError';
}

/** How far back the weather goes that a source brings, and with it the deeds that are asked for. */
export const PAST_S = 15 * 86_400;
/** Readings of a season of two thermometers, read twice a day: so many of the newest teach of a house. */
export const MOST_READINGS_LEARNED = 500;
/** Of more than a winter's words on how crops came through the newest count. */
export const MOST_OUTCOMES_LEARNED = 100;

export interface WeatherSource {
  /** Fifteen past days and a week ahead at the place; throws NoWeatherError when there is nothing to stand on. */
  weatherAt(place: Place): Promise<WeatherAnswer>;
}

export interface StoredGreenhouse {
  readonly id: string;
  readonly version: number;
  /** The greenhouse file as given, JSON text. */
  readonly body: string;
  readonly savedAtS: number;
}

export interface StoredReading {
  readonly id: number;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  /** The instant that the reading speaks of; for a low or high, the morning it was read. */
  readonly validAtS: number;
  readonly place: string;
  readonly statistic: 'now' | 'low' | 'high';
  readonly tempC: number;
  readonly text: string;
  /**
   * good: learned from. not-reset: the night was no colder than this. sunlit: the air was cooler; not learned from.
   * open: asked about and not answered; not learned from.
   */
  readonly judged: 'good' | 'not-reset' | 'sunlit' | 'open';
  /** Name of the thermometer, where the greenhouse tells of one. */
  readonly thermometer: string | null;
  /** Set when a later message corrected or withdrew it; the row stays. */
  readonly replacedBy: number | null;
  readonly withdrawnAtS: number | null;
}

/** A reading to be kept: good, and of no thermometer by name, where nothing else is said. */
export type NewReading = Omit<StoredReading, 'id' | 'replacedBy' | 'withdrawnAtS' | 'judged' | 'thermometer'> & Partial<Pick<StoredReading, 'judged' | 'thermometer'>> & ByMessage;

export interface StoredAction {
  readonly id: number;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly night: string;
  /** JSON text of the action as in an advisory. */
  readonly body: string;
  readonly done: boolean;
  readonly text: string;
}

/** How a crop came through a night. */
export interface StoredOutcome {
  readonly id: number;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  /** Local date on which the night began. */
  readonly night: string;
  /** Id of the crop table, or of a family. */
  readonly crop: string;
  /** As it was said; null where it was not. */
  readonly bed: string | null;
  readonly state: 'fine' | 'marked' | 'dead';
  readonly text: string;
}

/** A lasting change of the house, from which on nights are compared. */
export interface StoredMark {
  readonly id: number;
  readonly greenhouseId: string;
  readonly receivedAtS: number;
  readonly changedAtS: number;
  /** JSON text of the items and amounts that were named. */
  readonly body: string;
  /** The description of the house was changed with it; else it is a note only. */
  readonly counted: boolean;
  readonly text: string;
}

/** Something that was told and can be taken back. */
export interface Told {
  readonly of: 'reading' | 'action' | 'outcome' | 'mark';
  readonly id: number;
}

/** By which message something was told, as its channel knows it; left out where that cannot be edited. */
export interface ByMessage {
  readonly message?: string | null;
}

export interface StoredWeather {
  readonly placeKey: string;
  readonly issuedAtS: number;
  /** JSON text of the WeatherAnswer. */
  readonly body: string;
}

export interface StoredAdvisory {
  readonly id: number;
  readonly greenhouseId: string;
  readonly night: string;
  readonly issuedAtS: number;
  /** JSON text, as issued; never changed. */
  readonly body: string;
}

/** What was learned of a house up to an evening; the newest alone is kept. */
export interface StoredLearning {
  readonly greenhouseId: string;
  readonly learnedAtS: number;
  /** JSON text. */
  readonly body: string;
}

/** All that a house is learned from beside its weather. */
export interface LearnedFrom {
  readonly learning: LearningSoFar;
  readonly outcomes: readonly OutcomeNight[];
}

export interface LearningSoFar {
  /** The newest readings that stand. */
  readonly readings: readonly StoredReading[];
  /** What was learned up to the last evening, as text; null before the first. */
  readonly learned: string | null;
}

/** How a crop came through, with the body of the last advisory of its night; null where nothing was said before it. */
export interface OutcomeNight {
  readonly outcome: StoredOutcome;
  readonly advisory: string | null;
}

/** What the product remembers. Every promise resolves after the row is safe on disk. */
export interface Store {
  /** Adds a version when the body differs from the latest; returns the latest. */
  saveGreenhouse(row: { id: string; body: string; savedAtS: number }): Promise<StoredGreenhouse>;
  greenhouse(id: string): Promise<StoredGreenhouse | null>;
  addReading(row: NewReading): Promise<StoredReading>;
  /** Replaces or withdraws a reading without losing it. */
  replaceReading(id: number, replacement: NewReading): Promise<StoredReading>;
  withdrawReading(id: number, withdrawnAtS: number): Promise<void>;
  /** Readings that stand (neither replaced nor withdrawn), newest first; also those that are asked about. */
  readings(greenhouseId: string, limit: number): Promise<readonly StoredReading[]>;
  /** All readings received from an instant on, oldest first, with those that were replaced or withdrawn. */
  everyReading(greenhouseId: string, sinceS: number): Promise<readonly StoredReading[]>;
  addAction(row: Omit<StoredAction, 'id'> & ByMessage): Promise<StoredAction>;
  /** Those that stand, in the order in which they were told. */
  actions(greenhouseId: string, sinceS: number): Promise<readonly StoredAction[]>;
  addOutcome(row: Omit<StoredOutcome, 'id'> & ByMessage): Promise<StoredOutcome>;
  /** Those that stand, newest first. */
  outcomes(greenhouseId: string, limit: number): Promise<readonly StoredOutcome[]>;
  addMark(row: Omit<StoredMark, 'id'> & ByMessage): Promise<StoredMark>;
  /** Those that stand, newest first. */
  marks(greenhouseId: string, limit: number): Promise<readonly StoredMark[]>;
  /** What a message told and still stands, with the instant at which it came. */
  toldIn(greenhouseId: string, message: string): Promise<readonly (Told & { readonly receivedAtS: number })[]>;
  /** Takes back what was told; the row stays. */
  withdrawTold(told: Told, withdrawnAtS: number): Promise<void>;
  saveWeather(row: StoredWeather): Promise<void>;
  lastWeather(placeKey: string): Promise<StoredWeather | null>;
  saveLearning(row: StoredLearning): Promise<void>;
  learning(greenhouseId: string): Promise<StoredLearning | null>;
  learnedFrom(greenhouseId: string): Promise<LearnedFrom>;
  addAdvisory(row: Omit<StoredAdvisory, 'id'>): Promise<StoredAdvisory>;
  lastAdvisory(greenhouseId: string): Promise<StoredAdvisory | null>;
  /** The last one that was issued for a night. */
  advisoryFor(greenhouseId: string, night: string): Promise<StoredAdvisory | null>;
  /** The last one that was issued for a night, at this instant or before it. */
  advisoryBy(greenhouseId: string, night: string, atS: number): Promise<StoredAdvisory | null>;
  /** In order of issue, a page at a time: after the one given, from the first where none is. */
  advisoriesAfter(greenhouseId: string, after: Pick<StoredAdvisory, 'issuedAtS' | 'id'> | null, limit: number): Promise<readonly StoredAdvisory[]>;
  close(): Promise<void>;
}

/** What features read and write; opening and closing is not theirs. */
export interface Records extends Omit<Store, 'close'> {
  /** Remembers what a short answer will mean (JSON text; null: nothing any more), in the chat that is answered; not there where nothing is kept of a chat. */
  readonly keepPending?: (pending: string | null) => Promise<void>;
  /** Whether nothing comes unasked in the chat that is answered. Not there where nothing is kept of a chat. */
  readonly isPaused?: boolean;
  /** Whether the chat that is answered is in the middle of describing its greenhouse. */
  readonly isBusy?: boolean;
  /** Does what is asked of the chat itself and not of the greenhouse, and says so; null where nothing was to be done. Not there where nothing is kept of a chat. */
  readonly askChat?: (asked: 'start' | 'stop' | 'erase') => Promise<string | null>;
}

/** A line in, a line out: what every conversation channel boils down to. */
export interface IncomingMessage {
  readonly greenhouseId: string;
  readonly text: string;
  readonly receivedAtS: number;
}

/** A town or village that a search found. */
export interface FoundPlace {
  readonly name: string;
  /** State, province or county, where known. */
  readonly region: string | null;
  readonly country: string | null;
  /** Two letters, ISO 3166-1. */
  readonly countryCode: string | null;
  readonly latitude: number;
  readonly longitude: number;
}

/** The search brought no answer: how the call ended, and the cause for the log. */
export class PlaceSearchError extends Error {
  override readonly name = 'PlaceSearchError';

  constructor(
    readonly failure: WeatherFailure,
    message: string,
    options?: ErrorOptions,
  ) {
    super(message, options);
  }
}

export interface PlaceFinder {
  /** Places of that name, likeliest first; none when there is none. Throws PlaceSearchError. */
  placesCalled(town: string): Promise<readonly FoundPlace[]>;
}
