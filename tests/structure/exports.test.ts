import ts from 'typescript';
import { expect, it } from 'vitest';
import { parsedModule, placeOf } from './parsed-module.js';
import { allModules } from './project-tree.js';

/** Tools read their configuration from a default export. */
const TOOL_CONFIGURATION = /^config\/[a-z.]+\.config\.ts$/u;

function isDefaultExport(statement: ts.Statement): boolean {
  if (ts.isExportAssignment(statement)) return true;
  if (ts.isExportDeclaration(statement) && statement.exportClause && ts.isNamedExports(statement.exportClause)) return statement.exportClause.elements.some(({ name }) => name.text === 'default');
  return ts.canHaveModifiers(statement) && (ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.DefaultKeyword) ?? false);
}

it('modules export names, never a default', () => {
  const offenders = allModules()
    .filter((path) => !TOOL_CONFIGURATION.test(path))
    .flatMap((path) => parsedModule(path).statements.filter(isDefaultExport).map((statement) => placeOf(path, statement)));
  expect(offenders).toEqual([]);
});
