import { clockMark, flagWords, idleWords, INVENTED_MARK, moreFlags, NAMELESS_GREENHOUSE, nightLine, NO_CROPS, pictureAttribution, staleMark, sunrise, sunset, VERDICT_TAGS, verdictLine } from '../text/chart-text.js';
import { localTime } from '../text/local-time.js';
import type { Verdict } from '../../engine/index.js';
import { FLAG_ROW_PX, flagRows, wordsRoomPx, type PlacedFlag } from './flag-rows.js';
import type { NightPicture } from './night-picture.js';
import { plotLayout, shortCropName, type PlotLayout } from './plot-layout.js';
import { lies, overlap, type Rectangle } from './rectangle.js';
import { fittedText, textAt, type PlacedText, type TextLine } from './text-line.js';
import { clockShiftS } from './time-axis.js';

/** The whole picture: every box and every line of text at its place, in pixels. */
export interface NightLayout {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly header: Rectangle;
  readonly title: PlacedText;
  readonly nightLine: PlacedText;
  readonly tag: { readonly box: Rectangle; readonly words: PlacedText; readonly verdict: Verdict } | null;
  readonly verdictLine: PlacedText;
  readonly marks: readonly { readonly box: Rectangle; readonly words: PlacedText }[];
  readonly sky: { readonly box: Rectangle; readonly sunsetX: number | null; readonly sunriseX: number | null; readonly words: readonly PlacedText[] };
  readonly plot: PlotLayout;
  readonly tickTexts: readonly PlacedText[];
  readonly flags: readonly PlacedFlag[];
  readonly idle: PlacedText | null;
  readonly footer: readonly PlacedText[];
}

/** Three pixels for each of a phone that is 360 wide. */
export const PICTURE_WIDTH_PX = 1080;
const SIDE_PX = 36;
const PLOT_LEFT_PX = 100;
const PLOT_RIGHT_PX = 24;
const PLOT_HEIGHT_PX = 560;
const SKY_PX = 58;
const SKY_TEXT_PX = 34;
const SKY_GAP_PX = 16;
const MARK_PX = 58;
const MARK_TEXT_PX = 34;
const TIME_ROW_PX = 58;
const TICK_PX = 32;
const TICK_GAP_PX = 14;
const MOST_FLAGS = 5;
const FLAG_PX = 33;
const FOOTER_PX = 30;
const FOOTER_LINE_PX = 42;
const ROOM_PX = SIDE_PX - 12;

const TITLE = { sizePx: 52, smallestPx: 38, y: 24 } as const;
const NIGHT_LINE = { sizePx: 34, y: 92 } as const;
const VERDICT = { sizePx: 38, smallestPx: 30, y: 150, tagPaddingPx: 18, gapPx: 20 } as const;
const HEADER_PX = 220;

export function nightLayout(picture: NightPicture): NightLayout {
  const widthPx = PICTURE_WIDTH_PX;
  const markTexts = marksOf(picture);
  const skyY = HEADER_PX + markTexts.length * MARK_PX;
  const plotBox = { x: PLOT_LEFT_PX, y: skyY + SKY_PX, width: widthPx - PLOT_LEFT_PX - PLOT_RIGHT_PX, height: PLOT_HEIGHT_PX };
  const plot = plotLayout(picture, plotBox);
  const marks = markTexts.map((text, i) => bandOfWords(text, { x: 0, y: HEADER_PX + i * MARK_PX, width: widthPx, height: MARK_PX }));
  const flagsY = plotBox.y + plotBox.height + TIME_ROW_PX;
  const flags = flagsOf(picture, plot, flagsY);
  const idle = flags.length > 0 ? null : textAt(fittedText(idleWords(picture.idle), { sizePx: FLAG_PX, weight: 'bold', mostPx: widthPx - PLOT_LEFT_PX - SIDE_PX }), PLOT_LEFT_PX, flagsY + (FLAG_ROW_PX - FLAG_PX) / 2);
  const footerY = flagsY + Math.max(1, flags.length) * FLAG_ROW_PX + ROOM_PX;
  const footer = pictureAttribution(picture.source).map((text, i) => textAt(fittedText(text, { sizePx: FOOTER_PX, weight: 'regular', mostPx: widthPx - 2 * SIDE_PX }), SIDE_PX, footerY + i * FOOTER_LINE_PX));
  return {
    widthPx,
    heightPx: Math.ceil(footerY + footer.length * FOOTER_LINE_PX + ROOM_PX),
    header: { x: 0, y: 0, width: widthPx, height: HEADER_PX },
    ...headerTexts(picture),
    marks,
    sky: skyOf(picture, plot, { x: 0, y: skyY, width: widthPx, height: SKY_PX }),
    plot,
    tickTexts: tickTexts(plot, picture.units),
    flags,
    idle,
    footer,
  };
}

