import type { Greenhouse } from '../../../engine/index.js';
import type { PlainLength } from './file-quantities.js';
import type { DraftFile, Pending, SizeDraft, Thermometer, Topic } from './state.js';

/** All that the lines of a summary are made of. What is not known yet is filled in `greenhouse` and must not be shown. */
export interface SummaryView {
  readonly file: DraftFile;
  readonly greenhouse: Greenhouse;
  /** The size as it was said, while it is not whole. */
  readonly size: SizeDraft;
  /** It is known in what plain numbers of the size are. */
  readonly isPlainSure: boolean;
  /** In what lengths are spoken of first. */
  readonly primary: PlainLength;
  readonly temperatureUnits: 'C' | 'F';
  readonly placeName: string | null;
  readonly thermometers: readonly Thermometer[];
  readonly pending: readonly Pending[];
  readonly told: Partial<Readonly<Record<Topic, 'told' | 'none' | 'skipped'>>>;
}
