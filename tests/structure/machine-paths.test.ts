import { expect, it } from 'vitest';
import { allTextFiles, lineAt, readProjectFile } from './project-tree.js';

/** Folders of somebody's machine. Put together here, so that this file does not offend itself. */
const FOLDERS = ['work', 'tmp', 'home', 'root', 'Users'];
const MACHINE_PATH = new RegExp(`(?<![\\w.:~@*-])/(?:${FOLDERS.join('|')})/`, 'gu');

it('no file names a folder of somebody\'s machine', () => {
  const offenders = allTextFiles().flatMap((path) => {
    const text = readProjectFile(path);
    return [...text.matchAll(MACHINE_PATH)].map((match) => `${path}:${lineAt(text, match.index)} ${text.slice(match.index, match.index + 40).split('\n')[0]!}`);
  });
  expect(offenders).toEqual([]);
});
