import { beforeEach, describe, expect, it } from 'vitest';
import { readingsToLearn } from '../../../bot/features/evening/readings-to-learn.js';
import { celsiusToKelvin } from '../../../engine/index.js';
import { checkedTalk, MORNING } from './checked-talk.js';

const PLACE = { latitude: 45.1, longitude: -72.2, openSky: 1, surroundings: 'wooded' } as const;

const talk = checkedTalk();
const { says, rows } = talk;

describe('a reading that fits', () => {
  it('is read back with unit, place, night and how right the forecast was', async () => {
    expect(await says('21', MORNING)).toContain('21F inside, low of the night of Tuesday. Forecast was 23F: 2 too warm.');
    expect(await says('outside 18')).toContain('18F outside, low of the night of Tuesday. Forecast was 16F: 2 too cold.');
    expect(await says('low 28 under the cover')).toContain('28F under the cover, low of the night of Tuesday. Forecast was 28F: right.');
    expect(await rows()).toEqual(['21 inside good', '18 outside good', '28 cover good']);
  });

  it.each(['undo', 'no', 'No.', 'wrong', 'scrap that', 'nope'])('is taken back by "%s"', async (word) => {
    await says('21', MORNING);
    expect(await says(word)).toContain('Taken back: low 21F inside.');
    expect(await rows()).toEqual([]);
  });

  it('is taken back with all of its message', async () => {
    await says('23 in, 18 out', MORNING);
    expect(await says('undo')).toContain('low 23F inside; low 18F outside');
    expect(await rows()).toEqual([]);
  });

  it('is left alone by a "no" that comes much later', async () => {
    await says('21', MORNING);
    await says('no', '2026-01-14T11:00');
    expect(await rows()).toEqual(['21 inside good']);
  });

  it.each([['sorry 19', '19 inside good'], ['no, it was really 19', '19 inside good'], ['sorry, 19F', '19 inside good'], ['oops, I meant 19', '19 inside good']])('is corrected by "%s"', async (text, row) => {
    await says('21', MORNING);
    expect(await says(text)).toContain('Corrected: 19F inside, low of the night of Tuesday.');
    expect(await rows()).toEqual([row]);
  });

  it('keeps its night when it is corrected in the evening', async () => {
    await says('21', MORNING);
    expect(await says('sorry, 19', '2026-01-14T21:00')).toContain('19F inside, low of the night of Tuesday.');
  });

  it('of two is corrected where the place is named', async () => {
    await says('23 in, 18 out', MORNING);
    expect(await says('no, outside was 15')).toContain('15F outside');
    expect((await rows()).toSorted()).toEqual(['15 outside good', '23 inside good']);
  });

  it('needs no forecast', async () => {
    expect(await says('21', '2026-01-11T08:00')).toMatch(/^Noted: 21F inside, low of the night of Saturday\.\n/u);
  });
});

