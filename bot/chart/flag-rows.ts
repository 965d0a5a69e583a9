import type { Rectangle } from './rectangle.js';
import { textAt, type PlacedText, type TextLine } from './text-line.js';

/** A flag below the time axis: its pole at the time, its cloth with the words on a row of its own. */
export interface PlacedFlag {
  readonly poleX: number;
  readonly cloth: Rectangle;
  readonly words: PlacedText;
}

export const FLAG_ROW_PX = 62;
const CLOTH_PX = 52;
const PADDING_PX = 16;

/** Width that the words of a flag may take. */
export const wordsRoomPx = (room: { readonly leftX: number; readonly rightX: number }): number => room.rightX - room.leftX - 2 * PADDING_PX;

/** Flags in order of time: the earliest hangs lowest, so that no pole runs through the words of a later one. */
export function flagRows(flags: readonly { readonly x: number; readonly words: TextLine }[], room: { readonly leftX: number; readonly rightX: number; readonly topY: number }): readonly PlacedFlag[] {
  return flags.map(({ x, words }, i) => {
    const width = words.widthPx + 2 * PADDING_PX;
    const y = room.topY + (flags.length - 1 - i) * FLAG_ROW_PX + (FLAG_ROW_PX - CLOTH_PX);
    // The cloth flies to the right; where the picture ends it is pulled back over its pole.
    const clothX = Math.max(room.leftX, Math.min(x, room.rightX - width));
    return { poleX: x, cloth: { x: clothX, y, width, height: CLOTH_PX }, words: textAt(words, clothX + PADDING_PX, y + (CLOTH_PX - words.heightPx) / 2) };
  });
}
