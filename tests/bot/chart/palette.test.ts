import { describe, expect, it } from 'vitest';
import { LINE_STYLES, PALETTE, TAG_STYLES } from '../../../bot/chart/palette.js';

/** Relative luminance and contrast of WCAG 2.2. */
function luminance(color: string): number {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16) / 255).map((share) => (share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4));
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
function contrast(a: string, b: string): number {
  const [lighter, darker] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (lighter! + 0.05) / (darker! + 0.05);
}

const PLOT_GROUNDS = [PALETTE.paper, PALETTE.night, PALETTE.day];
const WORDS: readonly (readonly [string, string])[] = [
  ...[...Object.values(LINE_STYLES).map(({ color }) => color), PALETTE.danger, PALETTE.killed].flatMap((color) => PLOT_GROUNDS.map((ground) => [color, ground] as const)),
  ...[PALETTE.header.top, PALETTE.header.bottom].flatMap((ground) => [[PALETTE.onHeader, ground], [PALETTE.quietOnHeader, ground]] as const),
  ...Object.values(TAG_STYLES).map(({ fill, ink }) => [ink, fill] as const),
  [PALETTE.onSky, PALETTE.nightSky], [PALETTE.onMark, PALETTE.mark], [PALETTE.ink, PALETTE.paper], [PALETTE.quietInk, PALETTE.paper], [PALETTE.ink, PALETTE.flag],
];

describe('colours', () => {
  it('contrast of black on white is 21, as the standard says', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });

  it.each(WORDS)('%s can be read on %s', (ink, ground) => {
    expect(contrast(ink, ground)).toBeGreaterThanOrEqual(4.5);
  });

  it('no line is known by its colour alone', () => {
    const dashes = Object.values(LINE_STYLES).map(({ dash }) => dash);
    expect(new Set(dashes).size).toBe(dashes.length);
  });

  it('the plant has the heaviest line', () => {
    const { plant, ...others } = LINE_STYLES;
    for (const { widthPx } of Object.values(others)) expect(plant.widthPx).toBeGreaterThan(widthPx);
  });
});
