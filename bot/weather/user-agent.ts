import { SettingError } from '../../config/settings.js';

const NAME = 'duskward/0.1';

/** Who asks, and how the operator can be reached, as both services get to read it. */
export function userAgent(contact: string | null): string {
  if (contact === null) return NAME;
  // A header carries plain printable characters only.
  if (!/^[\x20-\x7e]+$/.test(contact)) {
    throw new SettingError(`DUSKWARD_CONTACT: expected a mail or web address in plain characters such as grower@example.org, got ${JSON.stringify(contact)}`);
  }
  return `${NAME} (${contact})`;
}
