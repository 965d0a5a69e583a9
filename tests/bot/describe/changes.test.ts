import { describe, expect, it } from 'vitest';
import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import { asksForReview, changeGreenhouse, readBack, reviewGreenhouse } from '../../../bot/features/describe/change.js';
import { describeStep } from '../../../bot/features/describe/describe.js';
import { CONTEXT } from '../../conversations/talk-through.js';

const FILE: GreenhouseFile = {
  name: 'Wren Hollow',
  place: { latitude: 45.1, longitude: -72.2 },
  size: { width: '16 ft', length: '32 ft', height: '8 ft' },
  layers: [{ film: 'standard' }],
  shape: 'half-round',
  beds: [
    { name: 'the north bed', area: 10, crops: ['kale', 'spinach'], cover: { kind: 'fabric', weight: 30 } },
    { name: 'the south bed', area: 8, crops: ['leek'] },
  ],
  drums: [{ litres: '55 gal', count: 4 }],
  heater: { kind: 'electric', power: 1500, price: 0.12 },
  grower: { units: 'C' },
};

describe('changes in the words of the first description', () => {
  it.each([
    ['the tunnel is 10 feet tall', { size: { width: '16 ft', length: '32 ft', height: '10 ft' } }],
    ["it's 40 long now", { size: { width: '16 ft', length: '40 ft', height: '8 ft' } }],
    ['two layers now', { layers: [{ film: 'standard' }, { film: 'standard' }] }],
    ['we put on a second layer', { layers: [{ film: 'standard' }, { film: 'standard' }] }],
    ['we have 6 drums now', { drums: [{ litres: '55 gal', count: 6 }] }],
    ['added two more drums', { drums: [{ litres: '55 gal', count: 6 }] }],
    ['the drums hold 30 gallons', { drums: [{ litres: '30 gal', count: 4 }] }],
    ['add a row of lettuce to the north bed', { beds: [{ crops: ['kale', 'spinach', 'lettuce'] }, { crops: ['leek'] }] }],
    ['no more spinach in the north bed', { beds: [{ crops: ['kale'] }, { crops: ['leek'] }] }],
    ['the south bed has a heavy row cover now', { beds: [{ cover: { weight: 30 } }, { cover: { kind: 'fabric', weight: 50 } }] }],
    ['we bought a 2 kW electric heater', { heater: { kind: 'electric', power: 2000 } }],
    ['the soil is clay', { soil: { kind: 'clay' } }],
    ['evening message at 5pm', { grower: { units: 'C', eveningAt: '17:00' } }],
    ['we built a compost heap against the north bed, 1 cubic yard, yesterday', { compost: { volume: '1 cu yd', started: '2026-11-24', against: 'the north bed' } }],
    ['the ridge runs north-south', { ridgeRuns: 'north-south' }],
    ['lettuce in the south bed', { beds: [{ crops: ['kale', 'spinach'] }, { crops: ['leek', 'lettuce'] }] }],
    ['added 6 drums today', { drums: [{ litres: '55 gal', count: 10 }] }],
    ['put 2 drums in', { drums: [{ litres: '55 gal', count: 6 }] }],
    ['put a 40 litre tank of water in', { drums: [{ litres: '55 gal', count: 4 }, { litres: 40, count: 1 }] }],
    ['send it at 17:00', { grower: { units: 'C', eveningAt: '17:00' } }],
    ['1500 W electric heater, no thermostat', { heater: { kind: 'electric', power: 1500, thermostat: false } }],
  ] as const)('%s', (says, is) => {
    const step = changeGreenhouse(FILE, says, CONTEXT);
    expect(step?.isFinished).toBe(true);
    expect(step?.file).toMatchObject(is);
    expect(step?.reply.text).toMatch(/^Changed\.\n/u);
    expect(checkGreenhouse(step?.file)).toMatchObject({ ok: true });
  });

  it.each([
    ['we took the drums out', 'drums'],
    ['sold the heater', 'heater'],
    ['the heater is gone', 'heater'],
    ['no heater any more', 'heater'],
  ] as const)('%s', (says, field) => {
    const step = changeGreenhouse(FILE, says, CONTEXT);
    expect(step?.file).toBeDefined();
    expect(step?.file).not.toHaveProperty(field);
  });

  it('take one of two films off, and ask for no word of it', () => {
    const step = changeGreenhouse({ ...FILE, layers: [{ film: 'standard' }, { film: 'standard' }] }, 'took one film off', CONTEXT)!;
    expect(step.file?.layers).toEqual([{ film: 'standard' }]);
    expect(step.reply.text).not.toContain('did not use');
  });

  it('give a new bed no cover that was not said, and say which beds have one', () => {
    const step = changeGreenhouse({ ...FILE, beds: FILE.beds!.slice(0, 1) }, 'lettuce in the west bed', CONTEXT)!;
    expect(step.file?.beds).toMatchObject([{ name: 'the north bed', cover: { weight: 30 } }, { name: 'the west bed', crops: ['lettuce'] }]);
    expect(step.file?.beds?.[1]).not.toHaveProperty('cover');
    expect(step.reply.text).toMatch(/Crops: .*the west bed: lettuce.*\nCovers: fabric of 30 g\/m2 for the north bed\./su);
  });

  it('describe a heater without a flue, and no deed', () => {
    const step = changeGreenhouse(FILE, 'propane heater, no flue, 10000 BTU', CONTEXT)!;
    expect(step.file?.heater).toMatchObject({ kind: 'unvented-propane', power: '10000 btu' });
  });

  it('leave the clock and the height of the old place behind', () => {
    const step = changeGreenhouse({ ...FILE, place: { ...FILE.place, elevation: 900, timeZone: 'America/Toronto', surroundings: 'wooded' } }, 'the greenhouse is at 57.2, -3.8', CONTEXT)!;
    expect(step.file?.place).toEqual({ latitude: 57.2, longitude: -3.8, surroundings: 'wooded' });
  });

  it('touch nothing that was not spoken of', () => {
    const { size: _size, ...rest } = changeGreenhouse(FILE, 'the tunnel is 10 feet tall', CONTEXT)!.file!;
    const { size: _before, ...before } = FILE;
    expect(rest).toEqual(before);
  });

  it('say so when there is nothing to change', () => {
    expect(changeGreenhouse(FILE, 'one layer', CONTEXT)?.reply.text).toMatch(/^I have that already\./u);
    expect(changeGreenhouse(FILE, 'we sold the stones', CONTEXT)?.reply.text).toContain('I have no stones on my list');
  });

  it('ask for what is missing, and finish with the answer', () => {
    const asked = changeGreenhouse(FILE, 'we bought a propane heater, 30000 btu', CONTEXT)!;
    expect(asked.isFinished).toBe(false);
    expect(asked.file?.heater?.kind).toBe('electric');
    const flued = describeStep(asked.state, { text: 'yes' }, CONTEXT);
    expect(flued.reply.text).toContain('I have read it');
    expect(flued.file?.heater).toMatchObject({ kind: 'vented-propane', safetyRead: false });
    const read = describeStep(flued.state, { text: 'I have read it' }, CONTEXT);
    expect(read.file?.heater).toMatchObject({ kind: 'vented-propane', power: '30000 btu', safetyRead: true });
    expect(read.isFinished).toBe(true);
  });

  it('look a new town up', () => {
    const step = changeGreenhouse(FILE, 'we moved to Wexby', CONTEXT)!;
    expect(step.look).toEqual({ town: 'Wexby' });
    const moved = describeStep(step.state, { places: { town: 'Wexby', found: [{ name: 'Wexby', region: 'Scotland', country: 'United Kingdom', countryCode: 'GB', latitude: 57.2, longitude: -3.8 }] } }, CONTEXT);
    expect(moved.file?.place).toMatchObject({ latitude: 57.2, longitude: -3.8 });
  });
});

