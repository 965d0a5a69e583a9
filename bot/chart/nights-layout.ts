import type { NightsPicture, PicturedNight } from '../features/record/nights-picture.js';
import { NAMELESS_GREENHOUSE } from '../text/chart-text.js';
import { NIGHTS_LEGEND, nightsAttribution, nightsLine, nightTick, type LegendMark } from '../text/nights-chart-text.js';
import { PICTURE_WIDTH_PX } from './night-layout.js';
import type { Point, Rectangle } from './rectangle.js';
import { temperatureAxis, type TemperatureAxis } from './temperature-axis.js';
import { fittedText, textAt, type PlacedText, type TextLine } from './text-line.js';

/** A night in its column: what was said as a bar with its middle, what was read as a mark. */
export interface PlacedNight {
  readonly bar: Rectangle | null;
  readonly middleY: number | null;
  /** What was said is about another night than came: the bar is drawn pale. */
  readonly isPale: boolean;
  readonly mark: (Point & { readonly kind: Exclude<LegendMark, 'said'> }) | null;
}

/** The picture of past nights: every box and every line of text at its place, in pixels. */
export interface NightsLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly header: Rectangle;
  readonly title: PlacedText;
  readonly line: PlacedText;
  readonly plot: Rectangle;
  readonly temps: TemperatureAxis;
  readonly nights: readonly PlacedNight[];
  readonly tickTexts: readonly PlacedText[];
  readonly legend: readonly { readonly mark: LegendMark; readonly at: Point; readonly words: PlacedText }[];
  readonly footer: readonly PlacedText[];
}

const SIDE_PX = 36;
const PLOT_LEFT_PX = 100;
const PLOT_RIGHT_PX = 24;
const PLOT_HEIGHT_PX = 560;
const HEADER_PX = 160;
const TITLE = { sizePx: 52, smallestPx: 38, y: 24 } as const;
const LINE = { sizePx: 34, y: 98 } as const;
const TICK_PX = 30;
const TICK_GAP_PX = 14;
const TICK_ROW_PX = 62;
const LEGEND_PX = 32;
const LEGEND_ROW_PX = 56;
const LEGEND_MARK_PX = 56;
const FOOTER_PX = 30;
const FOOTER_LINE_PX = 42;
const ROOM_PX = 24;
/** A bar takes this share of its column, and no more pixels than this. */
const BAR_SHARE = 0.62;
const WIDEST_BAR_PX = 72;
const WEEK = 7;
/** Room above and below what is drawn, as a share of the range; and the least range, so that mild nights do not look wild. */
const HEADROOM = 0.08;
const LEAST_RANGE_C = 8;

export function nightsLayout(picture: NightsPicture): NightsLayout {
  const widthPx = PICTURE_WIDTH_PX;
  const plot = { x: PLOT_LEFT_PX, y: HEADER_PX + ROOM_PX, width: widthPx - PLOT_LEFT_PX - PLOT_RIGHT_PX, height: PLOT_HEIGHT_PX };
  const temps = temperatureAxis({ ...rangeOf(picture.nights), units: picture.units }, { topY: plot.y, bottomY: plot.y + plot.height });
  const columnPx = plot.width / picture.nights.length;
  const middleX = (n: number): number => plot.x + (n + 0.5) * columnPx;
  const nights = picture.nights.map((night, n) => placedNight(night, { x: middleX(n), widthPx: Math.min(WIDEST_BAR_PX, BAR_SHARE * columnPx) }, temps));
  const legendY = plot.y + plot.height + TICK_ROW_PX;
  const legend = legendOf(nights, legendY);
  const footerY = (legend.at(-1)?.at.y ?? legendY) + LEGEND_ROW_PX / 2 + ROOM_PX;
  const footer = nightsAttribution(picture.sources).map((text, i) => textAt(plain(text, FOOTER_PX, widthPx - 2 * SIDE_PX), SIDE_PX, footerY + i * FOOTER_LINE_PX));
  const named = fittedText(picture.greenhouse, { ...TITLE, weight: 'bold', mostPx: widthPx - 2 * SIDE_PX });
  const title = named.text === '' ? fittedText(NAMELESS_GREENHOUSE, { ...TITLE, weight: 'bold', mostPx: widthPx - 2 * SIDE_PX }) : named;
  return {
    widthPx,
    heightPx: Math.ceil(footerY + footer.length * FOOTER_LINE_PX + ROOM_PX),
    header: { x: 0, y: 0, width: widthPx, height: HEADER_PX },
    title: textAt(title, SIDE_PX, TITLE.y),
    line: textAt(plain(nightsLine(picture.thermometer, picture.nights.length), LINE.sizePx, widthPx - 2 * SIDE_PX), SIDE_PX, LINE.y),
    plot,
    temps,
    nights,
    tickTexts: [...degreeTexts(temps, plot, picture.units), ...dayTexts(picture.nights, plot, middleX)],
    legend,
    footer,
  };
}

