import { FONT_FAMILY } from './font-files.js';
import { svgElement, type SvgElement } from './svg-element.js';
import { baseLineY, type PlacedText } from './text-line.js';

/** A line of text at its place; with a halo it stays readable on whatever lies behind it. */
export function drawnText(text: PlacedText, look: { readonly color: string; readonly haloColor?: string }): SvgElement {
  const halo = look.haloColor === undefined ? {} : { stroke: look.haloColor, 'stroke-width': HALO_PX, 'stroke-linejoin': 'round', 'paint-order': 'stroke' };
  return svgElement('text', { x: text.box.x, y: baseLineY(text), 'font-family': FONT_FAMILY, 'font-size': text.sizePx, 'font-weight': text.weight === 'bold' ? 700 : 400, fill: look.color, ...halo }, text.text);
}

const HALO_PX = 9;
