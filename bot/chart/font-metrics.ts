import { readFileSync } from 'node:fs';
import { FONT_FILES, type FontWeight } from './font-files.js';

/** What the layout must know of a font: how wide a character is, and whether it can be drawn at all. */
export interface FontMetrics {
  /** Width of a character as a share of the font size; null when the font has no such character. */
  widthOf(character: string): number | null;
}

// Byte offsets of the OpenType tables (OpenType specification 1.9: head, hhea, hmtx, cmap format 12).
const TABLE_COUNT_AT = 4;
const TABLE_RECORDS_AT = 12;
const TABLE_RECORD_BYTES = 16;
const UNITS_PER_EM_AT = 18;
const WIDTH_COUNT_AT = 34;
const WIDTH_BYTES = 4;
const SUBTABLE_COUNT_AT = 2;
const SUBTABLE_RECORDS_AT = 4;
const SUBTABLE_RECORD_BYTES = 8;
const ALL_OF_UNICODE = 12;
const GROUP_COUNT_AT = 12;
const GROUPS_AT = 16;
const GROUP_BYTES = 12;

const known = new Map<FontWeight, FontMetrics>();

/** The metrics of a font of the picture, read once. */
export function fontMetrics(weight: FontWeight): FontMetrics {
  const before = known.get(weight);
  if (before) return before;
  const metrics = readMetrics(readFileSync(FONT_FILES[weight]));
  known.set(weight, metrics);
  return metrics;
}

function readMetrics(font: Buffer): FontMetrics {
  const table = tableFinder(font);
  const unitsPerEm = font.readUInt16BE(table('head') + UNITS_PER_EM_AT);
  const widthCount = font.readUInt16BE(table('hhea') + WIDTH_COUNT_AT);
  const widths = table('hmtx');
  const glyphOf = glyphFinder(font, table('cmap'));
  return {
    widthOf(character) {
      const glyph = glyphOf(character.codePointAt(0)!);
      return glyph === null ? null : font.readUInt16BE(widths + Math.min(glyph, widthCount - 1) * WIDTH_BYTES) / unitsPerEm;
    },
  };
}

function tableFinder(font: Buffer): (tag: string) => number {
  const tables = new Map<string, number>();
  for (let t = 0; t < font.readUInt16BE(TABLE_COUNT_AT); t += 1) {
    const record = TABLE_RECORDS_AT + t * TABLE_RECORD_BYTES;
    tables.set(font.toString('latin1', record, record + 4), font.readUInt32BE(record + 8));
  }
  return (tag) => {
    const at = tables.get(tag);
    if (at === undefined) throw new Error(`the font of the pictures has no table "${tag}"; install the packages anew with npm ci`);
    return at;
  };
}

interface CharacterGroup {
  readonly first: number;
  readonly last: number;
  readonly glyph: number;
}

function glyphFinder(font: Buffer, cmap: number): (codePoint: number) => number | null {
  const subtables = Array.from({ length: font.readUInt16BE(cmap + SUBTABLE_COUNT_AT) }, (_, s) => cmap + font.readUInt32BE(cmap + SUBTABLE_RECORDS_AT + s * SUBTABLE_RECORD_BYTES + 4));
  const whole = subtables.find((at) => font.readUInt16BE(at) === ALL_OF_UNICODE);
  if (whole === undefined) throw new Error('the font of the pictures does not map the whole of Unicode; install the packages anew with npm ci');
  const groups = Array.from({ length: font.readUInt32BE(whole + GROUP_COUNT_AT) }, (_, g): CharacterGroup => {
    const at = whole + GROUPS_AT + g * GROUP_BYTES;
    return { first: font.readUInt32BE(at), last: font.readUInt32BE(at + 4), glyph: font.readUInt32BE(at + 8) };
  });
  return (codePoint) => {
    const group = groups.find(({ first, last }) => codePoint >= first && codePoint <= last);
    const glyph = group === undefined ? 0 : group.glyph + codePoint - group.first;
    return glyph === 0 ? null : glyph;
  };
}
