import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeGreenhouse } from '../../../bot/features/describe/change.js';
import { describeStep, readState, start, writeState } from '../../../bot/features/describe/describe.js';
import { checkGreenhouse } from '../../../engine/index.js';
import { outsideGsm } from '../text/gsm.js';
import { CONTEXT } from '../../conversations/talk-through.js';
import { HELD_OUT_PHRASES } from './held-out-phrases.js';
import { PHRASES } from './phrases.js';

const SHORT = ['yes', 'no', 'skip', 'back', 'done', 'later', '2', '9', '30', '0', '-5', '1000000', 'change 3', 'summary', 'help', 'start over', 'medium', 'tender', 'no flue', 'I have read it', 'metres', 'feet', 'two layers', '45.1, -72.2', 'no more kale', 'remove the north bed', 'the north bed is 5000 sq ft', 'height 90 ft', 'width 1 m', 'lean-to', 'gothic', 'half round', 'sides 20 ft', 'blower', 'one layer', 'compost against the south bed', 'fan on a battery', '90 cfm', ''];
const said = fc.oneof(fc.constantFrom(...SHORT), fc.constantFrom(...[...PHRASES, ...HELD_OUT_PHRASES].map(({ says }) => says)), fc.string({ maxLength: 60, unit: 'grapheme' }));
const several = fc.oneof(said, fc.tuple(said, said).map((both) => both.join(', ')));
const WEXBY = { name: 'Wexby', region: 'Scotland', country: 'United Kingdom', countryCode: 'GB', latitude: 57.2, longitude: -3.8 };
/** The same runs each time: a test of ours never draws luck. */
const RUNS = { seed: 20261125, numRuns: 60 };

describe('whatever is said, in whatever order', () => {
  it('the answer is plain text, the file passes its check, and the state can be kept', () => {
    fc.assert(
      fc.property(fc.array(several, { minLength: 4, maxLength: 14 }), fc.boolean(), (messages, isFound) => {
        let step = start(null, CONTEXT);
        for (const text of messages) {
          step = describeStep(readState(writeState(step.state)), { text }, CONTEXT);
          if (step.look) step = describeStep(step.state, { places: { town: step.look.town, found: isFound ? [WEXBY] : [] } }, CONTEXT);
          expect(step.reply.text).not.toBe('');
          expect(outsideGsm(step.reply.text), step.reply.text).toEqual([]);
          if (step.file) expect(checkGreenhouse(step.file)).toMatchObject({ ok: true });
        }
      }),
      RUNS,
    );
  });

  it('a change keeps a whole file whole', () => {
    const { file } = describeStep(describeStep(null, { location: { latitude: 44.3, longitude: -72.5 } }, CONTEXT).state, { text: '20 by 48 hoop house, 9 feet tall, two layers, kale in the north bed, 4 drums of 55 gallons' }, CONTEXT);
    expect(file).toBeDefined();
    fc.assert(
      fc.property(several, (text) => {
        const step = changeGreenhouse(file!, text, CONTEXT);
        if (step?.file) expect(checkGreenhouse(step.file)).toMatchObject({ ok: true });
        if (step) expect(outsideGsm(step.reply.text), step.reply.text).toEqual([]);
      }),
      { ...RUNS, numRuns: 300 },
    );
  });
});