describe('what is no change', () => {
  it.each([
    '28F inside', 'low was -2C under the cover', 'will the kale survive tonight', 'should I cover the beds?', 'covered the beds', 'took the covers off', 'opened the vents', 'heater at 2C',
    'turned the heater on', 'kale is dead', 'the lettuce got marked', 'picked the kale', 'how cold tonight', 'any frost this week', 'what if I add 4 drums', 'what if I had a second layer?',
    'would two layers help', 'power is out', "there's snow on the roof", 'the door was open', 'thanks', 'no, -3C', 'scrap that', 'stop', 'why', 'how right were you', 'what should I build next',
    'spinach in the north bed needs water', 'slugs on the kale in the north bed', 'watered the kale in the north bed', 'kale in the north bed looks sad', 'kale in the north bed?',
    'drums at 40', 'thermometer in the shade says 28', 'it is wet outside', 'low was 250',
    'no heater tonight', 'moved one drum outside', 'took two drums out', 'removed 2 of the drums', 'moved the heater',
    'send it at 17:00 if it freezes', 'text me only if it goes below 10', 'that was celsius', 'not tonight', 'low was 29', 'the film tore', 'ran the tube fan all night', 'drums were at 40F', 'soil 41', '10 degrees under the cover', 'covers on, vents closed', 'kale ok?', 'lettuce fine', 'fan is dead',
    'the tunnel was 30 this morning', 'hi', 'is the house tight enough', 'did the second layer help', 'pull the row cover over the kale', 'tunnel', 'kale', 'it is close to freezing',
  ])('%s', (says) => {
    expect(changeGreenhouse(FILE, says, CONTEXT)).toBeNull();
  });
});

describe('reading back', () => {
  const text = readBack(FILE, CONTEXT);

  it('has a numbered line for each thing, in both units, and says what is taken for granted', () => {
    expect(text).toContain('2 Size: 16 ft wide, 32 ft long, 8 ft tall (4.9 x 9.8 x 2.4 m), half-round hoops');
    expect(text).toContain('4 Covers: fabric of 30 g/m2 for the north bed');
    expect(text).toContain('5 Water and stones: 4 vessels of 55 US gal (208 L)');
    expect(text).toContain('6 Soil: not told, taken as moist loam');
    expect(text).toContain('10 Crops: the north bed, 108 sq ft (10 m2): kale, spinach');
    expect(text).toContain('"change 2"');
  });

  it('lets a line be changed by its number', () => {
    const open = reviewGreenhouse(FILE, CONTEXT);
    expect(open.reply.text).toBe(text);
    const asked = describeStep(open.state, { text: 'change 6' }, CONTEXT);
    expect(asked.reply.text).toMatch(/^What is the soil/u);
    const changed = describeStep(asked.state, { text: 'clay, wet' }, CONTEXT);
    expect(changed.file?.soil).toEqual({ kind: 'clay', moisture: 'wet' });
    expect(changed.isFinished).toBe(true);
  });

  it.each(['summary', 'what do you have?', 'show me my greenhouse', 'change my greenhouse', 'read back'])('is asked for by "%s"', (says) => {
    expect(asksForReview(says)).toBe(true);
  });

  it.each(['check the vents', 'show me the forecast', 'change the film'])('is not asked for by "%s"', (says) => {
    expect(asksForReview(says)).toBe(false);
  });
});
