import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readProjectFile, urlOf } from './project-tree.js';

const LINK = /\]\((?!https?:|mailto:|#)(?<path>[^)#\s]+)/gu;
const NAMED_PATH = /`(?<path>(?:bot|config|engine|tests)\/[\w./-]+)`/gu;

describe('README.md', () => {
  it('names the two commands: one starts it, one tests it', () => {
    const readme = readProjectFile('README.md');
    expect(['npm ci && npm start', 'npm ci && npm test'].filter((command) => !readme.includes(command))).toEqual([]);
  });
});

describe.each(['README.md', 'DEVELOPERS.md'])('%s', (page) => {
  it('leads only to files that exist', () => {
    const text = readProjectFile(page);
    const paths = [...text.matchAll(LINK), ...text.matchAll(NAMED_PATH)].map((match) => match.groups!['path']!);
    expect(paths.filter((path) => !existsSync(urlOf(path)))).toEqual([]);
  });
});
