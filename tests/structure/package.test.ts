import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { importsOf } from './module-imports.js';
import { allModules, readProjectFile, urlOf } from './project-tree.js';

const versions = z.record(z.string(), z.string());
const PACKAGE = z.object({ scripts: versions, dependencies: versions, devDependencies: versions }).parse(JSON.parse(readProjectFile('package.json')));

describe('package.json', () => {
  it.each(['start', 'test', 'check', 'validate', 'bench'])('has the script %s', (name) => {
    expect(PACKAGE.scripts[name]).toBeTruthy();
  });

  it('has scripts that name existing files', () => {
    const named = Object.entries(PACKAGE.scripts).flatMap(([name, script]) => [...script.matchAll(/\b(?:bot|config|engine|tests)\/[\w./-]+/gu)].map(([path]) => ({ name, path })));
    expect(named.filter(({ path }) => !existsSync(urlOf(path))).map(({ name, path }) => `${name}: ${path}`)).toEqual([]);
  });

  it('pins every version exactly', () => {
    const all = Object.entries({ ...PACKAGE.dependencies, ...PACKAGE.devDependencies });
    expect(all.filter(([, version]) => !/^\d+\.\d+\.\d+(?:-[\w.]+)?$/u.test(version)).map(([name, version]) => `${name} ${version}`)).toEqual([]);
  });

  it('lists every package that the code imports', () => {
    const needed = (path: string): Readonly<Record<string, string>> => (/^(?:engine|bot)\/|^config\/settings/u.test(path) ? PACKAGE.dependencies : { ...PACKAGE.dependencies, ...PACKAGE.devDependencies });
    const offenders = allModules().flatMap((path) => importsOf(path).filter(({ isOurs, target }) => !isOurs && !target.startsWith('node:') && !(target in needed(path))));
    expect(offenders.map(({ where, written }) => `${where} imports ${written}`)).toEqual([]);
  });

  it('lists no package for use that the product does not import', () => {
    const imported = new Set(allModules().filter((path) => /^(?:engine|bot|config)\//u.test(path)).flatMap(importsOf).map(({ target }) => target));
    expect(Object.keys(PACKAGE.dependencies).filter((name) => !imported.has(name))).toEqual([]);
  });
});