describe('a reading that does not fit', () => {
  it('is asked about, kept with a question mark, and learned from only when it is answered', async () => {
    expect(await says('-5', MORNING)).toMatch(/^-5F as the low inside\? I expected about 23F\. Did you mean -5C \(23F\)\?\n1: -5C \(23F\)\n2: -5F is right\n.*question mark/u);
    expect(await rows()).toEqual(['-5 inside open']);
    expect(readingsToLearn(await talk.rig.rows(), { place: PLACE })).toEqual([]);
    expect(await says('yes')).toContain('23F inside, low of the night of Tuesday.');
    expect(await rows()).toEqual(['23 inside good']);
    expect(readingsToLearn(await talk.rig.rows(), { place: PLACE })).toMatchObject([{ place: 'inside', statistic: 'low', valueK: celsiusToKelvin(-5) }]);
  });

  it.each([
    ['yes', '23 inside good'],
    ['1', '23 inside good'],
    ['-5C', '23 inside good'],
    ['yes, -5C', '23 inside good'],
    ['2', '-5 inside good'],
    ['no, it really was -5F', '-5 inside good'],
    ['no it was really -5', '23 inside good'],
    ['really', '-5 inside good'],
    ['as typed', '-5 inside good'],
    ['24', '24 inside good'],
    ['no, 24', '24 inside good'],
    ['sorry, I meant 24F', '24 inside good'],
    ['inside was 24', '24 inside good'],
    ['it was in the sun', '-5 inside sunlit'],
    ['not reset', '-5 inside not-reset'],
    ["don't know", '-5 inside open'],
  ])('is settled by "%s"', async (answer, row) => {
    await says('-5', MORNING);
    await says(answer);
    expect(await rows()).toEqual([row]);
  });

  it('is dropped on a word, and the original stays in the record', async () => {
    await says('-5', MORNING);
    expect(await says('drop it')).toContain('Dropped: -5F no longer counts.');
    expect(await rows()).toEqual([]);
  });

  it('is settled by a button, and an old button says so', async () => {
    await says('-5', MORNING);
    const again = talk.rig.presses('-5C (23F)');
    expect(await again).toContain('23F inside');
    expect(await rows()).toEqual(['23 inside good']);
  });

  it('after a plain "no" asks for the number, and takes it', async () => {
    await says('-5', MORNING);
    expect(await says('no')).toMatch(/^Then what does it show\?/u);
    expect(await rows()).toEqual(['-5 inside open']);
    await says('22');
    expect(await rows()).toEqual(['22 inside good']);
  });

  it('asks again about a new number that does not fit either', async () => {
    await says('-5', MORNING);
    expect(await says('91')).toMatch(/^91F as the low inside\?/u);
    expect(await rows()).toEqual(['91 inside open']);
  });

  it('waits while something else is talked of, and another reading does not take its answers', async () => {
    await says('-5', MORNING);
    expect(await says('help')).toContain('What I can do');
    expect(await says('outside 18')).toContain('18F outside');
    expect(await says('1')).toContain('23F inside');
    expect((await rows()).toSorted()).toEqual(['18 outside good', '23 inside good']);
  });

  it('stays open and is not learned from when nobody answers within a day', async () => {
    await says('-5', MORNING);
    await says('yes', '2026-01-15T09:00');
    expect(await rows()).toEqual(['-5 inside open']);
  });

  it('is not answered by the number of the next morning', async () => {
    await says('low was -5', '2026-01-14T20:00');
    await says('24', '2026-01-15T08:00');
    expect(await rows()).toEqual(['-5 inside open', '24 inside good']);
  });

  it('of two in one message are asked about one after the other', async () => {
    expect(await says('inside -5, outside 91', MORNING)).toMatch(/^-5F as the low inside\?/u);
    expect(await says('yes')).toContain('91F as the low outside?');
    expect(await says('2')).toContain('91F outside');
    expect((await rows()).toSorted()).toEqual(['23 inside good', '91 outside good']);
  });

  it('beside one that fits: that one is kept at once', async () => {
    const text = await says('inside 21, outside 91', MORNING);
    expect(text).toContain('21F inside');
    expect(text).toContain('91F as the low outside?');
    await says('19');
    expect((await rows()).toSorted()).toEqual(['19 outside good', '21 inside good']);
  });

  it('that cannot be is asked about with an example, and kept with a question mark', async () => {
    expect(await says('250', MORNING)).toMatch(/cannot be a temperature.*"28F"/u);
    expect(await rows()).toEqual(['250 inside open']);
    expect(readingsToLearn(await talk.rig.rows(), { place: PLACE })).toEqual([]);
    expect(await says('25')).toContain('Noted: 25F inside, low of the night of Tuesday.');
    expect(await rows()).toEqual(['25 inside good']);
  });

  it('that cannot be, beside one that can: the other is kept at once', async () => {
    expect(await says('inside 21, outside 1500', MORNING)).toMatch(/Noted: 21F inside.*1500F as the low outside\?/su);
    await says('drop it');
    expect(await rows()).toEqual(['21 inside good']);
  });

  it('leaves a description that was begun where it is', async () => {
    const { id } = (await talk.rig.memory.chat({ channel: 'telegram', chat: '7' }))!;
    await talk.rig.memory.updateChat(id, { dialogue: '{"version":1,"file":{},"pending":[]}' });
    await says('-5', MORNING);
    await says('yes');
    await says('undo');
    expect((await talk.rig.memory.chatById(id))!.dialogue).toBe('{"version":1,"file":{},"pending":[]}');
  });
});

describe('a low that was not reset', () => {
  beforeEach(async () => {
    await talk.rig.forecasts('2026-01-14', { inside: { lowC: 3, halfC: 1 } });
    await says('21', MORNING);
  });

  it('is taken as a bound, and said so', async () => {
    expect(await says('21', '2026-01-15T08:00')).toMatch(/21F inside, low of the night of Wednesday\. It showed that before, and I expected 37F: I take it that it was not reset/u);
    expect(await rows()).toEqual(['21 inside good', '21 inside not-reset']);
    expect(readingsToLearn(await talk.rig.rows(), { place: PLACE }).map(({ notReset }) => notReset)).toEqual([undefined, true]);
  });

  it('counts in full on a word', async () => {
    await says('21', '2026-01-15T08:00');
    await says('it was reset');
    expect(await rows()).toEqual(['21 inside good', '21 inside good']);
  });
});

describe('a thermometer in the sun', () => {
  it('is kept and not learned from', async () => {
    expect(await says('64 inside in the sun', '2026-01-14T12:00')).toContain('64F inside at 12:00. In the sun');
    expect(await rows()).toEqual(['64 inside sunlit']);
    expect(readingsToLearn(await talk.rig.rows(), { place: PLACE })).toEqual([]);
  });
});
