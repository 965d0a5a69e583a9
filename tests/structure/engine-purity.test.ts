import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { parsedModule, placeOf, walk } from './parsed-module.js';
import { modulesOf } from './project-tree.js';

/** Nodes of all engine modules that are not allowed, readable. */
function offenders(isOffence: (node: ts.Node, path: string) => boolean): readonly string[] {
  return modulesOf('engine').flatMap((path) => {
    const found: string[] = [];
    walk(parsedModule(path), (node) => {
      if (isOffence(node, path)) found.push(`${placeOf(path, node)} ${node.getText()}`);
    });
    return found;
  });
}

const OUTSIDE_WORLD = new Set(['Date', 'Temporal', 'performance', 'process', 'console', 'crypto', 'fetch', 'setTimeout', 'setInterval']);

/** A name used as itself, not as the field of something. */
const isFreeName = (node: ts.Node): node is ts.Identifier =>
  ts.isIdentifier(node) && !(ts.isPropertyAccessExpression(node.parent) && node.parent.name === node) && !(ts.isPropertyAssignment(node.parent) && node.parent.name === node);

describe('the engine', () => {
  it('knows no clock, no process, no network', () => {
    expect(offenders((node) => isFreeName(node) && OUTSIDE_WORLD.has(node.text))).toEqual([]);
  });

  it('draws no random numbers', () => {
    expect(offenders((node) => (ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node)) && /^Math\b.*\brandom\b/su.test(node.getText()))).toEqual([]);
  });

  it('has the zero of the Celsius scale in units.ts alone', () => {
    expect(offenders((node, path) => ts.isNumericLiteral(node) && node.getText() === '273.15' && path !== 'engine/units.ts')).toEqual([]);
  });

  it('says no `any`', () => {
    expect(offenders((node) => node.kind === ts.SyntaxKind.AnyKeyword)).toEqual([]);
  });
});
