/** Who speaks and when, for the phrase tables: one °F grower in New York State, one °C grower near Oslo, a Wednesday in January. */
import { DateTime } from 'luxon';
import type { CropWord } from '../../../bot/language/crop-word.js';

export interface Speaker {
  readonly atS: number;
  readonly zone: string;
  readonly units: 'C' | 'F';
}

const speaker = (localTime: string, zone: string, units: 'C' | 'F'): Speaker => ({ atS: DateTime.fromISO(localTime, { zone }).toSeconds(), zone, units });

export const SPEAKERS = {
  F_MORNING: speaker('2026-01-14T07:30', 'America/New_York', 'F'),
  F_EVENING: speaker('2026-01-14T17:00', 'America/New_York', 'F'),
  F_SMALL_HOURS: speaker('2026-01-14T02:00', 'America/New_York', 'F'),
  F_AFTERNOON: speaker('2026-01-14T14:00', 'America/New_York', 'F'),
  C_MORNING: speaker('2026-01-14T07:30', 'Europe/Oslo', 'C'),
  C_EVENING: speaker('2026-01-14T17:00', 'Europe/Oslo', 'C'),
  C_SMALL_HOURS: speaker('2026-01-14T02:00', 'Europe/Oslo', 'C'),
  C_SUMMER_NOON: speaker('2026-07-15T13:00', 'Europe/Oslo', 'C'),
} as const satisfies Readonly<Record<string, Speaker>>;

export type SpeakerName = keyof typeof SPEAKERS;

/** A phrase, who says it, and the fields that the intent must have. */
export type Phrase = readonly [text: string, speaker: SpeakerName, expected: Readonly<Record<string, unknown>>];

export const CROP_WORDS: readonly CropWord[] = [
  { id: 'kale', names: ['kale', 'curly kale'] },
  { id: 'kale_lacinato', names: ['lacinato', 'tuscan kale', 'dino kale'] },
  { id: 'lettuce', names: ['lettuce', 'salad greens', 'salad', 'leaf lettuce'] },
  { id: 'lettuce_romaine', names: ['romaine', 'cos'] },
  { id: 'spinach', names: ['spinach', 'winter spinach'] },
  { id: 'chard', names: ['chard', 'swiss chard'] },
  { id: 'arugula', names: ['arugula', 'rocket'] },
  { id: 'mache', names: ['mache', 'corn salad', "lamb's lettuce"] },
  { id: 'pak_choi', names: ['pak choi', 'bok choy'] },
  { id: 'tomato', names: ['tomato', 'tomatoes'] },
  { id: 'pepper', names: ['pepper', 'bell pepper'] },
  { id: 'basil', names: ['basil'] },
  { id: 'carrot', names: ['carrot'] },
  { id: 'beet', names: ['beet', 'beetroot'] },
  { id: 'leek', names: ['leek'] },
  { id: 'onion', names: ['onion', 'spring onion', 'scallion'] },
  { id: 'radish', names: ['radish'] },
  { id: 'pea', names: ['pea', 'snap pea'] },
  { id: 'strawberry', names: ['strawberry'] },
  { id: 'parsley', names: ['parsley'] },
  { id: 'cilantro', names: ['cilantro', 'coriander'] },
  { id: 'broccoli', names: ['broccoli'] },
  { id: 'lemon', names: ['lemon', 'meyer lemon'] },
];
