import { describe, expect, it } from 'vitest';
import { cropNames } from '../../../bot/language/crop-names.js';
import { editDistance } from '../../../bot/language/edit-distance.js';
import { correctedWord } from '../../../bot/language/spelling.js';
import { cropFamilies, cropRows } from '../../../engine/index.js';

const names = cropNames([...cropFamilies.map(({ name }) => ({ id: name, names: [name] })), ...cropRows.map((row) => ({ id: row.id, names: [row.commonName, ...row.aliases] }))]);

describe('spelling', () => {
  it.each([['kale', 'kael', 1], ['onion', 'onoin', 1], ['heater', 'heather', 1], ['a', '', 1], ['ab', 'ba', 1], ['spinach', 'spniahc', 2]] as const)('%s and %s lie %i apart', (from, to, apart) => {
    expect(editDistance(from, to)).toBe(apart);
    expect(editDistance(to, from)).toBe(apart);
  });

  it.each([['spinnach', 'spinach'], ['lettcue', 'lettuce'], ['heatr', 'heater'], ['curtian', 'curtain'], ['tonigth', 'tonight'], ['foreacst', 'forecast'], ['spinahc', 'spinach'], ['garlik', 'garlic'], ['minimun', 'minimum']])('%s is %s', (word, meant) => {
    expect(correctedWord(word, names)).toBe(meant);
  });

  // Each lies within reach of a crop or a device, and none of them means it.
  it.each(`bed shade low paper certain heather chilly later feather turned carpet apply peace cheery funnel basic chart leaf beer mind grade pears cover scratch wrong lose graph accuracy latest limp
    inflation holding outline life helper swap spell base connection prepare remain quit tore silver spade bread heard layer`.split(/\s+/))('%s stays as it is', (word) => {
    expect(correctedWord(word, names)).toBe(word);
  });

  it('leaves short words and other first letters alone', () => {
    expect(correctedWord('kal', names)).toBe('kal');
    expect(correctedWord('tettuce', names)).toBe('tettuce');
  });
});

describe('crop names', () => {
  it('have one meaning each in the real table', () => {
    expect([...names.idsByPhrase].filter(([, ids]) => ids.length !== 1)).toEqual([]);
  });

  it('mean the family by its plain name, and ask where two crops claim a name', () => {
    expect(names.idsByPhrase.get('kale')).toEqual(['kale']);
    const two = cropNames([{ id: 'a', names: ['rocket'] }, { id: 'b', names: ['rockets'] }]);
    expect(two.idsByPhrase.get('rocket')).toEqual(['a', 'b']);
  });
});
