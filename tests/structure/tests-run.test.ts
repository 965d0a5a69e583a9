import { expect, it } from 'vitest';
import { importsOf } from './module-imports.js';
import { modulesOf, readProjectFile } from './project-tree.js';

const TESTS = modulesOf('tests').filter((path) => path.endsWith('.test.ts'));

/** A module that declares tests: by itself, or through one that it imports. */
function declaresTests(path: string, seen = new Set<string>()): boolean {
  if (seen.has(path)) return false;
  seen.add(path);
  const declares = importsOf(path).some(({ target }) => target === 'vitest') && /\b(?:it|test)(?:\.\w+(?:\([^)]*\))?)*\(/u.test(readProjectFile(path));
  return declares || importsOf(path).some(({ target, typeOnly }) => target.startsWith('tests/') && !typeOnly && declaresTests(target, seen));
}

it('there are tests', () => {
  expect(TESTS.length).toBeGreaterThan(0);
});

it('every test file declares some', () => {
  expect(TESTS.filter((path) => !declaresTests(path))).toEqual([]);
});

it('none is left alone or left out', () => {
  const marked = modulesOf('tests').filter((path) => path !== 'tests/structure/tests-run.test.ts' && /\b(?:it|test|describe)\.(?:only|skip|todo)\(/u.test(readProjectFile(path)));
  expect(marked).toEqual([]);
});

it('the runner fails when it finds none', () => {
  expect(readProjectFile('config/vitest.config.ts')).toContain('passWithNoTests: false');
});
