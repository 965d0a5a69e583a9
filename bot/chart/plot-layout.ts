import { localTime } from '../text/local-time.js';
import { BAND_WORDS, limitWords, lineName, lowTime, lowValue } from '../text/chart-text.js';
import { curveThrough, spanOfY, type Curve, type Span } from './curve.js';
import { placeLabels, type LabelWish, type PlacedLabel } from './label-placement.js';
import type { NightPicture } from './night-picture.js';
import { contains, type Point, type Rectangle } from './rectangle.js';
import { temperatureAxis, type TemperatureAxis } from './temperature-axis.js';
import { fittedText, type TextLine } from './text-line.js';
import { timeAxis, type TimeAxis } from './time-axis.js';

export type LabelRole = 'plant' | 'cover' | 'inside' | 'outside' | 'low' | 'band' | 'damage' | 'killed';

/** A limit of the crop: a line across the plot, or a word at its foot where it lies far below. */
export interface PlacedLimit {
  readonly role: 'damage' | 'killed';
  readonly y: number;
  readonly isOffPlot: boolean;
}

/** The plot of the night with everything in it at its place. */
export interface PlotLayout {
  readonly box: Rectangle;
  readonly times: TimeAxis;
  readonly temps: TemperatureAxis;
  readonly curves: readonly Curve[];
  readonly band: { readonly upper: readonly Point[]; readonly lower: readonly Point[] };
  readonly low: Point;
  readonly limits: readonly PlacedLimit[];
  readonly labels: readonly (PlacedLabel & { readonly role: LabelRole })[];
}

const LABEL_PX = 33;
const LOW_VALUE_PX = 54;
const LOW_TIME_PX = 34;
const BAND_PX = 30;
const MOST_LABEL_PX = 920;
const LINE_GAPS_PX = [10, 24, 48, 84, 130, 190];
const LOW_GAPS_PX = [26, 36, 52, 72, 96, 124, 160, 200];
const LIMIT_GAPS_PX = [5, 16];
const FOOT_GAP_PX = 10;
const FOOT_LINE_PX = 48;
/** A limit is a thick line with teeth. */
const LIMIT_WEIGHT = 1.5;
const LEAST_TICK_PX = 118;
const EDGE_PX = 8;
const ANCHORS = 26;
const LOW_RADIUS_PX = 20;
/** Names of crops and beds are the grower's own words; in a label only their beginning has room. */
const MOST_CROP_PX = 260;
const MOST_BED_PX = 420;

/** A limit is drawn when it lies within this share of the night's range below its coldest, or this many degrees. */
const REACH_SHARE = 0.6;
const REACH_C = 4;
/** Room above and below what is drawn, as a share of the range; and the least range, so that a mild night does not look wild. */
const HEADROOM = 0.07;
const FOOTROOM = 0.13;
/** The words of each limit that lies far below stand at the foot, clear of what is drawn. */
const FOOTROOM_PER_NOTE = 0.11;
const LEAST_RANGE_C = 8;

const shortName = (name: string, mostPx: number): string => fittedText(name, { sizePx: LABEL_PX, weight: 'bold', mostPx }).text;
/** The crop's name as short as labels need it. */
export const shortCropName = (asked: string): string => shortName(asked, MOST_CROP_PX);

export function plotLayout(picture: NightPicture, box: Rectangle): PlotLayout {
  const times = timeAxis({ ...picture.span, zone: picture.zone }, { leftX: box.x, rightX: box.x + box.width, leastTickPx: LEAST_TICK_PX });
  const temps = temperatureAxis({ ...rangeOf(picture), units: picture.units }, { topY: box.y, bottomY: box.y + box.height });
  const at = (timeS: number, tempC: number): Point => ({ x: times.xOf(timeS), y: temps.yOf(tempC) });
  const curves = picture.lines.map(({ name, points }) => curveThrough(name, points.map(({ timeS, tempC }) => at(timeS, tempC))));
  const band = { upper: picture.band.map(({ timeS, highC }) => at(timeS, highC)), lower: picture.band.map(({ timeS, lowC }) => at(timeS, lowC)) };
  const low = at(picture.low.timeS, picture.low.tempC);
  const limits = limitsOf(picture, temps, box);
  const isNight = ({ x }: Point): boolean => x >= times.xOf(picture.night.fromS) && x <= times.xOf(picture.night.toS);
  return { box, times, temps, curves, band, low, limits, labels: labelsOf(picture, { box, curves, band, low, limits, isNight }) };
}

