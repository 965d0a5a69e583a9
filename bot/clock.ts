import { SettingError } from '../config/settings.js';
import type { Clock } from './ports.js';

const FORM = /^(\S+?)(?:\s+x(\d+(?:\.\d+)?))?$/u;

export const systemClock: Clock = { nowS: () => Math.floor(Date.now() / 1000) };

/** How fast a trial clock runs; 1 for the real one. */
export const clockSpeed = (setting: string | null): number => Number((setting === null ? null : FORM.exec(setting.trim()))?.[2] ?? 1);

/** A clock for trials: starts at an instant, runs at a speed. */
export function trialClock(setting: string): Clock {
  const parts = FORM.exec(setting.trim());
  const startMs = parts ? Date.parse(parts[1]!) : NaN;
  if (!Number.isFinite(startMs)) throw new SettingError(`DUSKWARD_CLOCK: expected an instant and perhaps a speed, for example "2026-01-14T22:00:00Z x600"; got ${JSON.stringify(setting)}`);
  const speed = Number(parts![2] ?? 1);
  const begunMs = Date.now();
  return { nowS: () => Math.floor((startMs + (Date.now() - begunMs) * speed) / 1000) };
}

export const fixedClock = (atS: number): Clock => ({ nowS: () => Math.floor(atS) });
