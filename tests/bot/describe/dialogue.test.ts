import { describe, expect, it } from 'vitest';
import { describeStep, readState, start, writeState, type DescribeStep, type Said } from '../../../bot/features/describe/describe.js';
import { changeGreenhouse, readBack } from '../../../bot/features/describe/change.js';
import { inventedTowns } from '../../conversations/invented-towns.js';
import { CONTEXT, Talk } from '../../conversations/talk-through.js';
import { checkGreenhouse } from '../../../engine/index.js';

const talk = (): Talk => new Talk(inventedTowns(false));
const after = async (...says: readonly string[]): Promise<Talk> => {
  const one = talk();
  for (const text of says) await one.says({ text });
  return one;
};
const FIRST_THREE = ['Alder Bench, Vermont', '20 by 48 hoop house, 9 feet tall', 'two layers'] as const;
const step = (before: DescribeStep, said: Said): DescribeStep => describeStep(before.state, said, CONTEXT);

describe('the state', () => {
  it('goes on after it was stored, and begins anew where it is of another version or broken', async () => {
    const { step: before } = await after('Alder Bench, Vermont');
    expect(readState(writeState(before.state))).toEqual(before.state);
    expect(readState('{"version":0,"file":{},"pending":[]}')).toBeNull();
    expect(readState('not json')).toBeNull();
    expect(readState(null)).toBeNull();
  });

  it('is resumed where it stopped, whenever that is', async () => {
    const { step: paused } = await after('Alder Bench, Vermont', 'later');
    const resumed = start(readState(writeState(paused.state)), CONTEXT);
    expect(resumed.reply.text).toMatch(/^Welcome back\./u);
    expect(resumed.reply.text).toContain('How big is it');
  });

  it('holds the place to 3 decimals and no finer', () => {
    const { state } = describeStep(null, { location: { latitude: 45.123456, longitude: -72.987654 } }, CONTEXT);
    expect(state.file.place).toEqual({ latitude: 45.123, longitude: -72.988 });
    expect(writeState(state)).not.toMatch(/45\.1234|72\.98765/u);
  });
});

describe('the first message', () => {
  it('is answered with who speaks, also when it already describes the greenhouse', () => {
    const first = describeStep(null, { text: '20 by 48 hoop house, 9 feet tall, two layers' }, CONTEXT);
    expect(first.reply.text).toMatch(/^I am Duskward/u);
    expect(first.reply.text).toContain('two layers');
    expect(first.reply.text).toContain('Where is the greenhouse?');
    expect(first.reply.asksForLocation).toBe(true);
  });
});

describe('the first advisory', () => {
  it('is announced once, right after place, size and layers', async () => {
    const { step: third } = await after(...FIRST_THREE);
    expect(third.isFirst).toBe(true);
    expect(third.file).toMatchObject({ size: { width: '20 ft' }, shape: 'half-round', layers: [{}, {}] });
    expect(third.after?.text).toMatch(/^Do you have covers/u);
    expect(step(third, { text: 'one layer' }).isFirst).toBe(false);
  });

  it('waits for all three, in whatever order they come', async () => {
    const { step: all } = await after('two layers', '20 by 48 ft hoop house, 9 feet tall');
    expect(all.file).toBeUndefined();
    expect(step(all, { location: { latitude: 44.3, longitude: -72.5 } }).isFirst).toBe(true);
  });
});

