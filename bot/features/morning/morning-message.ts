import type { Outgoing } from '../../chat.js';
import { morningText } from '../../text/morning-text.js';
import { toHtml } from '../../text/html.js';
import type { Advisory } from '../evening/advisory.js';
import { worthAsking } from './worth-asking.js';

const RISKY = new Set(['at-risk', 'likely-lost']);

/** A night that threatened a crop under the plan that went out. */
export const wasRisky = (advisory: Advisory): boolean => advisory.crops.some(({ verdict, pickedBefore }) => !pickedBefore && RISKY.has(verdict));

/** What the morning needs and what is asked; null when there is nothing worth waking a phone for. */
export function morningMessage(advisory: Advisory, history: { morningsRead: number; askedThisWeek: number; units: 'C' | 'F' }): { message: Outgoing; asks: boolean } | null {
  const mattered = advisory.plan.actions.length > 0 || wasRisky(advisory);
  const asks = worthAsking({ morningsRead: history.morningsRead, askedThisWeek: history.askedThisWeek, nightMattered: mattered, nightTeaches: advisory.reasons.some(({ code }) => code === 'clear-and-calm') });
  if (!asks && (advisory.morning.length === 0 || !mattered)) return null;
  const text = morningText({ steps: mattered ? advisory.morning : [], asks, units: history.units });
  return { message: { text, html: toHtml(text) }, asks };
}
