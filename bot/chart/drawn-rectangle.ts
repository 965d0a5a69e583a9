import type { Rectangle } from './rectangle.js';
import { svgElement, type SvgAttributes, type SvgElement } from './svg-element.js';

export const drawnRectangle = ({ x, y, width, height }: Rectangle, look: SvgAttributes): SvgElement => svgElement('rect', { x, y, width, height, ...look });