/** The range of the night itself, with the crop's limits where they are near. */
function rangeOf({ lines, band, night, crop }: NightPicture): { lowestC: number; highestC: number } {
  const isNight = ({ timeS }: { timeS: number }): boolean => timeS >= night.fromS && timeS <= night.toS;
  const tempsC = [...lines.flatMap(({ points }) => points.filter(isNight).map(({ tempC }) => tempC)), ...band.filter(isNight).flatMap(({ lowC, highC }) => [lowC, highC])];
  const [coldestC, warmestC] = [Math.min(...tempsC), Math.max(...tempsC)];
  const reachC = coldestC - Math.max(REACH_C, REACH_SHARE * (warmestC - coldestC));
  const limitsC = crop === null ? [] : [crop.damageBeginsC, ...(crop.killedC === null ? [] : [crop.killedC])];
  const near = limitsC.filter((limitC) => limitC >= reachC);
  const [lowC, highC] = [Math.min(coldestC, ...near), Math.max(warmestC, ...near)];
  const missingC = Math.max(0, LEAST_RANGE_C - (highC - lowC)) / 2;
  const rangeC = highC - lowC + 2 * missingC;
  const footroom = FOOTROOM + FOOTROOM_PER_NOTE * (limitsC.length - near.length);
  return { lowestC: lowC - missingC - footroom * rangeC, highestC: highC + missingC + HEADROOM * rangeC };
}

function limitsOf({ crop }: NightPicture, temps: TemperatureAxis, box: Rectangle): readonly PlacedLimit[] {
  if (crop === null) return [];
  const bottomY = box.y + box.height;
  const limit = (role: PlacedLimit['role'], tempC: number): PlacedLimit => ({ role, y: Math.min(bottomY, temps.yOf(tempC)), isOffPlot: tempC < temps.lowestC });
  return [limit('damage', crop.damageBeginsC), ...(crop.killedC === null ? [] : [limit('killed', crop.killedC)])];
}

type PlotParts = Pick<PlotLayout, 'box' | 'curves' | 'band' | 'low' | 'limits'> & { readonly isNight: (point: Point) => boolean };
type RoledWish = LabelWish & { readonly role: LabelRole };

/** The low and the limits first: they are what the picture is for. */
function labelsOf(picture: NightPicture, parts: PlotParts): PlotLayout['labels'] {
  const { box, curves, low, limits } = parts;
  const wishes = [...footNotes(picture, parts), lowWish(picture, parts), ...limitWishes(picture, parts), ...lineWishes(picture, parts), bandWish(parts)];
  const inside = { x: box.x + EDGE_PX, y: box.y + EDGE_PX, width: box.width - 2 * EDGE_PX, height: box.height - 2 * EDGE_PX };
  const lowDot = { x: low.x - LOW_RADIUS_PX, y: low.y - LOW_RADIUS_PX, width: 2 * LOW_RADIUS_PX, height: 2 * LOW_RADIUS_PX };
  const limitCurves = limits.filter(({ isOffPlot }) => !isOffPlot).map(({ role, y }) => curveThrough(role, acrossAt(box, y), LIMIT_WEIGHT));
  const placed = placeLabels(wishes, { inside, taken: [lowDot], curves: [...curves, ...limitCurves] });
  return wishes.flatMap(({ role }, i) => (placed[i] ? [{ ...placed[i], role }] : []));
}

/** Points evenly over the plot at one height, from left to right. */
const acrossAt = (box: Rectangle, y: number): readonly Point[] => Array.from({ length: ANCHORS + 1 }, (_, i) => ({ x: box.x + (i / ANCHORS) * box.width, y }));
const thinned = (points: readonly Point[]): readonly Point[] => points.filter((_, i) => i % Math.max(1, Math.floor(points.length / ANCHORS)) === 0);
const bold = (text: string, sizePx: number): TextLine => fittedText(text, { sizePx, weight: 'bold', mostPx: MOST_LABEL_PX });

