import { describe, expect, it } from 'vitest';
import { checkGreenhouse } from '../../engine/index.js';
import { writeState } from '../../bot/features/describe/describe.js';
import { outsideGsm } from '../bot/text/gsm.js';
import { inventedTowns } from './invented-towns.js';
import { Talk } from './talk-through.js';
import { transcripts, type Transcript } from './transcript.js';

/** A state that is stored with every message stays small. */
const MOST_STATE_CHARACTERS = 4000;

async function play({ lines }: Transcript): Promise<Talk> {
  const talk = new Talk(inventedTowns(lines.some(({ kind }) => kind === 'search-fails')));
  for (const line of lines) {
    const where = `line ${line.at}`;
    switch (line.kind) {
      case 'says':
        await talk.says({ text: line.text });
        break;
      case 'shares':
        await talk.says({ location: { latitude: line.latitude, longitude: line.longitude } });
        break;
      case 'presses':
        await talk.presses(line.label);
        break;
      case 'hears':
        expect(talk.heard, where).toContain(line.words);
        break;
      case 'advisory':
        expect(talk.firstAfter, where).not.toBeNull();
        expect(talk.firstAfter, where).toBeLessThanOrEqual(line.within);
        break;
      case 'finished':
        expect(talk.step.isFinished, `${where}: ${talk.heard}`).toBe(true);
        break;
      case 'holds': {
        const field = (talk.step.file as Readonly<Record<string, unknown>> | undefined)?.[line.field];
        if (line.value === null) expect(field, where).toBeUndefined();
        else expect(field, where).toEqual(line.value);
        break;
      }
      case 'search-fails':
        break;
    }
    if (talk.step.file) expect(checkGreenhouse(talk.step.file), where).toMatchObject({ ok: true });
    expect(writeState(talk.step.state).length, where).toBeLessThan(MOST_STATE_CHARACTERS);
  }
  return talk;
}

const ALL = transcripts();

describe('set-up by talking', () => {
  it.each(ALL.map((transcript) => [transcript.name, transcript] as const))('%s', async (_name, transcript) => {
    const { sent } = await play(transcript);
    for (const { text } of sent) {
      expect(outsideGsm(text), text).toEqual([]);
      expect(text, text).not.toMatch(/undefined|NaN|\[object|null/u);
    }
  });

  it('has growers of many kinds', () => {
    expect(ALL.length).toBeGreaterThanOrEqual(12);
  });

  it('begins with who speaks, that it is no promise, and the first question', () => {
    const { heard } = new Talk(inventedTowns(false));
    expect(heard).toMatch(/^I am Duskward[^.]*\. [^.]*no promise[^.]*\.\nWhere is the greenhouse\?/u);
  });
});
