import type { TempUnits } from './temperature.js';
import { toleranceLines, type ToleranceView } from './tolerance-text.js';

/** What a grower can set, as it is now. */
export interface SettingsView {
  readonly units: TempUnits;
  /** Clock time that was asked for; null: early enough for the work. */
  readonly evening: string | null;
  /** When it really comes today; null where that is over. */
  readonly eveningToday: string | null;
  readonly morning: string;
  readonly bedtime: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly zone: string;
  /** Null where nothing is sent unasked anyway. */
  readonly isPaused: boolean | null;
  readonly tolerance: ToleranceView;
}

const coordinate = (degrees: number, positive: string, negative: string): string => `${Math.abs(degrees)} ${degrees < 0 ? negative : positive}`;

/** Why an evening message comes earlier than it was asked for. */
export const eveningNote = ({ evening, eveningToday }: Pick<SettingsView, 'evening' | 'eveningToday'>): string | null =>
  evening === null || eveningToday === null || evening === eveningToday ? null : `Today it comes at ${eveningToday}: the work must be done before dark.`;

/** Each setting with the words that change it. */
export function settingsText(view: SettingsView): string {
  const { units, evening, morning, bedtime, latitude, longitude, zone, isPaused } = view;
  const note = eveningNote(view);
  return [
    'Your settings:',
    `- Units: ${units === 'F' ? 'Fahrenheit' : 'Celsius'}. To change: "use ${units === 'F' ? 'Celsius' : 'Fahrenheit'}".`,
    `- Evening message: ${evening ?? `early enough for the work${view.eveningToday === null ? '' : `, today at ${view.eveningToday}`}`}.${note === null ? '' : ` ${note}`} To change: "evening message at 17:00".`,
    `- Morning message: ${morning}. To change: "morning message at 7:30".`,
    `- Bedtime: ${bedtime}. To change: "bedtime is 22:00".`,
    `- Place: ${coordinate(latitude, 'N', 'S')}, ${coordinate(longitude, 'E', 'W')}, clock of ${zone}. To change: "I moved to Alder Bench, Vermont".`,
    ...(isPaused === null ? [] : [isPaused ? '- Messages: paused. To get them again: "start".' : '- Messages: on. For quiet: "stop".']),
    ...toleranceLines(view.tolerance),
    'The house itself: say "summary".',
  ].join('\n');
}

export const SETTINGS_WORDS = {
  cannotSet: 'I cannot set that. This is what I can set.',
  pauseHasNoEnd: 'I do not count the days: it lasts until you say "start".',
  nothingPaused: 'Nothing is paused here.',
} as const;
