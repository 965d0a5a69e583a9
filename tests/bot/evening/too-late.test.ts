import { describe, expect, it } from 'vitest';
import { readGreenhouse } from '../../../bot/commands/read-input.js';
import { DEMO_GREENHOUSE } from '../../../bot/console-house.js';
import type { Advisory, AdvisoryAction } from '../../../bot/features/evening/advisory.js';
import { issueAdvisory } from '../../../bot/features/evening/issue-advisory.js';
import { workOutHere } from '../../../bot/features/evening/work-out-evening.js';
import { demoSource } from '../../../bot/weather/demo.js';

const greenhouse = await readGreenhouse(DEMO_GREENHOUSE);

async function adviseAt(local: string): Promise<Advisory> {
  const nowS = Date.parse(`2026-11-25T${local}:00-05:00`) / 1000;
  const clock = { nowS: (): number => nowS };
  return (await issueAdvisory({ greenhouseId: 'test', greenhouse, zone: 'America/Toronto' }, { clock, weather: demoSource(clock), store: null, workOut: workOutHere })).advisory;
}

const work = ({ action, target }: Pick<AdvisoryAction, 'action' | 'target'>): string => `${action} ${target ?? ''}`;

describe('late in the evening', () => {
  it.each(['18:00', '21:00'])('at %s nothing is asked for that is said to be too late', async (local) => {
    const { plan, reasons } = await adviseAt(local);
    const missed = reasons.flatMap((reason) => (reason.code === 'too-late' ? reason.actions.map(work) : []));
    expect(plan.actions.map(work)).toContain('heater ');
    expect(missed.length).toBeGreaterThan(0);
    expect(plan.actions.map(work).filter((one) => missed.includes(one))).toEqual([]);
  });
});
