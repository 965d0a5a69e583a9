import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toldRig, type ToldRig } from '../told/told-rig.js';

let rig: ToldRig;
beforeEach(async () => {
  rig = await toldRig('2026-01-14T16:30');
});
afterEach(() => rig.close());

describe('what cannot be noted of care', () => {
  it.each([
    ['the tomato is worth 60', 'I know of no such crop or bed.'],
    ['covering the south bed takes 20 minutes', 'I know of no cover there.'],
  ])('%s is refused with an example, and changes nothing', async (says, refusal) => {
    const before = await rig.house();
    const answer = await rig.says(says);
    expect(answer).toContain(refusal);
    expect(answer).toContain('Say for example');
    expect(await rig.house()).toEqual(before);
  });
});
