import ts from 'typescript';
import { readProjectFile } from './project-tree.js';

const parsed = new Map<string, ts.SourceFile>();

/** Syntax tree of a module, parsed once. */
export function parsedModule(path: string): ts.SourceFile {
  const known = parsed.get(path);
  if (known) return known;
  const tree = ts.createSourceFile(path, readProjectFile(path), ts.ScriptTarget.Latest, true);
  parsed.set(path, tree);
  return tree;
}

export function walk(node: ts.Node, visit: (node: ts.Node) => void): void {
  visit(node);
  ts.forEachChild(node, (child) => walk(child, visit));
}

/** `path:line`, as editors open it. */
export const placeOf = (path: string, node: ts.Node): string => `${path}:${parsedModule(path).getLineAndCharacterOfPosition(node.getStart()).line + 1}`;

export const isExported = (statement: ts.Statement): boolean =>
  ts.canHaveModifiers(statement) && (ts.getModifiers(statement)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword) ?? false);
