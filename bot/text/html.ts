/** The few characters that Telegram's HTML wants written otherwise. */
export const escapeHtml = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** The same words with simple markup: the first line and the heading of each list stand out. */
export function toHtml(text: string): string {
  const lines = text.split('\n');
  return lines.map((line, i) => (isHeading(lines, i) ? `<b>${escapeHtml(line)}</b>` : escapeHtml(line))).join('\n');
}

/** A line that begins a block and has list items right under it, or the title of the whole. */
function isHeading(lines: readonly string[], i: number): boolean {
  const line = lines[i]!;
  if (line === '' || line.startsWith('- ')) return false;
  const beginsBlock = i === 0 || lines[i - 1] === '';
  return beginsBlock && ((lines[i + 1] ?? '').startsWith('- ') || (i === 0 && lines[1] === ''));
}