function headerTexts(picture: NightPicture): Pick<NightLayout, 'title' | 'nightLine' | 'tag' | 'verdictLine'> {
  const { greenhouse, crop, zone, nowS, eveningS } = picture;
  const mostPx = PICTURE_WIDTH_PX - 2 * SIDE_PX;
  const time = localTime(zone);
  const name = fittedText(greenhouse, { ...TITLE, weight: 'bold', mostPx });
  const title = name.text === '' ? fittedText(NAMELESS_GREENHOUSE, { ...TITLE, weight: 'bold', mostPx }) : name;
  const words = nightLine(time.day(eveningS), time.clock(nowS));
  const header = { title: textAt(title, SIDE_PX, TITLE.y), nightLine: textAt(fittedText(words, { ...NIGHT_LINE, weight: 'regular', mostPx }), SIDE_PX, NIGHT_LINE.y) };
  if (crop === null) return { ...header, tag: null, verdictLine: textAt(fittedText(NO_CROPS, { ...VERDICT, weight: 'bold', mostPx }), SIDE_PX, VERDICT.y) };
  const tagWords = fittedText(VERDICT_TAGS[crop.verdict], { ...VERDICT, weight: 'bold', mostPx });
  const tagBox = { x: SIDE_PX, y: VERDICT.y - 2, width: tagWords.widthPx + 2 * VERDICT.tagPaddingPx, height: tagWords.heightPx + 4 };
  const lineX = tagBox.x + tagBox.width + VERDICT.gapPx;
  const line = fittedText(verdictLine(crop, shortCropName(crop.asked)), { ...VERDICT, weight: 'bold', mostPx: PICTURE_WIDTH_PX - SIDE_PX - lineX });
  return {
    ...header,
    tag: { box: tagBox, words: textAt(tagWords, tagBox.x + VERDICT.tagPaddingPx, VERDICT.y), verdict: crop.verdict },
    verdictLine: textAt(line, lineX, VERDICT.y + (tagWords.heightPx - line.heightPx) / 2),
  };
}

/** What the reader must know of the picture before believing it. */
function marksOf({ stale, isInvented, span, zone }: NightPicture): readonly string[] {
  const shiftS = clockShiftS({ ...span, zone });
  return [...(stale ? [staleMark(stale.ageS)] : []), ...(isInvented ? [INVENTED_MARK] : []), ...(shiftS === 0 ? [] : [clockMark(shiftS)])];
}

function bandOfWords(text: string, box: Rectangle): NightLayout['marks'][number] {
  const line = fittedText(text, { sizePx: MARK_TEXT_PX, weight: 'bold', mostPx: box.width - 2 * SIDE_PX });
  return { box, words: textAt(line, SIDE_PX, box.y + (box.height - line.heightPx) / 2) };
}