describe('safety of a flame', () => {
  const withHeater = (...says: readonly string[]): Promise<Talk> => after(...FIRST_THREE, 'propane heater, 30000 btu, no flue', ...says);

  it.each(['no', 'skip', 'later', 'maybe', 'what?', 'kale'])('is not acknowledged by "%s"', async (says) => {
    const { step: last } = await withHeater(says);
    expect(last.file?.heater?.safetyRead).toBe(false);
  });

  it.each(['I have read it', 'yes', "I've read it", 'ok, understood'])('is acknowledged by "%s"', async (says) => {
    const { step: last } = await withHeater(says);
    expect(last.file?.heater?.safetyRead).toBe(true);
  });

  it('is asked anew for another flame', async () => {
    const { step: last } = await withHeater('I have read it', 'we have a kerosene heater instead, 20000 btu, no flue');
    expect(last.file?.heater).toMatchObject({ kind: 'unvented-kerosene', safetyRead: false });
    expect(last.reply.text).toContain('carbon monoxide');
  });

  it('has cautions for electric heat, and no question', async () => {
    const { step: last } = await after(...FIRST_THREE, '1500 W electric heater');
    expect(last.reply.text).toContain('ground-fault protection');
    expect(last.reply.text).not.toContain('I have read it');
  });
});

describe('what is read back later', () => {
  it('has the town as it was found, and none where none was said', async () => {
    const { step: whole } = await after('Alder Bench, Vermont', '20 by 48 hoop house, 9 feet tall', 'one layer', 'no', 'no', 'skip', 'no', 'no', 'no');
    const text = readBack(whole.file!, CONTEXT);
    expect(text).toMatch(/^1 Place: Alder Bench/mu);
    expect(text).toMatch(/^4 Covers: none$/mu);
    expect(text).toMatch(/^9 Heater: none$/mu);
    expect(text).toMatch(/^6 Soil: not told, taken as moist loam$/mu);
    const heated = changeGreenhouse(whole.file!, 'we bought a 2 kW electric heater', CONTEXT)!.file!;
    expect(heated.none).not.toContain('heater');
    expect(readBack(heated, CONTEXT)).toMatch(/^1 Place: Alder Bench/mu);
    const moved = changeGreenhouse(heated, 'I moved to 46.25, -73.12', CONTEXT)!.file!;
    expect(moved.place).not.toHaveProperty('name');
    expect(readBack(moved, CONTEXT)).toMatch(/^1 Place: 46\.25/mu);
  });
});

describe('buttons', () => {
  const buttonOf = ({ reply, after: later }: DescribeStep, label: string): string => [reply, later].flatMap((one) => one?.buttons?.flat() ?? []).find((one) => one.label === label)!.id;

  it('hold at most 64 bytes', async () => {
    const { sent } = await after('alder bench', '1', '20 by 48', '9', 'gothic', 'skip', 'two', 'fleece', 'skip', 'drums', 'skip', 'skip', 'clay', 'tubes', 'skip', 'no', 'no', 'gas heater', 'propane', 'no flue', '20000 btu', 'I have read it', 'minutina', 'hardy', 'none', 'skip', 'yes');
    const ids = sent.flatMap(({ buttons = [] }) => buttons.flat()).map(({ id }) => id);
    expect(ids.length).toBeGreaterThan(30);
    expect(ids.filter((id) => Buffer.byteLength(id) > 64)).toEqual([]);
  });

  it('of an old question count where they say all by themselves, and skip nothing else', async () => {
    const { step: asked } = await after('Alder Bench, Vermont', '20 by 48 hoop house, 9 feet tall');
    const twoLayers = buttonOf(asked, 'Two layers');
    const covers = step(asked, { text: 'one layer' });
    const skipCovers = buttonOf(covers, 'Skip');
    const water = step(covers, { text: 'no' });
    expect(step(water, { button: skipCovers }).state.told.water).toBeUndefined();
    expect(step(water, { button: twoLayers }).file?.layers).toHaveLength(2);
  });
});

describe('messages of another kind, once the first advisory is out', () => {
  it.each(['28F inside', 'low was -2C under the cover', 'will the kale survive tonight?', 'how cold tonight', 'any frost this week', 'kale is dead', 'should I cover the beds?', 'what if I add 4 drums'])('"%s" is left to others and changes nothing', async (says) => {
    const { step: before } = await after(...FIRST_THREE);
    const next = step(before, { text: says });
    expect(next.understood).toBe(false);
    expect(next.file).toEqual(before.file);
    expect(next.state.asking).toEqual(before.state.asking);
  });
});

