import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { toldRig, type ToldRig } from './told-rig.js';

let rig: ToldRig;
beforeEach(async () => {
  rig = await toldRig('2026-01-14T16:30');
});
afterEach(() => rig.close());

describe('a number of somebody else', () => {
  it.each(["my neighbor's greenhouse got down to -9 last night", 'her tunnel was -4 this morning', 'his tunnel was at minus two last year'])('%s is not stored, and that is said', async (says) => {
    expect(await rig.says(says)).toContain('I note no number from that.');
    expect(await rig.memory.readings('h', 10)).toEqual([]);
  });
});
