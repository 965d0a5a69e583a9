import type { Outgoing } from '../../chat.js';

/** One message of the service. */
export interface Part {
  readonly text: string;
  /** Null: goes as plain text. */
  readonly html: string | null;
}

/** The service takes 4096 characters; longer texts also meet its rate limits sooner (platform reference 1.1). */
export const LONGEST_PART = 3500;
/** A blank line is preferred to a line end when the part is at least so full. Prior of this project. */
const FULL_ENOUGH = 0.5;

/** A message in parts that the service takes: cut at blank lines, else at line ends, else between words. */
export function partsOf({ text, html }: Pick<Outgoing, 'text' | 'html'>): readonly Part[] {
  if (text.length <= LONGEST_PART) return [{ text, html: html ?? null }];
  const lines = text.split('\n');
  const marked = html?.split('\n');
  // Markup that adds or takes away lines cannot be cut beside the text.
  const htmlLines = marked?.length === lines.length ? marked : null;
  let open: readonly string[] = [];
  return runsOf(lines).flatMap(([from, to]) => {
    const run = withoutEdges(lines.slice(from, to).join('\n'));
    const before = open;
    const inner = htmlLines?.slice(from, to).join('\n') ?? null;
    if (inner !== null) open = openTags(inner, before);
    if (run.length > LONGEST_PART) return piecesOf(run).map((piece) => ({ text: piece, html: null }));
    if (run === '') return [];
    return [{ text: run, html: inner === null ? null : `${before.join('')}${withoutEdges(inner)}${open.map(endTag).reverse().join('')}` }];
  });
}

/** Blank lines at a cut say nothing. */
const withoutEdges = (run: string): string => run.replace(/^\n+|\n+$/gu, '');

/** Runs of lines, from and to, that fit; a line that fits nowhere is a run of its own. */
function runsOf(lines: readonly string[]): readonly (readonly [number, number])[] {
  const runs: [number, number][] = [];
  for (let from = 0; from < lines.length; ) {
    const to = cutAfter(lines, from);
    runs.push([from, to]);
    from = to;
  }
  return runs;
}

function cutAfter(lines: readonly string[], from: number): number {
  let [length, to, blankAt, blankLength] = [0, from, -1, 0];
  while (to < lines.length) {
    const longer = length + (to > from ? 1 : 0) + lines[to]!.length;
    if (longer > LONGEST_PART) break;
    if (lines[to] === '') [blankAt, blankLength] = [to, length];
    [length, to] = [longer, to + 1];
  }
  if (to === lines.length) return to;
  if (blankAt > from && blankLength >= FULL_ENOUGH * LONGEST_PART) return blankAt;
  return Math.max(to, from + 1);
}

/** One long line in pieces, between words where it has any, never inside a character of two units. */
function piecesOf(line: string): readonly string[] {
  const pieces: string[] = [];
  let rest = line;
  while (rest.length > LONGEST_PART) {
    const space = rest.lastIndexOf(' ', LONGEST_PART);
    const inPair = /[\uD800-\uDBFF]/u.test(rest.charAt(LONGEST_PART - 1));
    const at = space > 0 ? space : LONGEST_PART - (inPair ? 1 : 0);
    pieces.push(rest.slice(0, at));
    rest = rest.slice(at).trimStart();
  }
  return rest === '' ? pieces : [...pieces, rest];
}

const TAG = /<(?<end>\/)?(?<name>[a-z][a-z0-9-]*)(?:\s[^>]*)?>/giu;

/** Start tags that are still open after a piece of markup, as written. */
function openTags(html: string, before: readonly string[]): readonly string[] {
  const open = [...before];
  for (const tag of html.matchAll(TAG)) {
    if (tag.groups!['end'] === undefined) open.push(tag[0]);
    else open.pop();
  }
  return open;
}

const endTag = (startTag: string): string => startTag.replace(/^<(?<name>[a-z0-9-]+).*$/isu, '</$<name>>');
