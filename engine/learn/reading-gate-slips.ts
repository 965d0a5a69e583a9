/** A number that may have been meant where another was typed, and how likely the slip is that leads from it. */
export interface TypingSlip {
  readonly meant: number;
  readonly chance: number;
}

/** How often a typed number carries each slip (priors of this project; together a third of what the gate allows for errors that have no name). */
const SWAPPED = 0.003;
const ONE_WRONG = 0.001;
const LEFT_OUT = 0.0005;
const DOUBLED = 0.0005;
const DIGITS = [...'0123456789'];

/**
 * Numbers that one slip of the finger turns into what was typed: two digits swapped, one wrong, one left out, one typed twice.
 * Units: as typed; chances of the slip.
 * Valid: any finite number with at most one decimal.
 * Outside: not applicable.
 * Source: error kinds of keyed digits; shares are priors of this project.
 */
export function typingSlips(typed: number): readonly TypingSlip[] {
  const written = String(Math.abs(Math.round(typed * 10) / 10));
  const sign = typed < 0 ? -1 : 1;
  const at = [...written].flatMap((mark, place) => (mark === '.' ? [] : [place]));
  const swapped = at.slice(1).map((right, n) => exchanged(written, at[n]!, right));
  const wrong = at.flatMap((place) => DIGITS.map((digit) => written.slice(0, place) + digit + written.slice(place + 1)));
  const leftOut = [...at, written.length].flatMap((place) => DIGITS.map((digit) => written.slice(0, place) + digit + written.slice(place)));
  const doubled = at.filter((place) => place > 0 && written[place] === written[place - 1]).map((place) => written.slice(0, place) + written.slice(place + 1));
  const found = new Map<number, number>();
  const add = (all: readonly string[], chance: number, ways: number): void => {
    // "058" is not how anybody writes 58.
    const whole = new Set(all.filter((text) => !/^0\d/u.test(text)).map((text) => sign * Number(text)));
    for (const meant of whole) if (meant !== typed) found.set(meant, (found.get(meant) ?? 0) + chance / ways);
  };
  add(swapped, SWAPPED, 1);
  add(wrong, ONE_WRONG, (DIGITS.length - 1) * at.length);
  add(leftOut, LEFT_OUT, at.length + 1);
  add(doubled, DOUBLED, at.length);
  return [...found].map(([meant, chance]) => ({ meant, chance }));
}

const exchanged = (written: string, left: number, right: number): string =>
  written.slice(0, left) + written[right]! + written.slice(left + 1, right) + written[left]! + written.slice(right + 1);
