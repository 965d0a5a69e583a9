import { fontMetrics } from './font-metrics.js';
import type { FontWeight } from './font-files.js';
import type { Rectangle } from './rectangle.js';

/** One line of text with the room that it takes. */
export interface TextLine {
  readonly text: string;
  readonly sizePx: number;
  readonly weight: FontWeight;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A line of text at its place. */
export interface PlacedText extends TextLine {
  readonly box: Rectangle;
}

/** A phone shows the picture at a third: smaller letters could not be read there. */
export const SMALLEST_TEXT_PX = 30;
/** Height above and below the base line as shares of the size (DejaVu Sans: 0.928 and 0.236). */
const ASCENT = 0.93;
const DESCENT = 0.24;
const CUT_MARK = '...';

/** What can be drawn of a text: on one line, without characters that the font lacks. */
function drawable(text: string, weight: FontWeight): string {
  const font = fontMetrics(weight);
  return [...text.normalize('NFC').replace(/[\s\p{Cc}\p{Cf}]+/gu, ' ')].filter((character) => font.widthOf(character) !== null).join('').replace(/ {2,}/gu, ' ').trim();
}

const widthPx = (text: string, font: { sizePx: number; weight: FontWeight }): number => [...text].reduce((sum, character) => sum + (fontMetrics(font.weight).widthOf(character) ?? 0), 0) * font.sizePx;

/** A text that fits into a width: as large as allowed, smaller if need be, cut with dots where even that is too wide. */
export function fittedText(text: string, fit: { sizePx: number; weight: FontWeight; mostPx: number; smallestPx?: number }): TextLine {
  const { weight, mostPx } = fit;
  const whole = drawable(text, weight);
  const smallestPx = Math.min(fit.sizePx, Math.max(fit.smallestPx ?? fit.sizePx, SMALLEST_TEXT_PX));
  let sizePx = fit.sizePx;
  while (sizePx > smallestPx && widthPx(whole, { sizePx, weight }) > mostPx) sizePx -= 1;
  const shown = cutTo(whole, { sizePx, weight, mostPx });
  return { text: shown, sizePx, weight, widthPx: widthPx(shown, { sizePx, weight }), heightPx: (ASCENT + DESCENT) * sizePx };
}

function cutTo(text: string, fit: { sizePx: number; weight: FontWeight; mostPx: number }): string {
  if (widthPx(text, fit) <= fit.mostPx) return text;
  const characters = [...text];
  while (characters.length > 0 && widthPx(characters.join('').trimEnd() + CUT_MARK, fit) > fit.mostPx) characters.pop();
  return characters.join('').trimEnd() + CUT_MARK;
}

/** A line of text with its upper left corner at a place. */
export const textAt = (line: TextLine, x: number, y: number): PlacedText => ({ ...line, box: { x, y, width: line.widthPx, height: line.heightPx } });

export const baseLineY = ({ box, sizePx }: PlacedText): number => box.y + ASCENT * sizePx;