describe('what is said and lacks something', () => {
  it('is kept until it is said, also after all was asked', async () => {
    const { step: last } = await after(...FIRST_THREE, 'four drums', 'skip', 'done');
    expect(last.isFinished).toBe(true);
    expect(last.file?.drums).toBeUndefined();
    expect(last.reply.text).toContain('4 vessels of water noted, but left out until you tell me more');
    expect(last.beside.pending).toHaveLength(1);
    const told = step(last, { text: 'the drums hold 55 gallons' });
    expect(told.file?.drums).toEqual([{ litres: '55 gal', count: 4 }]);
  });

  it('begins anew only when that is confirmed', async () => {
    const { step: before } = await after('Alder Bench, Vermont');
    const asked = step(before, { text: 'start over' });
    expect(asked.reply.text).toContain('start anew?');
    expect(step(asked, { text: 'no' }).state.file.place).toBeDefined();
    expect(step(asked, { text: 'yes' }).state.file.place).toBeUndefined();
  });

  it('has thermometers with their height and light', async () => {
    const { step: last } = await after(...FIRST_THREE, 'one thermometer in the middle, 5 feet high, in the shade, and another outside in the sun');
    expect(last.file?.thermometers).toEqual([
      { name: 'middle', place: 'inside', height: 1.524, hangs: 'shade' },
      { name: 'outside', place: 'outside', hangs: 'sun' },
    ]);
  });

  it('keeps what a thermometer is called, the bed where it hangs, and no height that no house has', async () => {
    const { step: last } = await after(...FIRST_THREE, 'the shed thermometer hangs outside in the shade', 'the bench thermometer hangs 90 ft up');
    expect(last.file?.thermometers).toEqual([
      { name: 'shed', place: 'outside', hangs: 'shade' },
      { name: 'bench', place: 'inside' },
    ]);
    expect(checkGreenhouse(last.file)).toMatchObject({ ok: true });
  });
});

describe('covers of a first description', () => {
  const coversAfter = async (...says: readonly string[]): Promise<readonly (number | null)[]> => {
    const { step: last } = await after(...FIRST_THREE, ...says);
    return (last.state.file.beds ?? []).map(({ cover }) => (cover?.kind === 'fabric' && typeof cover.weight === 'number' ? cover.weight : null));
  };

  it('that were said of all beds lie on every bed that is named after', async () => {
    expect(await coversAfter('medium row cover on all beds', 'no', 'kale in the north bed, lettuce in the south bed')).toEqual([30, 30]);
  });

  it('that were said of one bed lie on no other', async () => {
    expect(await coversAfter('heavy row cover on the north bed', 'no', 'kale in the north bed, lettuce in the south bed')).toEqual([50, null]);
  });

  it('are told with their weight while something else is asked', async () => {
    expect(await coversAfter('medium row cover on all beds', 'heavy fleece on the north bed')).toEqual([50]);
  });
});

describe('a question in the middle of it', () => {
  it.each(['should I cover?', 'will the kale survive', 'how cold will it get tonight', 'what if I add ten drums'])('"%s" before there is a house is put off, and nothing of it is noted', async (text) => {
    const asked = await after('Alder Bench, Vermont');
    const { step: then } = await after('Alder Bench, Vermont', text);
    expect(then.reply.text).toContain('I can answer that once I know the house. I still need: size, film.');
    expect(then.reply.text).toContain('How big is it');
    expect(then.state.file).toEqual(asked.step.state.file);
    expect(then.state.pending).toEqual([]);
  });

  it.each(['should I cover?', 'will the kale survive tonight?', 'do I need the heater tonight'])('"%s" after that is no fact of the house', async (text) => {
    const asked = await after(...FIRST_THREE);
    const { step: then } = await after(...FIRST_THREE, text);
    expect(then.understood).toBe(false);
    expect(then.state.file).toEqual(asked.step.state.file);
  });
});
