import type { Verdict } from '../../engine/index.js';
import type { LineName } from './night-picture.js';

/** Colours of dusk. All words have at least 4.5 to 1 against what they stand on (WCAG 2.2, 1.4.3). */
export const PALETTE = {
  paper: '#fffdf8',
  ink: '#1d1833',
  quietInk: '#514a68',
  header: { top: '#171430', bottom: '#3b2a5c' },
  onHeader: '#ffffff',
  quietOnHeader: '#d9d2ec',
  day: '#fff3d6',
  night: '#edebf6',
  nightSky: '#221c46',
  duskGlow: '#e2793a',
  dayGlow: '#ffd98a',
  onSky: '#ffffff',
  grid: '#cfcadd',
  freezing: '#7d7796',
  danger: '#a63400',
  killed: '#6b0f1a',
  mark: '#ffd166',
  onMark: '#1d1833',
  flag: '#fff3d6',
  flagEdge: '#8a5a00',
} as const;

interface LineStyle {
  readonly color: string;
  readonly widthPx: number;
  /** Lines differ by their dashes too: they must be told apart without colour. */
  readonly dash: string;
}

export const LINE_STYLES = {
  plant: { color: '#3a1d73', widthPx: 9, dash: 'none' },
  cover: { color: '#00665c', widthPx: 6, dash: '30 12' },
  inside: { color: '#8a2f6b', widthPx: 5, dash: '14 10' },
  outside: { color: '#1f5f8b', widthPx: 7, dash: '1 14' },
} as const satisfies Record<LineName, LineStyle>;

export const BAND = { color: '#6f56b8', opacity: 0.26 } as const;

/** What the tag of a verdict looks like; the word in it says the same. */
export const TAG_STYLES = {
  safe: { fill: '#bfe8df', ink: '#08352f' },
  watch: { fill: '#ffe08a', ink: '#3b2b00' },
  'at-risk': { fill: '#ffb27a', ink: '#401500' },
  'likely-lost': { fill: '#ff9c9c', ink: '#4a0008' },
} as const satisfies Record<Verdict, { readonly fill: string; readonly ink: string }>;
