import { spanOfY, type Curve } from './curve.js';
import { grown, lies, overlap, type Point, type Rectangle } from './rectangle.js';
import { textAt, type PlacedText, type TextLine } from './text-line.js';

/** Lines of text that belong together and to one place of the picture. */
export interface LabelWish {
  readonly lines: readonly TextLine[];
  /** The curve that it names; null where it names none. */
  readonly curve: string | null;
  /** Points at which it may stand, best first. */
  readonly anchors: readonly Point[];
  /** How far from its point it may stand, and on which sides, best first. */
  readonly gapsPx: readonly number[];
  readonly sides: readonly ('above' | 'below')[];
}

export interface PlacedLabel {
  readonly lines: readonly PlacedText[];
  readonly box: Rectangle;
  /** A thin line to its point, for a label that stands far off; no label stands on it. */
  readonly leader: Rectangle | null;
}

/** Where along the label its point lies: in the middle, or towards an end. */
const SHIFTS = [0.5, 0.75, 0.25, 0.97, 0.03] as const;
/** Where a crowded plot leaves no place near by. */
const ANY_GAP_PX = Array.from({ length: 24 }, (_, i) => 20 * (i + 1));
const LEADER_FROM_PX = 40;
const LEADER_PX = 3;
/** Room around letters: half a thick line and a little. */
const CLEAR_PX = 7;
// What is worse than what (project estimate): a line through the letters, a label nearer to another line than to its own, a far label,
// one beside its point, one on its second side, one at a less good point.
const COST = { crossing: 60, nearerToOther: 40, perGapPx: 0.35, perShift: 3, otherSide: 6, worstAnchor: 26 } as const;

/**
 * Places for labels, in order of their weight: none covers another, a leader or a box that is taken, none leaves the room; of the places
 * that are left, the one with the fewest lines behind the letters. A label for which there is no place is left out (null).
 */
export function placeLabels(wishes: readonly LabelWish[], room: { readonly inside: Rectangle; readonly taken: readonly Rectangle[]; readonly curves: readonly Curve[] }): readonly (PlacedLabel | null)[] {
  const taken = [...room.taken];
  const isFree = ({ box, leader }: Candidate): boolean => lies(box, room.inside) && !taken.some((other) => overlap(grown(box, CLEAR_PX), other) || (leader !== null && overlap(leader, other)));
  const cheapest = (wish: LabelWish): Candidate | null => {
    let best: Candidate | null = null;
    let least = Infinity;
    for (const candidate of candidates(wish)) {
      if (candidate.cost >= least || !isFree(candidate)) continue;
      const cost = candidate.cost + crossings(candidate, wish, room.curves);
      if (cost < least) [best, least] = [candidate, cost];
    }
    return best;
  };
  return wishes.map((wish) => {
    // Where all near places are taken a label goes far off with a leader, and as a last resort without one.
    const anywhere: LabelWish = { ...wish, gapsPx: ANY_GAP_PX, sides: ['above', 'below'] };
    const best = cheapest(wish) ?? cheapest(anywhere) ?? cheapest({ ...anywhere, curve: null });
    if (best === null) return null;
    taken.push(best.box, ...(best.leader === null ? [] : [best.leader]));
    return { lines: stacked(wish.lines, best.box), box: best.box, leader: best.leader };
  });
}

interface Candidate {
  readonly box: Rectangle;
  readonly leader: Rectangle | null;
  readonly gapPx: number;
  readonly cost: number;
}

function candidates({ lines, curve, anchors, gapsPx, sides }: LabelWish): readonly Candidate[] {
  const width = Math.max(...lines.map(({ widthPx }) => widthPx));
  const height = lines.reduce((sum, { heightPx }) => sum + heightPx, 0);
  return anchors.flatMap(({ x, y }, rank) =>
    gapsPx.flatMap((gapPx) =>
      sides.flatMap((side, second) =>
        SHIFTS.map((shift, beside): Candidate => {
          const box = { x: x - shift * width, y: side === 'above' ? y - gapPx - height : y + gapPx, width, height };
          const leader = curve === null || gapPx < LEADER_FROM_PX ? null : { x: x - LEADER_PX / 2, y: side === 'above' ? y - gapPx : y, width: LEADER_PX, height: gapPx };
          return { box, leader, gapPx, cost: (rank / anchors.length) * COST.worstAnchor + gapPx * COST.perGapPx + second * COST.otherSide + beside * COST.perShift };
        }),
      ),
    ),
  );
}

/** Lines behind the letters, and lines that the reader might take the label to name. */
function crossings({ box, gapPx }: Candidate, { curve }: LabelWish, curves: readonly Curve[]): number {
  const bottom = box.y + box.height;
  return curves.reduce((sum, other) => {
    const span = spanOfY(other, box.x - CLEAR_PX, box.x + box.width + CLEAR_PX);
    if (span === null) return sum;
    const apartPx = Math.max(span.topY - bottom, box.y - span.bottomY);
    if (apartPx <= CLEAR_PX) return sum + COST.crossing * other.weight;
    return curve !== null && other.name !== curve && apartPx < gapPx + CLEAR_PX ? sum + COST.nearerToOther : sum;
  }, 0);
}

function stacked(lines: readonly TextLine[], box: Rectangle): readonly PlacedText[] {
  let y = box.y;
  return lines.map((line) => {
    const text = textAt(line, box.x + (box.width - line.widthPx) / 2, y);
    y += line.heightPx;
    return text;
  });
}
