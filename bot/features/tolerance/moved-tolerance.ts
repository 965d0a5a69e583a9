import { bedStakes, toleranceOf, tripsHeld, type Greenhouse, type ToleranceNights } from '../../../engine/index.js';
import { TOLERANCE_MOVED, withMoved, type ToleranceView } from '../../text/tolerance-text.js';

/** Keeps a word of the grower, and says in the same breath how it moves the weights, where it does. */
export async function keptWithMove(keep: () => Promise<string>, { greenhouse, nights }: { readonly greenhouse: Greenhouse; readonly nights: () => Promise<ToleranceNights> }): Promise<string> {
  const before = await nights();
  const said = await keep();
  const after = await nights();
  const weigh = (some: ToleranceNights): ReturnType<typeof toleranceOf> => toleranceOf(greenhouse.grower, some);
  const hasMoved = (one: 'hourWorth' | 'lossWeight'): boolean => weigh(after)[one] > weigh(before)[one];
  return withMoved(said, [...(hasMoved('hourWorth') ? [TOLERANCE_MOVED.left] : []), ...(hasMoved('lossWeight') ? [TOLERANCE_MOVED.lost] : [])]);
}

/** How readily the grower is called out, as it stands. */
export function toleranceView(greenhouse: Greenhouse, nights: ToleranceNights): ToleranceView {
  const stakes = bedStakes(greenhouse);
  const covered = stakes.filter(({ coverMinutes }) => coverMinutes !== null);
  const { trip, hourWorth } = greenhouse.grower;
  const names = [...new Set(stakes.flatMap(({ crops }) => crops.map(({ asked }) => asked)))];
  return {
    trips: tripsHeld(greenhouse, nights).trips,
    trip,
    coverMinutes: covered.length === 0 ? null : covered.reduce((sum, { coverMinutes }) => sum + coverMinutes!, 0),
    hourWorth,
    crops: names.map((crop) => {
      const all = stakes.flatMap(({ crops }) => crops.filter(({ asked }) => asked === crop));
      return { crop, worth: all.reduce((sum, { worth }) => sum + worth, 0), isGiven: all.every(({ isGiven }) => isGiven) };
    }),
    nights,
  };
}
