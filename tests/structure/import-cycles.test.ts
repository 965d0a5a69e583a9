import { expect, it } from 'vitest';
import { importsOf } from './module-imports.js';
import { allModules } from './project-tree.js';

/** Rings of types alone, erased when compiled, each with its reason. */
const RINGS_OF_TYPES: Readonly<Record<string, string>> = {
  'engine/crops/crop-row.ts > engine/data/crops/sources.ts': 'a number of the crop table names its source by key, and the sources make such numbers',
};

/** Rings in the import graph, each from its alphabetically first module. */
function rings(withTypes: boolean): readonly string[] {
  const modules = allModules();
  const known = new Set(modules);
  const targets = new Map(modules.map((path) => [path, importsOf(path).filter(({ target, typeOnly }) => known.has(target) && (withTypes || !typeOnly)).map(({ target }) => target)]));
  const found = new Set<string>();
  const finished = new Set<string>();
  const path: string[] = [];
  const visit = (module: string): void => {
    const at = path.indexOf(module);
    if (at >= 0) return void found.add(fromFirst(path.slice(at)).join(' > '));
    if (finished.has(module)) return;
    path.push(module);
    targets.get(module)!.forEach(visit);
    path.pop();
    finished.add(module);
  };
  modules.forEach(visit);
  return [...found].sort();
}

function fromFirst(ring: readonly string[]): readonly string[] {
  const first = ring.indexOf([...ring].sort()[0]!);
  return [...ring.slice(first), ...ring.slice(0, first)];
}

it('no module imports itself, however far round', () => {
  expect(rings(false)).toEqual([]);
});

it('types go round only where that is said', () => {
  expect(rings(true)).toEqual(Object.keys(RINGS_OF_TYPES).sort());
});