/** The strip of sky over the plot: when the sun sets and rises, written into the night between. */
function skyOf({ sun, span, zone }: NightPicture, { times }: PlotLayout, box: Rectangle): NightLayout['sky'] {
  if (sun === null) return { box, sunsetX: null, sunriseX: null, words: [] };
  const sunsetX = sun.sunsetS <= span.fromS ? null : times.xOf(sun.sunsetS);
  const sunriseX = sun.sunriseS >= span.toS ? null : times.xOf(sun.sunriseS);
  const line = (text: string): TextLine => fittedText(text, { sizePx: SKY_TEXT_PX, weight: 'regular', mostPx: box.width });
  const clock = (timeS: number): string => localTime(zone).clock(timeS);
  const [fromX, toX] = [(sunsetX ?? box.x) + SKY_GAP_PX, (sunriseX ?? box.x + box.width) - SKY_GAP_PX];
  const both = (set: string, rise: string): readonly PlacedText[] | null => {
    const [setLine, riseLine] = [sunsetX === null ? null : line(set), sunriseX === null ? null : line(rise)];
    if ((setLine?.widthPx ?? 0) + SKY_GAP_PX + (riseLine?.widthPx ?? 0) > toX - fromX) return null;
    const y = box.y + (box.height - line(set).heightPx) / 2;
    return [...(setLine ? [textAt(setLine, fromX, y)] : []), ...(riseLine ? [textAt(riseLine, toX - riseLine.widthPx, y)] : [])];
  };
  const [setClock, riseClock] = [clock(sun.sunsetS), clock(sun.sunriseS)];
  return { box, sunsetX, sunriseX, words: both(sunset(setClock), sunrise(riseClock)) ?? both(setClock, riseClock) ?? [] };
}

/** Clock times below the plot and degrees beside it; one that would touch its neighbour or the edge is left out, its tick stays. */
function tickTexts({ box, times, temps }: PlotLayout, units: NightPicture['units']): readonly PlacedText[] {
  const line = (text: string): TextLine => fittedText(text, { sizePx: TICK_PX, weight: 'regular', mostPx: PLOT_LEFT_PX });
  const beside = { x: 0, y: box.y, width: box.x, height: box.height };
  const degrees = temps.ticks.map(({ written, y }) => {
    const text = line(`${written}${units}`);
    return textAt(text, box.x - TICK_GAP_PX - text.widthPx, y - text.heightPx / 2);
  });
  const page = { x: 0, y: 0, width: PICTURE_WIDTH_PX, height: Infinity };
  const clocks = times.ticks.map(({ clock, x }) => {
    const text = line(clock);
    return textAt(text, x - text.widthPx / 2, box.y + box.height + TICK_GAP_PX);
  });
  return clocks.reduce<readonly PlacedText[]>((kept, text) => (lies(text.box, page) && !kept.some((other) => overlap(other.box, text.box)) ? [...kept, text] : kept), degrees.filter((text) => lies(text.box, beside)));
}

function flagsOf({ flags, units, zone }: NightPicture, { box, times }: PlotLayout, topY: number): readonly PlacedFlag[] {
  const room = { leftX: SIDE_PX, rightX: PICTURE_WIDTH_PX - SIDE_PX, topY };
  const shown = flags.length <= MOST_FLAGS ? flags : flags.slice(0, MOST_FLAGS - 1);
  const xOf = (timeS: number): number => Math.max(box.x, Math.min(box.x + box.width, times.xOf(timeS)));
  const words = (text: string): TextLine => fittedText(text, { sizePx: FLAG_PX, weight: 'bold', smallestPx: FLAG_PX - 3, mostPx: wordsRoomPx(room) });
  const rest = flags.slice(shown.length);
  return flagRows([...shown.map((flag) => ({ x: xOf(flag.atS), words: words(flagWords(flag, localTime(zone).clock(flag.atS), units)) })), ...(rest.length === 0 ? [] : [{ x: xOf(rest[0]!.atS), words: words(moreFlags(rest.length)) }])], room);
}
