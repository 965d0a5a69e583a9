import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { pastControls } from '../../../bot/features/evening/past-controls.js';
import { dialogueAsked } from '../../../bot/features/reading/pending.js';
import { checkGreenhouse } from '../../../engine/index.js';
import { outsideGsm } from '../text/gsm.js';
import { HOUSE, issued, toldRig, type ToldRig } from './told-rig.js';

/** Wednesday 14 January 2026, eight in the morning: the night of Tuesday is over. */
const MORNING = '2026-01-14T08:00';

let rig: ToldRig;
const heard: string[] = [];
beforeEach(async () => {
  rig = await toldRig(MORNING);
});
afterEach(async () => {
  await rig.close();
  for (const text of heard.splice(0)) {
    expect(outsideGsm(text), text).toEqual([]);
    expect(text).not.toMatch(/undefined|NaN|\[object|null|not built/u);
  }
});
const says = async (text: string, at?: string): Promise<string> => {
  const answer = await rig.says(text, at);
  heard.push(answer);
  return answer;
};
const outcomes = async (): Promise<readonly string[]> => (await rig.memory.outcomes('h', 10)).map(({ crop, bed, state, night }) => `${crop} ${bed ?? '-'} ${state} ${night}`);
const deeds = async (): Promise<readonly string[]> => (await rig.memory.actions('h', 0)).map(({ body, done, night }) => `${(JSON.parse(body) as { items: string[] }).items.join('+')} ${done ? 'done' : 'not'} ${night}`);
const readings = async (): Promise<readonly string[]> => (await rig.memory.readings('h', 10)).map(({ tempC, statistic, judged }) => `${Math.round(tempC * 10) / 10} ${statistic} ${judged}`);

describe('how a crop came through', () => {
  it('is kept with crop, bed, state, words and night, and read back', async () => {
    expect(await says('the kale came through')).toContain('Noted: kale came through fine, night of Tuesday.');
    expect(await says('lettuce in the north bed is mush')).toContain('Noted: lettuce in the north bed is lost, night of Tuesday.');
    expect(await says('leek has burnt tips')).toContain('leek is marked');
    expect(await outcomes()).toEqual(['leek - marked 2026-01-13', 'lettuce the north bed dead 2026-01-13', 'kale - fine 2026-01-13']);
    expect((await rig.memory.outcomes('h', 1))[0]!.text).toBe('leek has burnt tips');
  });

  it('is of the night that threatened it most of the last three, where none was said', async () => {
    await issued(rig.memory, '2026-01-12', { crops: { lettuce: 0.6, kale: 0.01 } });
    await issued(rig.memory, '2026-01-13', { crops: { lettuce: 0.1, kale: 0.02 } });
    expect(await says('lettuce is mush')).toContain('night of Monday, the riskiest of the last three.');
    expect(await says('the kale is fine')).toContain('night of Tuesday.');
    expect(await says('the lettuce died last night')).toContain('night of Tuesday.');
  });

  it.each(['undo', 'no', 'wrong', 'scrap that'])('is taken back by "%s", and nothing else is', async (word) => {
    await says('-3');
    await says('the kale came through');
    expect(await says(word)).toContain('Taken back: kale came through fine.');
    expect(await outcomes()).toEqual([]);
    expect(await readings()).toEqual(['-3 low good']);
  });

  it('of several crops is taken back as one', async () => {
    expect((await says('kale is fine, lettuce is dead')).match(/Say "undo"/gu)).toHaveLength(1);
    expect((await outcomes()).length).toBe(2);
    await says('undo');
    expect(await outcomes()).toEqual([]);
  });
});

describe('how all crops came through', () => {
  it.each([['everything survived', 'fine'], ['all of them are dead', 'dead'], ['they all made it', 'fine'], ['all ok this morning', 'fine']])('"%s" is of every crop of the house', async (words, state) => {
    expect((await says(words)).match(/Say "undo"/gu)).toHaveLength(1);
    expect((await outcomes()).toSorted()).toEqual(['kale', 'leek', 'lettuce'].map((crop) => `${crop} - ${state} 2026-01-13`));
    await says('undo');
    expect(await outcomes()).toEqual([]);
  });
});

describe('how crops came through, where it was asked', () => {
  beforeEach(async () => {
    const { id } = (await rig.memory.chat({ channel: 'telegram', chat: '7' }))!;
    const atS = Date.parse('2026-01-14T08:00:00-05:00') / 1000;
    await rig.memory.updateChat(id, { dialogue: dialogueAsked(null, { about: 'outcome', crops: ['lettuce', 'kale'], night: '2026-01-12', atS }) });
  });

  it.each([['fine', 'fine'], ['ok', 'fine'], ['they are all mush', 'dead'], ["it's dead", 'dead'], ['burnt tips', 'marked'], ['all survived', 'fine']])('"%s" is of all that were asked about, and of their night', async (words, state) => {
    expect(await says(words)).toContain('night of Monday');
    expect(await outcomes()).toEqual([`kale - ${state} 2026-01-12`, `lettuce - ${state} 2026-01-12`]);
    await says('undo');
    expect(await outcomes()).toEqual([]);
  });

  it('is asked about where it is not clear, and the state alone is the answer', async () => {
    expect(await says('the lettuce is frozen')).toContain('fine, marked or dead?');
    expect(await says('marked')).toContain('lettuce is marked, night of Tuesday');
    expect(await outcomes()).toEqual(['lettuce - marked 2026-01-13']);
  });

  it.each(['thanks', 'help', 'covered the beds', 'settings'])('"%s" is no answer to it', async (words) => {
    await says(words);
    expect(await outcomes()).toEqual([]);
    expect(await says('kale is fine')).toContain('kale came through fine');
  });
});

describe('a lasting change', () => {
  it('that the description can hold changes it, and is kept with its day', async () => {
    expect(await says('added 6 drums yesterday')).toMatch(/10 vessels.*\nI keep it as a change of the house from Tuesday on\. Wrong\? Say "undo"\.$/su);
    expect((await rig.house()).drums).toMatchObject([{ count: 10 }]);
    expect(await rig.memory.marks('h', 5)).toMatchObject([{ counted: true, text: 'added 6 drums yesterday', body: JSON.stringify({ items: ['water'], amounts: { water: { value: 6, unit: 'count' } } }) }]);
  });

  it('is taken back whole: the house is as it was, and the note is gone', async () => {
    await says('put a second film on');
    expect((await rig.house()).layers).toHaveLength(2);
    expect(await says('undo')).toContain('the house is as it was before');
    expect((await rig.house()).layers).toHaveLength(1);
    expect(await rig.memory.marks('h', 5)).toEqual([]);
  });

  it('is taken back whole while something about it is still asked, and after that was answered', async () => {
    expect(await says('I put in a propane heater with a flue, 5 kW')).toContain('Please read this');
    expect((await rig.house()).heater).toMatchObject({ kind: 'vented-propane' });
    expect(await says('undo')).toContain('the house is as it was before');
    expect(await rig.house()).toEqual(HOUSE);
    expect(await says('I put in a propane heater with a flue, 5 kW')).toContain('Please read this');
    expect(await says('I have read it')).toContain('Say "undo"');
    expect((await rig.house()).heater).toMatchObject({ safetyRead: true });
    expect(await says('undo')).toContain('the house is as it was before');
    expect(await rig.house()).toEqual(HOUSE);
    expect(await rig.memory.marks('h', 5)).toEqual([]);
  });

  it('in an edited message changes nothing, and says so', async () => {
    await says('added 6 drums');
    expect(await rig.edits('added 8 drums')).toContain('An edit does not change the house');
    expect((await rig.house()).drums).toMatchObject([{ count: 10 }]);
    await says('how are you');
    expect(await rig.edits('the tunnel is 3 m tall')).toBe('An edit does not change the house: it stays as it was first told. Say what it is now in a new message.');
    expect((await rig.house()).size.height).toBe(2.4);
  });

  it('that no description holds is a note, and says so', async () => {
    expect(await says('moved the thermometer')).toContain('It is a note: the numbers do not count it.');
    expect(await rig.memory.marks('h', 5)).toMatchObject([{ counted: false, text: 'moved the thermometer' }]);
    expect(await says('no')).toContain('Taken back: "moved the thermometer".');
    expect(await rig.memory.marks('h', 5)).toEqual([]);
  });

  it('is not undone over a later one', async () => {
    await says('added 2 drums');
    await says('the tunnel is 3 m tall');
    await says('undo');
    expect((await rig.house()).drums).toMatchObject([{ count: 6 }]);
    expect((await rig.house()).size.height).toBe(2.4);
  });
});

describe('deeds', () => {
  it('are taken back by a word', async () => {
    await says('covered the north bed', '2026-01-14T16:00');
    expect(await says('undo')).toContain('Taken back: done: cover.');
    expect(await deeds()).toEqual([]);
  });

  it('of a bed by its number are of that bed alone', async () => {
    expect(await says('covered bed 1', '2026-01-14T16:00')).toContain('(the north bed): done: cover');
  });

  it('to come are not counted on, and it is said how to tell them', async () => {
    expect(await says("I'll cover at 6", '2026-01-14T16:00')).toContain('Tell me once it is done');
    expect(await deeds()).toEqual([]);
  });

  it('of last night are kept for it, at any hour, and known to the days that are run through before tonight', async () => {
    const check = checkGreenhouse(HOUSE);
    if (!check.ok) throw new Error(JSON.stringify(check.faults));
    await says('covered the beds', '2026-01-13T17:30');
    const midnightS = Date.parse('2026-01-14T00:00:00-05:00') / 1000;
    const isCovered = async (): Promise<boolean> => pastControls(await rig.memory.actions('h', 0), check.greenhouse)(midnightS).coverOn[0]!;
    expect(await isCovered()).toBe(true);
    expect(await says('forgot to cover last night', '2026-01-14T15:00')).toContain('Noted for the night of Tuesday: not done: cover.');
    expect(await deeds()).toEqual(['cover done 2026-01-13', 'cover not 2026-01-13']);
    expect(await isCovered()).toBe(false);
  });

  it('that were forgotten, told in the morning, are of the night that is over', async () => {
    expect(await says('forgot the covers')).toContain('Noted for the night of Tuesday: not done: cover.');
    expect(await says('forgot the covers', '2026-01-14T18:00')).toContain('Noted for tonight: not done: cover.');
    expect(await deeds()).toEqual(['cover not 2026-01-13', 'cover not 2026-01-14']);
  });

  it.each(['not tonight', 'skip it', 'skipping it tonight', 'not doing it'])('"%s" leaves the plan, and nobody is reminded', async (words) => {
    await issued(rig.memory, '2026-01-14', { actions: [{ action: 'cover', target: 'the north bed', by: '2026-01-14T16:40:00-05:00' }] });
    expect(await says(words, '2026-01-14T16:05')).toContain('you leave it tonight (cover)');
    expect(await deeds()).toEqual(['cover not 2026-01-14']);
  });
});

describe('settings', () => {
  it('are shown with the words that change each', async () => {
    const text = await says('settings');
    for (const words of ['Units: Celsius', 'Evening message: early enough', 'Morning message: 08:00', 'Bedtime: 21:30', '45.1 N, 72.2 W', 'Messages: on', '"use Fahrenheit"', '"stop"', '"I moved to']) expect(text).toContain(words);
  });

  it.each([
    ['use fahrenheit', { units: 'F' }],
    ['fahrenheit please', { units: 'F' }],
    ['evening message at 4 pm', { eveningAt: '16:00' }],
    ['send it at 15:30', { eveningAt: '15:30' }],
    ['morning message at 7', { morningAt: '07:00' }],
    ['bedtime is 10 pm', { bedtime: '22:00' }],
  ])('are changed by "%s", and taken back by a word', async (words, is) => {
    expect(await says(words)).toMatch(/^Changed\./u);
    expect((await rig.house()).grower).toMatchObject(is);
    await says('undo');
    expect((await rig.house()).grower).toEqual(HOUSE.grower);
  });

  it('say when the message comes earlier than it was asked for', async () => {
    expect(await says('evening message at 8 pm')).toMatch(/Evening message: 20:00.*\nToday it comes at 1[56]:\d\d: the work must be done before dark\./su);
    expect(await says('settings')).toMatch(/Evening message: 20:00\. Today it comes at 1[56]:\d\d/u);
  });

  it('that are none of ours say so, and change nothing', async () => {
    expect(await says('text me only if it goes below 10')).toMatch(/^I cannot set that\./u);
    expect(await rig.house()).toEqual(HOUSE);
  });

  it('pause the messages, and bring them back', async () => {
    expect(await says('pause')).toContain('Quiet from now on');
    expect(await says('settings')).toContain('Messages: paused');
    expect(await says('resume')).toContain('comes again');
    expect(await says('pause for a week')).toContain('lasts until you say "start"');
    expect((await rig.memory.chat({ channel: 'telegram', chat: '7' }))!.paused).toBe(true);
  });
});

describe('a reading', () => {
  it.each(['that was celsius', 'sorry, that was in celsius', 'I meant celsius'])('is corrected by "%s", and the house keeps its units', async (words) => {
    await rig.close();
    rig = await toldRig(MORNING, { ...HOUSE, grower: { units: 'F' } });
    await says('-3');
    expect(await says(words)).toContain('27F inside, low of the night of Tuesday');
    expect(await readings()).toEqual(['-3 low good']);
    expect((await rig.house()).grower?.units).toBe('F');
  });

  it('beside a word about the chat is asked about, and kept when it is answered', async () => {
    expect(await says('29, stop')).toMatch(/Quiet from now on.*"29": Fahrenheit or Celsius/su);
    expect(await says('F')).toContain('Noted: -1.7C inside');
    expect(await readings()).toEqual(['-1.7 low good']);
  });

  it('that is edited takes the place of the first', async () => {
    await says('-3');
    expect(await rig.edits('-4', '2026-01-14T15:00')).toMatch(/^Your edit counts.*\nNoted: -4C inside, low of the night of Tuesday/su);
    expect(await readings()).toEqual(['-4 low good']);
  });

  it('that is edited into something else is gone', async () => {
    await says('covered the beds, -3 inside');
    await rig.edits('covered the beds');
    expect(await readings()).toEqual([]);
    expect(await deeds()).toHaveLength(1);
  });

  it('that is asked about waits while the house is changed', async () => {
    expect(await says('-50')).toContain('cannot be a temperature');
    await says('use fahrenheit');
    expect(await says('really')).toContain('Noted: -58F inside');
  });
});

describe('a question about a reading that was settled', () => {
  it.each(['drop it', 'sorry, -5', 'that was celsius, -5'])('by "%s" stands in the way of nothing that is told after it', async (words) => {
    await says('-50');
    await says(words);
    await says('took the drums out');
    expect(await rig.house()).not.toHaveProperty('drums');
    expect(await says('undo')).toContain('the house is as it was before');
    expect((await rig.house()).drums).toMatchObject([{ count: 4 }]);
  });

  it('and is answered by a number alone, which the gate judges', async () => {
    await says('-50');
    expect(await says('no, 28')).toContain('Noted: 28C inside');
  });
});

describe('what could mean two things', () => {
  it('is asked in plain words', async () => {
    expect(await says('leek ok')).toMatch(/That could mean two things\. Do you mean how a crop came through, as in "the leek is fine", or whether it will survive/u);
  });
});

describe('small talk', () => {
  it.each([['ok', 'All right.'], ['thx', 'You are welcome.'], ['thanks!', 'You are welcome.'], ['good night', 'Good night.'], ['hi', 'Hello.']])('"%s" gets a short word', async (words, answer) => {
    expect(await says(words)).toContain(answer);
  });
});