const plain = (text: string, sizePx: number, mostPx: number): TextLine => fittedText(text, { sizePx, weight: 'regular', mostPx });

function rangeOf(nights: readonly PicturedNight[]): { lowestC: number; highestC: number } {
  const tempsC = nights.flatMap(({ said, read }) => [...(said ? [said.q10, said.q90] : []), ...(read ? [read.tempC] : [])]);
  const [coldestC, warmestC] = tempsC.length === 0 ? [0, 0] : [Math.min(...tempsC), Math.max(...tempsC)];
  const missingC = Math.max(0, LEAST_RANGE_C - (warmestC - coldestC)) / 2;
  const roomC = missingC + HEADROOM * (warmestC - coldestC + 2 * missingC);
  return { lowestC: coldestC - roomC, highestC: warmestC + roomC };
}

function placedNight({ said, read, compares }: PicturedNight, { x, widthPx }: { x: number; widthPx: number }, temps: TemperatureAxis): PlacedNight {
  const bar = said === null ? null : { x: x - widthPx / 2, y: temps.yOf(said.q90), width: widthPx, height: temps.yOf(said.q10) - temps.yOf(said.q90) };
  return { bar, middleY: said === null ? null : temps.yOf(said.q50), isPale: !compares, mark: read === null ? null : { x, y: temps.yOf(read.tempC), kind: markOf({ said, read, compares }) } };
}

function markOf({ said, read, compares }: Pick<PicturedNight, 'said' | 'compares'> & { read: NonNullable<PicturedNight['read']> }): Exclude<LegendMark, 'said'> {
  if (read.kind === 'bound') return 'bound';
  if (said === null) return 'alone';
  if (!compares) return 'leftOut';
  return read.tempC >= said.q10 && read.tempC <= said.q90 ? 'inside' : 'outside';
}

const degreeTexts = ({ ticks }: TemperatureAxis, plot: Rectangle, units: NightsPicture['units']): readonly PlacedText[] =>
  ticks.flatMap(({ written, y }) => {
    const text = plain(`${written}${units}`, TICK_PX, PLOT_LEFT_PX);
    const top = y - text.heightPx / 2;
    return top < plot.y || top + text.heightPx > plot.y + plot.height ? [] : [textAt(text, plot.x - TICK_GAP_PX - text.widthPx, top)];
  });

/** The newest night has its day, and those before it as far as they have room. */
function dayTexts(nights: readonly PicturedNight[], plot: Rectangle, middleX: (n: number) => number): readonly PlacedText[] {
  const placed: PlacedText[] = [];
  for (let n = nights.length - 1; n >= 0; n -= 1) {
    const text = plain(nightTick(nights[n]!.date, nights.length <= WEEK), TICK_PX, plot.width);
    const x = Math.min(middleX(n) - text.widthPx / 2, plot.x + plot.width - text.widthPx);
    const next = placed.at(-1);
    if (x >= 0 && (next === undefined || x + text.widthPx + TICK_GAP_PX <= next.box.x)) placed.push(textAt(text, x, plot.y + plot.height + TICK_GAP_PX));
  }
  return placed;
}

/** Only marks that are there are explained, two in a row. */
function legendOf(nights: readonly PlacedNight[], topY: number): NightsLayout['legend'] {
  const shown = (Object.keys(NIGHTS_LEGEND) as LegendMark[]).filter((mark) => (mark === 'said' ? nights.some(({ bar }) => bar !== null) : nights.some((night) => night.mark?.kind === mark)));
  const halfPx = (PICTURE_WIDTH_PX - 2 * SIDE_PX) / 2;
  return shown.map((mark, i) => {
    const [leftX, y] = [SIDE_PX + (i % 2) * halfPx, topY + (Math.floor(i / 2) + 0.5) * LEGEND_ROW_PX];
    const words = plain(NIGHTS_LEGEND[mark], LEGEND_PX, halfPx - LEGEND_MARK_PX);
    return { mark, at: { x: leftX + LEGEND_MARK_PX / 2, y }, words: textAt(words, leftX + LEGEND_MARK_PX, y - words.heightPx / 2) };
  });
}
