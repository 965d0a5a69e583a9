import { describe, expect, it } from 'vitest';
import type { AdvisoryMorning } from '../../../bot/features/evening/advisory.js';
import { morningText } from '../../../bot/text/morning-text.js';

const at = (clock: string): string => `2026-11-26T${clock}:00-05:00`;
const thaw = (target: string, clock: string): AdvisoryMorning => ({ action: 'harvest', target, from: at(clock) });

describe('the morning plan', () => {
  it('says once what is so for all beds', () => {
    const text = morningText({ steps: ['the north bed', 'the middle bed', 'the south bed'].map((bed) => thaw(bed, '09:00')), asks: false, units: 'C' });
    expect(text.match(/frozen leaves/gu)).toHaveLength(1);
    expect(text).not.toContain('bed');
  });

  it('names the beds where they differ, and merges those that are alike', () => {
    const steps: readonly AdvisoryMorning[] = [thaw('the north bed', '09:00'), thaw('the middle bed', '10:30'), thaw('the south bed', '09:00'), { action: 'uncover', target: 'the north bed', from: at('08:40') }, { action: 'uncover', target: 'the middle bed', from: at('08:40') }];
    const text = morningText({ steps, asks: false, units: 'C' });
    expect(text).toContain('Uncover the north bed and the middle bed from about 08:40');
    expect(text).toContain('Leave frozen leaves in the north bed and the south bed alone until about 09:00');
    expect(text).toContain('Leave frozen leaves in the middle bed alone until about 10:30');
  });

  it('keeps every kind of step', () => {
    const steps = (['clear-snow', 'vents', 'curtain'] as const).map((action): AdvisoryMorning => ({ action, from: at('09:00') }));
    expect(morningText({ steps, asks: false, units: 'C' }).split('\n')).toHaveLength(1 + steps.length);
  });

  it.each([['C', '-1.5'], ['F', '28']] as const)('asks for the low with an example in %s', (units, example) => {
    expect(morningText({ steps: [], asks: true, units })).toContain(`A number like ${example} will do.`);
  });
});
