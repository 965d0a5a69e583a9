import { drawPlot } from './draw-plot.js';
import { drawnRectangle } from './drawn-rectangle.js';
import { drawnText } from './drawn-text.js';
import type { PlacedFlag } from './flag-rows.js';
import type { NightLayout } from './night-layout.js';
import { PALETTE, TAG_STYLES } from './palette.js';
import { svgElement, type SvgElement } from './svg-element.js';

const HEADER = 'header';
const SKY = 'sky';
const TAG_CORNER_PX = 12;
const CLOTH_CORNER_PX = 8;
/** Glow on the day's side of sunrise and sunset. */
const GLOW_PX = 150;

/** The picture as SVG: the same layout gives the same bytes. */
export function drawNight(layout: NightLayout): string {
  const { widthPx, heightPx } = layout;
  const page = svgElement(
    'svg',
    { xmlns: 'http://www.w3.org/2000/svg', width: widthPx, height: heightPx, viewBox: `0 0 ${widthPx} ${heightPx}` },
    drawnRectangle({ x: 0, y: 0, width: widthPx, height: heightPx }, { fill: PALETTE.paper }),
    ...header(layout),
    ...layout.marks.flatMap(({ box, words }) => [drawnRectangle(box, { fill: PALETTE.mark }), drawnText(words, { color: PALETTE.onMark })]),
    ...sky(layout),
    ...drawPlot(layout.plot, layout.sky),
    ...flags(layout),
    // A clock time is read through the pole that stands at it.
    ...layout.tickTexts.map((text) => drawnText(text, { color: PALETTE.ink, haloColor: PALETTE.paper })),
    ...(layout.idle ? [drawnText(layout.idle, { color: PALETTE.ink })] : []),
    ...layout.footer.map((text) => drawnText(text, { color: PALETTE.quietInk })),
  );
  return page.markup;
}

const gradient = (id: string, direction: Readonly<Record<string, number>>, stops: readonly { readonly at: number; readonly color: string }[]): SvgElement =>
  svgElement('defs', {}, svgElement('linearGradient', { id, ...direction }, ...stops.map(({ at, color }) => svgElement('stop', { offset: at, 'stop-color': color }))));

function header({ header: box, title, nightLine, tag, verdictLine }: NightLayout): readonly SvgElement[] {
  const { top, bottom } = PALETTE.header;
  return [
    gradient(HEADER, { x1: 0, y1: 0, x2: 0, y2: 1 }, [{ at: 0, color: top }, { at: 1, color: bottom }]),
    drawnRectangle(box, { fill: `url(#${HEADER})` }),
    drawnText(title, { color: PALETTE.onHeader }),
    drawnText(nightLine, { color: PALETTE.quietOnHeader }),
    ...(tag ? [drawnRectangle(tag.box, { fill: TAG_STYLES[tag.verdict].fill, rx: TAG_CORNER_PX }), drawnText(tag.words, { color: TAG_STYLES[tag.verdict].ink })] : []),
    drawnText(verdictLine, { color: PALETTE.onHeader }),
  ];
}

/** The sky over the hours: day, glow, night, glow, day. */
function sky({ sky: { box, sunsetX, sunriseX, words } }: NightLayout): readonly SvgElement[] {
  const glow = (id: string, side: { fromX: number; toX: number }): SvgElement => {
    // From the day's side to the edge of the night.
    const share = Math.min(1, GLOW_PX / Math.abs(side.toX - side.fromX));
    return gradient(`${SKY}-${id}`, { x1: side.toX > side.fromX ? 0 : 1, y1: 0, x2: side.toX > side.fromX ? 1 : 0, y2: 0 }, [{ at: 1 - share, color: PALETTE.dayGlow }, { at: 1, color: PALETTE.duskGlow }]);
  };
  const right = box.x + box.width;
  return [
    drawnRectangle(box, { fill: PALETTE.nightSky }),
    ...(sunsetX === null ? [] : [glow('dusk', { fromX: box.x, toX: sunsetX }), drawnRectangle({ ...box, width: sunsetX - box.x }, { fill: `url(#${SKY}-dusk)` })]),
    ...(sunriseX === null ? [] : [glow('dawn', { fromX: right, toX: sunriseX }), drawnRectangle({ ...box, x: sunriseX, width: right - sunriseX }, { fill: `url(#${SKY}-dawn)` })]),
    ...words.map((text) => drawnText(text, { color: PALETTE.onSky })),
  ];
}

/** Poles first, so that a cloth hides what hangs behind it. */
function flags({ flags: placed, plot }: NightLayout): readonly SvgElement[] {
  const groundY = plot.box.y + plot.box.height;
  const pole = ({ poleX, cloth }: PlacedFlag): SvgElement => svgElement('line', { x1: poleX, y1: groundY, x2: poleX, y2: cloth.y + cloth.height, stroke: PALETTE.flagEdge, 'stroke-width': 5 });
  return [
    ...placed.map(pole),
    ...placed.flatMap(({ cloth, words }) => [drawnRectangle(cloth, { fill: PALETTE.flag, stroke: PALETTE.flagEdge, 'stroke-width': 3, rx: CLOTH_CORNER_PX }), drawnText(words, { color: PALETTE.ink })]),
  ];
}
