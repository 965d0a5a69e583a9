import type { Outgoing } from '../../chat.js';
import { BUTTON_WORDS } from '../../text/button-words.js';
import { toHtml } from '../../text/html.js';
import { shortAdvisory } from '../../text/short-advisory.js';
import type { TempUnits } from '../../text/temperature.js';
import type { Advisory } from './advisory.js';
import { cropName } from './crop-name.js';
import type { WorkedOutEvening } from './work-out-evening.js';

/** What a pressed button under an advisory means; the night it stood for comes back with it. */
export const ADVISORY_BUTTONS = ['did', 'not', 'why'] as const;
export type AdvisoryButton = (typeof ADVISORY_BUTTONS)[number];

const buttonId = (button: AdvisoryButton, night: string): string => `${button}:${night}`;

/** A pressed button of an advisory and its night; null for any other button. */
export function readAdvisoryButton(id: string): { button: AdvisoryButton; night: string } | null {
  const [button, night] = id.split(':');
  return night !== undefined && ADVISORY_BUTTONS.includes(button as AdvisoryButton) ? { button: button as AdvisoryButton, night } : null;
}

/** The advisory as it goes out: words, buttons where there is work to answer for. */
export function advisoryMessage({ advisory, picturePng }: WorkedOutEvening, units: TempUnits): Outgoing {
  return { text: advisory.text, short: shortAdvisory(advisory, { units, cropName }), html: toHtml(advisory.text), buttons: buttonsFor(advisory), ...(picturePng === null ? {} : { picturePng }) };
}

/** Only work can be done or left; the why is always worth a button. */
function buttonsFor({ plan, night }: Advisory): NonNullable<Outgoing['buttons']> {
  const wanted: readonly AdvisoryButton[] = plan.actions.length > 0 ? ADVISORY_BUTTONS : ['why'];
  return [wanted.map((button) => ({ id: buttonId(button, night), label: BUTTON_WORDS[button] }))];
}