function lowWish({ low: { tempC, timeS }, units, zone }: NightPicture, { low }: PlotParts): RoledWish {
  const lines = [bold(lowValue(tempC, units), LOW_VALUE_PX), bold(lowTime(localTime(zone).clock(timeS)), LOW_TIME_PX)];
  return { role: 'low', curve: 'plant', anchors: [low], gapsPx: LOW_GAPS_PX, sides: ['below', 'above'], lines };
}

const wordsOfLimit = ({ crop, units }: NightPicture, { role, isOffPlot }: PlacedLimit): TextLine => {
  const [does, tempC] = role === 'damage' ? (['harm', crop!.damageBeginsC] as const) : (['kill', crop!.killedC!] as const);
  return bold(limitWords({ cropName: shortCropName(crop!.asked), does, tempC, isFarBelow: isOffPlot }, units), LABEL_PX);
};

/** Limits that lie far below are said in the left corner at the foot, the lowest lowest. */
const footNotes = (picture: NightPicture, { box, limits }: PlotParts): readonly RoledWish[] =>
  [...limits].reverse().filter(({ isOffPlot }) => isOffPlot).map((limit, i): RoledWish => {
    const line = wordsOfLimit(picture, limit);
    return { role: limit.role, curve: null, anchors: [{ x: box.x + EDGE_PX + line.widthPx / 2, y: box.y + box.height }], gapsPx: [FOOT_GAP_PX + i * FOOT_LINE_PX], sides: ['above'], lines: [line] };
  });

/** The word of a limit lies on its line, that of the harm above it and that of the death below, so that both have room. */
const limitWishes = (picture: NightPicture, { box, limits }: PlotParts): readonly RoledWish[] =>
  limits.filter(({ isOffPlot }) => !isOffPlot).map((limit): RoledWish => ({ role: limit.role, curve: limit.role, anchors: acrossAt(box, limit.y), gapsPx: LIMIT_GAPS_PX, sides: limit.role === 'damage' ? ['above', 'below'] : ['below', 'above'], lines: [wordsOfLimit(picture, limit)] }));

function lineWishes({ lines, crop }: NightPicture, { box, curves }: PlotParts): readonly RoledWish[] {
  return lines.map((line, i): RoledWish => {
    const words = lineName(line, crop, { crop: shortCropName(crop?.asked ?? ''), bed: shortName(line.place.bed ?? '', MOST_BED_PX) });
    return { role: line.name, curve: line.name, anchors: thinned(curves[i]!.points.filter((point) => contains(box, point))), gapsPx: LINE_GAPS_PX, sides: ['above', 'below'], lines: [bold(words, LABEL_PX)] };
  });
}

/** The words of the band stand in it, between its edge and the plant's line, where most room is left over their whole width. */
function bandWish({ box, band, curves, isNight }: PlotParts): RoledWish {
  const line = fittedText(BAND_WORDS, { sizePx: BAND_PX, weight: 'regular', mostPx: MOST_LABEL_PX });
  const [upper, lower, plant] = [curveThrough('upper', band.upper), curveThrough('lower', band.lower), curves[0]!];
  const anchors = thinned(plant.points.filter((point) => contains(box, point) && isNight(point))).flatMap(({ x }) => {
    const [up, middle, down] = [upper, plant, lower].map((curve) => spanOfY(curve, x - line.widthPx / 2, x + line.widthPx / 2)!) as [Span, Span, Span];
    return [{ topY: up.bottomY, bottomY: middle.topY }, { topY: middle.bottomY, bottomY: down.topY }].map(({ topY, bottomY }) => ({ x, y: (topY + bottomY - line.heightPx) / 2, roomPx: bottomY - topY }));
  });
  return { role: 'band', curve: null, anchors: anchors.sort((a, b) => b.roomPx - a.roomPx), gapsPx: [0], sides: ['below'], lines: [line] };
}
