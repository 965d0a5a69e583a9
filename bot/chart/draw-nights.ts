import { drawnRectangle } from './drawn-rectangle.js';
import { drawnText } from './drawn-text.js';
import type { NightsLayout, PlacedNight } from './nights-layout.js';
import { BAND, LINE_STYLES, PALETTE } from './palette.js';
import type { Point } from './rectangle.js';
import { svgElement, type SvgElement } from './svg-element.js';
import type { LegendMark } from '../text/nights-chart-text.js';

const HEADER = 'header';
const FREEZING_C = 0;
const BAR_CORNER_PX = 8;
const MIDDLE_PX = 5;
const PALE = 0.4;
/** Denser than a band, for it stands by itself. */
const BAR_OPACITY = 1.6 * BAND.opacity;
/** Half the size of a mark; where nights are many it is no wider than a bar. */
const MARK_PX = 13;
const SMALLEST_MARK_PX = 7;
const MARK_SHARE = 0.3;
const EDGE_PX = 5;
const LEGEND_BAR_PX = { width: 26, height: 40 } as const;

/** The picture of past nights as SVG: the same layout gives the same bytes. */
export function drawNights(layout: NightsLayout): string {
  const { widthPx, heightPx, plot } = layout;
  const markPx = Math.max(SMALLEST_MARK_PX, Math.min(MARK_PX, (plot.width / layout.nights.length) * MARK_SHARE));
  return svgElement(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', width: widthPx, height: heightPx, viewBox: `0 0 ${widthPx} ${heightPx}` },
    drawnRectangle({ x: 0, y: 0, width: widthPx, height: heightPx }, { fill: PALETTE.paper }),
    svgElement('defs', {}, svgElement('linearGradient', { id: HEADER, x1: 0, y1: 0, x2: 0, y2: 1 }, svgElement('stop', { offset: 0, 'stop-color': PALETTE.header.top }), svgElement('stop', { offset: 1, 'stop-color': PALETTE.header.bottom }))),
    drawnRectangle(layout.header, { fill: `url(#${HEADER})` }),
    drawnText(layout.title, { color: PALETTE.onHeader }),
    drawnText(layout.line, { color: PALETTE.quietOnHeader }),
    drawnRectangle(plot, { fill: PALETTE.night }),
    ...grid(layout),
    ...layout.nights.flatMap(bar),
    ...layout.nights.flatMap(({ mark }) => (mark === null ? [] : [drawnMark(mark.kind, mark, markPx)])),
    drawnRectangle(plot, { fill: 'none', stroke: PALETTE.quietInk, 'stroke-width': 2 }),
    ...layout.tickTexts.map((text) => drawnText(text, { color: PALETTE.ink })),
    ...layout.legend.flatMap(({ mark, at, words }) => [drawnMark(mark, at, MARK_PX), drawnText(words, { color: PALETTE.ink })]),
    ...layout.footer.map((text) => drawnText(text, { color: PALETTE.quietInk })),
  ).markup;
}

function grid({ plot, temps }: NightsLayout): readonly SvgElement[] {
  const across = (y: number, color: string, widthPx: number): SvgElement => svgElement('line', { x1: plot.x, y1: y, x2: plot.x + plot.width, y2: y, stroke: color, 'stroke-width': widthPx });
  const freezingY = temps.yOf(FREEZING_C);
  return [...temps.ticks.map(({ y }) => across(y, PALETTE.grid, 2)), ...(freezingY > plot.y && freezingY < plot.y + plot.height ? [across(freezingY, PALETTE.freezing, 4)] : [])];
}

function bar({ bar: box, middleY, isPale }: PlacedNight): readonly SvgElement[] {
  if (box === null || middleY === null) return [];
  const share = isPale ? PALE : 1;
  return [
    drawnRectangle(box, { fill: BAND.color, 'fill-opacity': BAR_OPACITY * share, rx: BAR_CORNER_PX }),
    svgElement('line', { x1: box.x, y1: middleY, x2: box.x + box.width, y2: middleY, stroke: LINE_STYLES.plant.color, 'stroke-width': MIDDLE_PX, 'stroke-opacity': share }),
  ];
}

/** Marks differ by their form too: they must be told apart without colour. */
function drawnMark(kind: LegendMark, { x, y }: Point, px: number): SvgElement {
  const polygon = (points: readonly Point[], fill: string, stroke: string): SvgElement => svgElement('polygon', { points: points.map((point) => `${point.x.toFixed(2)},${point.y.toFixed(2)}`).join(' '), fill, stroke, 'stroke-width': EDGE_PX, 'stroke-linejoin': 'round' });
  switch (kind) {
    case 'said':
      return drawnRectangle({ x: x - LEGEND_BAR_PX.width / 2, y: y - LEGEND_BAR_PX.height / 2, ...LEGEND_BAR_PX }, { fill: BAND.color, 'fill-opacity': BAR_OPACITY, rx: BAR_CORNER_PX });
    case 'inside':
      return svgElement('circle', { cx: x, cy: y, r: px, fill: LINE_STYLES.cover.color, stroke: PALETTE.paper, 'stroke-width': EDGE_PX });
    case 'outside':
      return polygon([{ x, y: y - 1.4 * px }, { x: x + 1.4 * px, y }, { x, y: y + 1.4 * px }, { x: x - 1.4 * px, y }], PALETTE.danger, PALETTE.paper);
    case 'bound':
      return polygon([{ x: x - 1.2 * px, y: y + px }, { x: x + 1.2 * px, y: y + px }, { x, y: y - 1.2 * px }], PALETTE.paper, LINE_STYLES.outside.color);
    case 'alone':
      return svgElement('circle', { cx: x, cy: y, r: px, fill: PALETTE.quietInk, stroke: PALETTE.paper, 'stroke-width': EDGE_PX });
    case 'leftOut':
      return svgElement('circle', { cx: x, cy: y, r: px, fill: PALETTE.paper, stroke: PALETTE.quietInk, 'stroke-width': EDGE_PX });
  }
}
