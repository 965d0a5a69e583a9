/** Phrases that stand between bars or on lines of their own. */
export const listed = (written: string): readonly string[] => written.split(/[|\n]/u).map((phrase) => phrase.trim()).filter((phrase) => phrase !== '');

/** One pattern of many lines: each is a pattern of its own, but one that ends in a bar goes on with the next. */
export const anyLine = (written: string): string =>
  written.split('\n').map((line) => line.trim()).filter((line) => line !== '').reduce((sofar, line) => `${sofar}${sofar.endsWith('|') ? '' : '|'}${line}`);

/** The alternatives of a pattern: what stands between bars that are in no bracket. */
function alternatives(pattern: string): readonly string[] {
  const found = [''];
  let depth = 0;
  let inClass = false;
  for (const [part] of pattern.matchAll(/\\.|./gu)) {
    if (part === '[') inClass = true;
    else if (part === ']') inClass = false;
    else if (!inClass && part === '(') depth++;
    else if (!inClass && part === ')') depth--;
    if (part === '|' && depth === 0 && !inClass) found.push('');
    else found.push(`${found.pop() ?? ''}${part}`);
  }
  return found;
}

function wholeWords(written: string): string {
  const all = alternatives(anyLine(written));
  const isAnchored = (one: string): boolean => one.startsWith('^') || one.endsWith('$');
  const whole = all.filter((one) => !isAnchored(one));
  const anchored = all.filter(isAnchored).map((one) => `${one.startsWith('^') ? '' : ' '}${one}${one.endsWith('$') ? '' : ' '}`);
  return [...(whole.length === 0 ? [] : [` (?:${whole.join('|')}) `]), ...anchored].join('|');
}

/**
 * Finds any of these wordings in the form of a message, as whole words. A line break or a bar separates two wordings; a line that
 * ends in a bar goes on with the next. Each is a regular expression over the symbols of a form; one that begins with ^ or ends
 * with $ says its own blanks there.
 */
export const wordings = ({ raw }: TemplateStringsArray, ...parts: readonly string[]): RegExp => new RegExp(wholeWords(String.raw({ raw }, ...parts)), 'u');

/** The same, to replace each of them where they stand. */
export const everyWording = ({ raw }: TemplateStringsArray): RegExp => new RegExp(wholeWords(String.raw({ raw })), 'gu');
