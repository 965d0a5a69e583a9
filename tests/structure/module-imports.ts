import { posix } from 'node:path';
import ts from 'typescript';
import { parsedModule, placeOf, walk } from './parsed-module.js';

/** One import, export-from, dynamic import or `import.meta.resolve` of a module. */
export interface ModuleImport {
  readonly from: string;
  /** `path:line` of the statement. */
  readonly where: string;
  readonly written: string;
  /** Path of a module of ours, or the name of a package; node: names as written. */
  readonly target: string;
  readonly isOurs: boolean;
  /** Erased when compiled. */
  readonly typeOnly: boolean;
}

/** All that a module imports, in order. */
export function importsOf(path: string): readonly ModuleImport[] {
  const found: ModuleImport[] = [];
  const add = (node: ts.Node, written: string, typeOnly: boolean): void => {
    const isOurs = written.startsWith('.');
    const target = isOurs ? posix.join(posix.dirname(path), written).replace(/\.js$/u, '.ts') : packageOf(written);
    found.push({ from: path, where: placeOf(path, node), written, target, isOurs, typeOnly });
  };
  walk(parsedModule(path), (node) => {
    if (ts.isImportDeclaration(node) && ts.isStringLiteral(node.moduleSpecifier)) add(node, node.moduleSpecifier.text, isTypeImport(node.importClause));
    else if (ts.isExportDeclaration(node) && node.moduleSpecifier && ts.isStringLiteral(node.moduleSpecifier)) add(node, node.moduleSpecifier.text, node.isTypeOnly);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument) && ts.isStringLiteral(node.argument.literal)) add(node, node.argument.literal.text, true);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword) {
      const [argument] = node.arguments;
      if (argument && ts.isStringLiteralLike(argument)) add(node, argument.text, false);
    } else if (ts.isCallExpression(node) && node.expression.getText() === 'import.meta.resolve') {
      const [argument] = node.arguments;
      if (argument && ts.isStringLiteralLike(argument)) add(node, argument.text, false);
    }
  });
  return found;
}

function isTypeImport(clause: ts.ImportClause | undefined): boolean {
  if (!clause) return false;
  if (clause.phaseModifier === ts.SyntaxKind.TypeKeyword) return true;
  const names = clause.namedBindings;
  return !clause.name && names !== undefined && ts.isNamedImports(names) && names.elements.length > 0 && names.elements.every(({ isTypeOnly }) => isTypeOnly);
}

/** `zod/v4` belongs to `zod`, `@types/node/fs` to `@types/node`. */
function packageOf(written: string): string {
  if (written.startsWith('node:')) return written;
  return written.split('/').slice(0, written.startsWith('@') ? 2 : 1).join('/');
}
