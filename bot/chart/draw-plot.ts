import { area, line } from 'd3-shape';
import { drawnRectangle } from './drawn-rectangle.js';
import { drawnText } from './drawn-text.js';
import type { LineName } from './night-picture.js';
import { BAND, LINE_STYLES, PALETTE } from './palette.js';
import type { LabelRole, PlacedLimit, PlotLayout } from './plot-layout.js';
import type { Point, Rectangle } from './rectangle.js';
import { svgElement, type SvgAttributes, type SvgElement } from './svg-element.js';

const LABEL_COLORS = {
  plant: LINE_STYLES.plant.color,
  low: LINE_STYLES.plant.color,
  band: LINE_STYLES.plant.color,
  cover: LINE_STYLES.cover.color,
  inside: LINE_STYLES.inside.color,
  outside: LINE_STYLES.outside.color,
  damage: PALETTE.danger,
  killed: PALETTE.killed,
} as const satisfies Record<LabelRole, string>;

const LIMIT_STYLES = { damage: { color: PALETTE.danger, widthPx: 5 }, killed: { color: PALETTE.killed, widthPx: 8 } } as const;
const CLIP = 'plot';
const HATCH = 'harm';
const HATCH_PX = 22;
const HARM_TINT = 0.06;
const TOOTH_PX = { width: 18, height: 12, every: 72 } as const;
const LOW_DOT = { radiusPx: 15, edgePx: 6 } as const;
const FREEZING_C = 0;
const DECIMALS = 2;

const path = line<Point>().x(({ x }) => x).y(({ y }) => y).digits(DECIMALS);

/** The plot of the night: shading, band, lines, limits, and the words on them. */
export function drawPlot(plot: PlotLayout, sun: { readonly sunsetX: number | null; readonly sunriseX: number | null }): readonly SvgElement[] {
  const { box } = plot;
  return [
    svgElement('defs', {}, svgElement('clipPath', { id: CLIP }, drawnRectangle(box, {})), hatch()),
    ...shading(box, sun),
    ...grid(plot),
    svgElement('g', { 'clip-path': `url(#${CLIP})` }, ...harm(plot), ...bandAndLines(plot), ...plot.limits.flatMap((limit) => limitLine(limit, box))),
    drawnRectangle(box, { fill: 'none', stroke: PALETTE.quietInk, 'stroke-width': 2 }),
    ...plot.labels.flatMap(({ leader, role }) => (leader ? [drawnRectangle(leader, { fill: LABEL_COLORS[role] })] : [])),
    svgElement('circle', { cx: plot.low.x, cy: plot.low.y, r: LOW_DOT.radiusPx, fill: PALETTE.paper, stroke: LINE_STYLES.plant.color, 'stroke-width': LOW_DOT.edgePx }),
    ...plot.labels.flatMap(({ lines, role }) => lines.map((text) => drawnText(text, { color: LABEL_COLORS[role], haloColor: PALETTE.paper }))),
  ];
}

/** Night behind the plot, day where the sun is up. */
function shading(box: Rectangle, { sunsetX, sunriseX }: { readonly sunsetX: number | null; readonly sunriseX: number | null }): readonly SvgElement[] {
  const right = box.x + box.width;
  const days = [
    ...(sunsetX === null ? [] : [{ ...box, width: sunsetX - box.x }]),
    ...(sunriseX === null ? [] : [{ ...box, x: sunriseX, width: right - sunriseX }]),
  ];
  return [drawnRectangle(box, { fill: PALETTE.night }), ...days.map((day) => drawnRectangle(day, { fill: PALETTE.day }))];
}

function grid({ box, temps, times }: PlotLayout): readonly SvgElement[] {
  const bottomY = box.y + box.height;
  const freezingY = temps.yOf(FREEZING_C);
  return [
    ...temps.ticks.map(({ y }) => stroke({ x: box.x, y }, { x: box.x + box.width, y }, { stroke: PALETTE.grid, 'stroke-width': 2 })),
    ...times.ticks.map(({ x }) => stroke({ x, y: box.y }, { x, y: bottomY + 10 }, { stroke: PALETTE.grid, 'stroke-width': 2 })),
    ...(freezingY > box.y && freezingY < bottomY ? [stroke({ x: box.x, y: freezingY }, { x: box.x + box.width, y: freezingY }, { stroke: PALETTE.freezing, 'stroke-width': 3 })] : []),
  ];
}

const stroke = (from: Point, to: Point, look: SvgAttributes): SvgElement => svgElement('line', { x1: from.x, y1: from.y, x2: to.x, y2: to.y, ...look });

const hatch = (): SvgElement =>
  svgElement('pattern', { id: HATCH, width: HATCH_PX, height: HATCH_PX, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' }, stroke({ x: 0, y: 0 }, { x: 0, y: HATCH_PX }, { stroke: PALETTE.danger, 'stroke-width': 5, 'stroke-opacity': 0.22 }));

/** Everything below the line where damage begins is hatched. */
function harm({ box, limits }: PlotLayout): readonly SvgElement[] {
  const begins = limits.find(({ role }) => role === 'damage');
  if (!begins || begins.isOffPlot) return [];
  const below = { ...box, y: begins.y, height: box.y + box.height - begins.y };
  return [drawnRectangle(below, { fill: PALETTE.danger, 'fill-opacity': HARM_TINT }), drawnRectangle(below, { fill: `url(#${HATCH})` })];
}

/** Lines that matter less lie below those that matter more. */
function bandAndLines({ curves, band }: PlotLayout): readonly SvgElement[] {
  const edges = band.upper.map((upper, i) => ({ upper, lower: band.lower[i]! }));
  const filled = area<(typeof edges)[number]>().x(({ upper }) => upper.x).y0(({ lower }) => lower.y).y1(({ upper }) => upper.y).digits(DECIMALS)(edges)!;
  const lines = [...curves].reverse().map(({ name, points }) => {
    const { color, widthPx, dash } = LINE_STYLES[name as LineName];
    return svgElement('path', { d: path(points)!, fill: 'none', stroke: color, 'stroke-width': widthPx, 'stroke-dasharray': dash, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' });
  });
  return [svgElement('path', { d: filled, fill: BAND.color, 'fill-opacity': BAND.opacity }), ...lines];
}

/** A limit has teeth that point to the cold side, which is the harmful one. */
function limitLine({ role, y, isOffPlot }: PlacedLimit, box: Rectangle): readonly SvgElement[] {
  if (isOffPlot) return [];
  const { color, widthPx } = LIMIT_STYLES[role];
  const teeth = Array.from({ length: Math.floor(box.width / TOOTH_PX.every) }, (_, i) => {
    const x = box.x + (i + 0.5) * TOOTH_PX.every;
    return svgElement('path', { d: path([{ x, y }, { x: x + TOOTH_PX.width, y }, { x: x + TOOTH_PX.width / 2, y: y + TOOTH_PX.height }])!, fill: color });
  });
  return [stroke({ x: box.x, y }, { x: box.x + box.width, y }, { stroke: color, 'stroke-width': widthPx }), ...teeth];
}
