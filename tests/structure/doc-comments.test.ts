import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { isExported, parsedModule, placeOf } from './parsed-module.js';
import { modulesOf } from './project-tree.js';

const LABELS = ['Units:', 'Valid:', 'Outside:', 'Source:'] as const;

/** Exported functions that compute nothing physical: they build, look up, or hold. By file, with the reason. */
const STRUCTURAL: Readonly<Record<string, { readonly names: readonly string[]; readonly reason: string }>> = {
  'engine/cover/longwave-enclosure.ts': { names: ['planeIndex'], reason: 'numbering of planes' },
  'engine/errors.ts': { names: ['assertInRange'], reason: 'the range check itself' },
  'engine/greenhouse/greenhouse.ts': { names: ['greenhouseJsonSchema'], reason: 'a schema' },
  'engine/greenhouse/quantities.ts': { names: ['lengthM', 'areaM2', 'volumeL', 'tempC', 'powerW', 'fabricGPerM2', 'volumeM3', 'airflowM3PerH', 'energyWh'], reason: 'schemas of written quantities; units and range stand in their arguments' },
  'engine/network/implicit-step.ts': { names: ['emptySources'], reason: 'a fresh container' },
  'engine/network/network.ts': { names: ['createNetwork', 'steadyConductor'], reason: 'puts parts together' },
  'engine/network/sparse-system.ts': { names: ['sparseSystem', 'solveInPlace'], reason: 'linear algebra, whatever the numbers mean' },
  'engine/night/audit/device-flows.ts': { names: ['deviceFlows'], reason: 'books the flows of laws that stand elsewhere' },
  'engine/night/conditions.ts': { names: ['freshConditions'], reason: 'a fresh container' },
  'engine/night/house-run.ts': { names: ['houseRunner'], reason: 'puts parts together' },
  'engine/night/moisture.ts': { names: ['buildMoistureModel'], reason: 'puts parts together' },
  'engine/night/night-run.ts': { names: ['placeIndex'], reason: 'a look-up' },
  'engine/night/parts/air-part.ts': { names: ['addAir'], reason: 'puts parts together' },
  'engine/night/parts/cover-part.ts': { names: ['addCover'], reason: 'puts parts together' },
  'engine/night/parts/floor-part.ts': { names: ['addFloor'], reason: 'puts parts together' },
  'engine/night/parts/heap-part.ts': { names: ['addHeap'], reason: 'puts parts together' },
  'engine/night/parts/network-builder.ts': { names: ['networkBuilder'], reason: 'puts parts together' },
  'engine/night/parts/stores-part.ts': { names: ['addStores'], reason: 'puts parts together' },
  'engine/night/parts/tubes-part.ts': { names: ['addTubes'], reason: 'puts parts together' },
  'engine/night/parts/wall-part.ts': { names: ['addSolidWall'], reason: 'puts parts together' },
  'engine/night/places.ts': { names: ['placesOf'], reason: 'a list of names' },
  'engine/plan/candidates.ts': { names: ['heaterMayBeAdvised'], reason: 'a yes or no from the file' },
  'engine/plan/controls-of-choices.ts': { names: ['usualControls', 'standingControls'], reason: 'reads the file' },
  'engine/plan/outlook.ts': { names: ['placeOfNode'], reason: 'a look-up' },
};

interface ExportedFunction {
  readonly path: string;
  readonly name: string;
  readonly where: string;
  readonly missing: readonly string[];
}

function exportedFunctions(path: string): readonly ExportedFunction[] {
  const tree = parsedModule(path);
  return tree.statements.filter(isExported).flatMap((statement) => {
    const comment = (ts.getLeadingCommentRanges(tree.text, statement.pos) ?? []).map(({ pos, end }) => tree.text.slice(pos, end)).at(-1) ?? '';
    const missing = comment.startsWith('/**') ? LABELS.filter((label) => !comment.includes(label)) : [...LABELS];
    return functionNames(statement).map((name) => ({ path, name, where: placeOf(path, statement), missing }));
  });
}

function functionNames(statement: ts.Statement): readonly string[] {
  if (ts.isFunctionDeclaration(statement)) return statement.name ? [statement.name.text] : [];
  if (!ts.isVariableStatement(statement)) return [];
  return statement.declarationList.declarations.filter(({ initializer }) => initializer && (ts.isArrowFunction(initializer) || ts.isFunctionExpression(initializer))).map(({ name }) => name.getText());
}

const FUNCTIONS = modulesOf('engine')
  .filter((path) => !path.startsWith('engine/data/') && path !== 'engine/index.ts')
  .flatMap(exportedFunctions);
const isStructural = ({ path, name }: ExportedFunction): boolean => STRUCTURAL[path]?.names.includes(name) ?? false;

describe('doc comments of the engine', () => {
  it('say units, valid range, what happens outside it, and source, for every exported physical function', () => {
    const offenders = FUNCTIONS.filter((found) => found.missing.length > 0 && !isStructural(found));
    expect(offenders.map(({ where, name, missing }) => `${where} ${name} lacks ${missing.join(' ')}`)).toEqual([]);
  });

  it('are left out only for functions that exist and still lack them', () => {
    const listed = Object.entries(STRUCTURAL).flatMap(([path, { names }]) => names.map((name) => `${path} ${name}`));
    const lacking = new Set(FUNCTIONS.filter(({ missing }) => missing.length > 0).map(({ path, name }) => `${path} ${name}`));
    expect(listed.filter((entry) => !lacking.has(entry))).toEqual([]);
  });

  it('have a text after every label', () => {
    const isEmpty = (line: string): boolean => /^\s*\*\s*(?:Units|Valid|Outside|Source):\s*$/u.test(line);
    const lines = modulesOf('engine').flatMap((path) => parsedModule(path).text.split('\n').map((line, i) => ({ line, where: `${path}:${i + 1}` })));
    expect(lines.filter(({ line }) => isEmpty(line)).map(({ line, where }) => `${where} ${line.trim()}`)).toEqual([]);
  });
});
