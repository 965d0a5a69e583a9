import { describe, expect, it } from 'vitest';
import { allModules, filesOf, readProjectFile, ROOMS } from './project-tree.js';

const MOST_LINES = 300;
const DRAWERS = /^(?:utils?|helpers?|commons?|misc|managers?)$/iu;

/** Lines of a text, the empty one after its last line break left out. */
const linesOf = (text: string): number => text.replace(/\n$/u, '').split('\n').length;

describe('files', () => {
  it('are named for a concept, never a drawer', () => {
    const offenders = ROOMS.flatMap(filesOf).filter((path) => path.split(/[/.-]/u).some((word) => DRAWERS.test(word)));
    expect(offenders).toEqual([]);
  });

  it('are in small letters with hyphens; folders of a published source carry its key', () => {
    const offenders = ROOMS.flatMap(filesOf).filter((path) => path.endsWith('.ts') && !/^[a-z0-9-]+(?:\.[a-z]+)*$/u.test(path.split('/').at(-1)!));
    expect(offenders).toEqual([]);
  });

  it(`have at most ${MOST_LINES} lines, tables of data excepted`, () => {
    const offenders = allModules()
      .filter((path) => !path.startsWith('engine/data/'))
      .map((path) => ({ path, lines: linesOf(readProjectFile(path)) }))
      .filter(({ lines }) => lines > MOST_LINES);
    expect(offenders.map(({ path, lines }) => `${path}: ${lines} lines`)).toEqual([]);
  });
});
