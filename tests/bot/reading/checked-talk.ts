import { afterEach, beforeEach, expect } from 'vitest';
import type { GreenhouseFile } from '../../../engine/index.js';
import { outsideGsm } from '../text/gsm.js';
import { readingRig, type ReadingRig } from './reading-rig.js';

/** Wednesday 14 January 2026, eight in the morning: the night of Tuesday is over. */
export const MORNING = '2026-01-14T08:00';

export interface CheckedTalk {
  readonly rig: ReadingRig;
  /** The same with another house, which has no forecast yet. */
  readonly inAnother: (file: GreenhouseFile) => Promise<void>;
  readonly says: (text: string, at?: string) => Promise<string>;
  /** Degrees F as rows hold them, with how they were judged. */
  readonly rows: () => Promise<readonly string[]>;
}

/** A new rig for each test of the file, with a forecast for the night that is over; every answer is looked at for stray characters. */
export function checkedTalk(): CheckedTalk {
  let rig: ReadingRig;
  const heard: string[] = [];
  beforeEach(async () => {
    rig = await readingRig();
    await rig.forecasts('2026-01-13', { inside: { lowC: -5 }, outside: { lowC: -9 }, cover: { lowC: -2 } });
  });
  afterEach(async () => {
    await rig.close();
    for (const text of heard.splice(0)) {
      expect(outsideGsm(text), text).toEqual([]);
      expect(text).not.toMatch(/undefined|NaN|\[object|null/u);
    }
  });
  return {
    get rig() {
      return rig;
    },
    inAnother: async (file) => {
      await rig.close();
      rig = await readingRig(file);
    },
    says: async (text, at) => {
      const answer = await rig.says(text, at);
      heard.push(answer);
      return answer;
    },
    rows: async () => (await rig.rows()).map(({ tempC, place, judged, thermometer }) => `${Math.round(tempC * 1.8 + 32)} ${thermometer ?? place} ${judged}`),
  };
}
