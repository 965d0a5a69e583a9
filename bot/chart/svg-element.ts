/** A piece of SVG that was put together here; plain text is never one, so that it cannot slip in unescaped. */
export interface SvgElement {
  readonly markup: string;
}

export type SvgAttributes = Readonly<Record<string, string | number>>;

const DECIMALS = 2;
const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;' };
/** Characters that no XML 1.0 document may hold, however they are written. */
const FORBIDDEN = /[^\u{9}\u{A}\u{D}\u{20}-\u{D7FF}\u{E000}-\u{FFFD}\u{10000}-\u{10FFFF}]/gu;

export const escapeText = (text: string): string => text.replace(FORBIDDEN, '').replace(/[&<>"']/gu, (character) => ESCAPES[character]!);

/** One element with its attributes and what is inside it; texts are escaped, numbers rounded so that the bytes stay the same. */
export function svgElement(name: string, attributes: SvgAttributes, ...inside: readonly (SvgElement | string)[]): SvgElement {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${typeof value === 'number' ? svgNumber(value) : escapeText(value)}"`);
  const content = inside.map((part) => (typeof part === 'string' ? escapeText(part) : part.markup)).join('');
  return { markup: content === '' ? `<${name}${written.join('')}/>` : `<${name}${written.join('')}>${content}</${name}>` };
}

/** A number that cannot be drawn would be left out of the picture in silence. */
function svgNumber(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a coordinate of the picture: expected a number, got ${value}`);
  return String(Number(value.toFixed(DECIMALS)) + 0);
}
