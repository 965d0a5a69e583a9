import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readProjectFile, urlOf } from './project-tree.js';

const LINK = /\]\((?!https?:|mailto:|#)(?<path>[^)#\s]+)/gu;
const NAMED_PATH = /`(?<path>(?:bot|config|engine|tests)\/[\w./-]+)`/gu;

describe('README.md', () => {
  it.each(['npm ci && npm start', 'npm ci && npm test'])('names the command: %s', (command) => {
    expect(readProjectFile('README.md')).toContain(command);
  });
});

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (page) => {
  it('leads only to files that exist', () => {
    const text = readProjectFile(page);
    const paths = [...text.matchAll(LINK), ...text.matchAll(NAMED_PATH)].map((match) => match.groups!['path']!);
    expect(paths.filter((path) => !existsSync(urlOf(path)))).toEqual([]);
  });
});
