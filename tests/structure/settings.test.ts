import { describe, expect, it } from 'vitest';
import { SETTINGS, type Setting } from '../../config/settings.js';
import { allTextFiles, modulesOf, readProjectFile } from './project-tree.js';

const ALL: readonly (readonly [string, Setting])[] = Object.entries(SETTINGS);
const NAME = /\bDUSKWARD_[A-Z0-9_]+\b/gu;

describe('environment settings', () => {
  it('exist', () => {
    expect(ALL.length).toBeGreaterThan(0);
  });

  it.each(ALL)('%s has a default or says none, and a sentence', (name, setting) => {
    expect(name).toMatch(/^DUSKWARD_[A-Z0-9_]+$/u);
    expect(setting.default === null || setting.default.length > 0).toBe(true);
    expect(setting.doc).toMatch(/^[A-Z].{20,}\.$/su);
  });

  it('stand in the README, each of them', () => {
    const readme = readProjectFile('README.md');
    expect(ALL.map(([name]) => name).filter((name) => !readme.includes(`\`${name}\``))).toEqual([]);
  });

  it('are mentioned nowhere without being known', () => {
    const mentioned = allTextFiles()
      .filter((path) => !path.startsWith('tests/'))
      .flatMap((path) => [...readProjectFile(path).matchAll(NAME)].map(([name]) => ({ path, name })));
    expect([...new Set(mentioned.filter(({ name }) => !(name in SETTINGS)).map(({ path, name }) => `${path} ${name}`))]).toEqual([]);
  });

  it('are read through readSettings alone', () => {
    const offenders = modulesOf('bot').filter((path) => readProjectFile(path).replaceAll('readSettings(process.env)', '').includes('process.env'));
    expect(offenders).toEqual([]);
  });
});
