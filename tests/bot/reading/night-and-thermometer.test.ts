import { beforeEach, describe, expect, it } from 'vitest';
import { dialogueAsked } from '../../../bot/features/reading/pending.js';
import { checkedTalk, MORNING } from './checked-talk.js';
import { HOUSE } from './reading-rig.js';

const talk = checkedTalk();
const { says, rows } = talk;

describe('the night of a low', () => {
  it.each([
    ['the morning', 'low 21', MORNING, 'Tuesday'],
    ['before sunrise', 'low 21', '2026-01-14T06:30', 'Tuesday'],
    ['the afternoon', 'low was 21', '2026-01-14T15:00', 'Tuesday'],
    ['the evening, for last night', 'low was 21', '2026-01-14T20:30', 'Tuesday'],
    ['after midnight, for the night so far', 'low 21', '2026-01-15T01:00', 'Wednesday'],
    ['a later day, by name', 'low was 21 tuesday night', '2026-01-15T15:00', 'Tuesday'],
  ])('told in %s', async (_when, text, at, night) => {
    expect(await says(text, at)).toContain(`21F inside, low of the night of ${night}.`);
  });

  it('is where the learning looks for it, also when it is told late', async () => {
    await says('low was 21', '2026-01-14T20:30');
    const [row] = await talk.rig.rows();
    expect(row!.validAtS).toBeLessThan(Date.parse('2026-01-14T11:00:00-05:00') / 1000);
  });
});

describe('readings of one moment', () => {
  it('are read back with their time', async () => {
    expect(await says('inside 30 now', '2026-01-13T20:30')).toContain('30F inside at 20:30.');
    expect(await says('28 at 10pm', '2026-01-13T22:05')).toContain('28F inside at 22:00.');
  });

  it('bear witness against a low above them', async () => {
    await says('inside 21 now', '2026-01-13T22:30');
    expect(await says('low 25', MORNING)).toContain('The same thermometer showed less that night');
  });
});

describe('the question of the morning', () => {
  beforeEach(async () => {
    const { id } = (await talk.rig.memory.chat({ channel: 'telegram', chat: '7' }))!;
    await talk.rig.memory.updateChat(id, { dialogue: dialogueAsked(null, { about: 'low', atS: Date.parse(`${MORNING}:00-05:00`) / 1000 }) });
  });

  it('makes a bare number the low, also in the afternoon', async () => {
    expect(await says('21', '2026-01-14T14:00')).toContain('21F inside, low of the night of Tuesday.');
  });

  it('leaves a number that says what it is alone, and one that comes a night later', async () => {
    expect(await says('it is 41 now', '2026-01-14T14:00')).toContain('41F inside at 14:00.');
    expect(await says('30', '2026-01-14T20:00')).toContain('30F inside at 20:00.');
  });

  it('leaves who is in the middle of describing the house alone', () => {
    expect(dialogueAsked('{"version":1}', { about: 'low', atS: 0 })).toBe('{"version":1}');
  });

  it('does not take the place of a question about a reading', async () => {
    await says('-5', MORNING);
    const { id, dialogue } = (await talk.rig.memory.chat({ channel: 'telegram', chat: '7' }))!;
    await talk.rig.memory.updateChat(id, { dialogue: dialogueAsked(dialogue, { about: 'low', atS: Date.parse(`${MORNING}:00-05:00`) / 1000 + 600 }) });
    await says('1');
    expect(await rows()).toEqual(['23 inside good']);
  });
});

describe('thermometers', () => {
  it('that nobody told of are asked for, and the place alone is the answer', async () => {
    expect(await says('shed 18', MORNING)).toMatch(/^"shed": Which thermometer/u);
    expect(await says('outside')).toContain('18F outside');
    expect(await rows()).toEqual(['18 outside good']);
  });

  it('that are told of are found by their name, and a bare number is of the one inside', async () => {
    await talk.inAnother({ ...HOUSE, thermometers: [{ name: 'shed', place: 'outside', hangs: 'shade' }, { name: 'middle', place: 'inside', height: 1.5 }] });
    await talk.rig.forecasts('2026-01-13', { inside: { lowC: -5 }, outside: { lowC: -9 } });
    expect(await says('shed thermometer 18', MORNING)).toContain('18F at "shed" (outside), low of the night of Tuesday. Forecast was 16F: 2 too cold.');
    expect(await says('21')).toContain('21F at "middle" (inside)');
    expect(await rows()).toEqual(['18 shed good', '21 middle good']);
    expect((await talk.rig.rows()).map(({ place }) => place)).toEqual(['outside', 'inside']);
    expect(await says('kitchen 60')).toContain('inside, outside, under the cover, shed, middle?');
  });
});

describe('an answer that only lacks its unit', () => {
  it('takes the unit alone', async () => {
    await talk.inAnother({ ...HOUSE, grower: { units: 'C' } });
    await talk.rig.forecasts('2026-01-13', { inside: { lowC: -5 } });
    expect(await says('23', MORNING)).toContain('Fahrenheit or Celsius');
    expect(await says('F')).toContain('-5C inside');
  });
});
