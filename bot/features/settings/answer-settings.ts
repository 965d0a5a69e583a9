import type { Greenhouse } from '../../../engine/index.js';
import type { Records } from '../../ports.js';
import { SETTINGS_WORDS, settingsText } from '../../text/settings-text.js';
import type { ToleranceView } from '../../text/tolerance-text.js';

export interface SettingsMessage {
  readonly text: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  /** When the evening message comes today, on the grower's clock; null where that is over. */
  readonly eveningToday: string | null;
  readonly tolerance: ToleranceView;
}

const WANTS_TO_SEE = /^\W*(?:please |just )*(?:what (?:are|is) |show (?:me )?|see |change |\/)?(?:my |the |your |our )*(?:settings?|preferences|options|units?)\b/iu;
const WANTS_QUIET = /\b(?:pause|mute|snooze|quiet|holiday|vacation|away|no (?:more )?(?:messages?|texts?|alerts?))\b/iu;
const HAS_AN_END = /\b(?:for|until|till|til|this|next|tonight|today|tomorrow|week|weekend|days?|\w+day)\b/iu;
const WANTS_MESSAGES = /\b(?:unpause|unmute)\b/iu;

/** What is set and how to change it; quiet where that is asked for. What changes the house's description was done before this is asked. */
export async function answerSettings({ text, greenhouse, zone, eveningToday, tolerance }: SettingsMessage, store: Records): Promise<string> {
  if (WANTS_MESSAGES.test(text)) return (await store.askChat?.('start')) ?? SETTINGS_WORDS.nothingPaused;
  if (WANTS_QUIET.test(text) && store.askChat) {
    const paused = await store.askChat('stop');
    return [paused, ...(HAS_AN_END.test(text) ? [SETTINGS_WORDS.pauseHasNoEnd] : [])].join(' ');
  }
  const { grower, place } = greenhouse;
  const shown = settingsText({
    units: grower.units,
    evening: grower.eveningAt ?? null,
    eveningToday,
    morning: grower.morningAt,
    bedtime: grower.bedtime,
    latitude: place.latitude,
    longitude: place.longitude,
    zone,
    isPaused: store.isPaused ?? null,
    tolerance,
  });
  return WANTS_TO_SEE.test(text) ? shown : `${SETTINGS_WORDS.cannotSet}\n${shown}`;
}
