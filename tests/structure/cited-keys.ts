import ts from 'typescript';
import { parsedModule, placeOf, walk } from './parsed-module.js';
import { lineAt } from './project-tree.js';

/** A key of the bibliography where it is cited. */
export interface Citation {
  readonly key: string;
  readonly where: string;
}

const WORD = /(?<![\w-])[A-Za-z][A-Za-z0-9]*(?:-[A-Za-z0-9]+)*/gu;
/** Prata1996, deVries1963, PlantPhysiol2004-Canola. */
const AUTHOR_YEAR = /^(?:de|van|von)?[A-Z][A-Za-z]+(?:19|20)\d{2}[a-z]?(?:-|$)/u;
/** ASHRAE-F17, WMO-No8, EN-13206, Wisconsin-GreenhouseEnergy. */
const ORGANISATION_TOPIC = /^[A-Z][A-Za-z]+-(?:[A-Z0-9][A-Za-z0-9]+)/u;
/** EnergyPlusEngRef, PMC10202904: looked for after `Source:` alone, for type names look the same. */
const RUN_TOGETHER = /^(?:[A-Z][a-z]+){3,}$|^PMC\d+$/u;
const AFTER_SOURCE_LABEL = /Source:[^\n]*/gu;

/** Laws and rules named after two people, not keys. */
const NAMES = new Set(['Stefan-Boltzmann', 'Gauss-Hermite', 'Gauss-Newton', 'Gauss-Legendre', 'Hyland-Wexler', 'Newton-Raphson', 'Crank-Nicolson', 'Levenberg-Marquardt', 'UTC-7']);

const keysIn = (text: string): readonly { readonly key: string; readonly at: number }[] =>
  [...text.matchAll(WORD)].filter(([word]) => !NAMES.has(word) && (AUTHOR_YEAR.test(word) || ORGANISATION_TOPIC.test(word))).map((match) => ({ key: match[0], at: match.index }));

/** Keys in the comments of a module, by their shape. */
export function citedInComments(path: string): readonly Citation[] {
  const { text } = parsedModule(path);
  return commentsOf(path).flatMap(({ pos, end }) => {
    const comment = text.slice(pos, end);
    const runTogether = [...comment.matchAll(AFTER_SOURCE_LABEL)].flatMap((label) =>
      [...label[0].matchAll(WORD)].filter(([word]) => RUN_TOGETHER.test(word)).map((match) => ({ key: match[0], at: label.index + match.index })),
    );
    return [...keysIn(comment), ...runTogether].map(({ key, at }) => ({ key, where: `${path}:${lineAt(text, pos + at)}` }));
  });
}

function commentsOf(path: string): readonly { readonly pos: number; readonly end: number }[] {
  const { text } = parsedModule(path);
  const found = new Map<number, { pos: number; end: number }>();
  walk(parsedModule(path), (node) => {
    for (const range of [...(ts.getLeadingCommentRanges(text, node.pos) ?? []), ...(ts.getTrailingCommentRanges(text, node.end) ?? [])]) found.set(range.pos, range);
  });
  return [...found.values()];
}

/** Keys in the texts of a table of data: what a `source` says, also through a constant. */
export function citedInTexts(path: string): readonly Citation[] {
  const found: Citation[] = [];
  walk(parsedModule(path), (node) => {
    if (!ts.isStringLiteralLike(node) && !ts.isTemplateHead(node) && !ts.isTemplateMiddle(node) && !ts.isTemplateTail(node)) return;
    if (isOfSource(node)) for (const { key } of keysIn(node.text)) found.push({ key, where: placeOf(path, node) });
  });
  return found;
}

/** Text of a `source` field, or of a constant in capitals that such fields share. */
function isOfSource(node: ts.Node): boolean {
  for (let up = node.parent; !ts.isSourceFile(up); up = up.parent) {
    if (ts.isPropertyAssignment(up)) return up.name.getText() === 'source';
    if (ts.isVariableDeclaration(up)) return /^[A-Z_]+$/u.test(up.name.getText());
  }
  return false;
}

/** Keys of a published test: the first word of each text that its `source` or `sources` holds. */
export function citedByTest(path: string): readonly Citation[] {
  const found: Citation[] = [];
  walk(parsedModule(path), (node) => {
    const named = ts.isPropertyAssignment(node) || (ts.isVariableDeclaration(node) && node.parent.parent.parent === parsedModule(path));
    if (!named || !/^sources?$/u.test(node.name.getText()) || !node.initializer) return;
    walk(node.initializer, (inner) => {
      if (ts.isStringLiteralLike(inner)) found.push({ key: inner.text.split(/[\s,(]/u)[0]!, where: placeOf(path, inner) });
    });
  });
  return found;
}
