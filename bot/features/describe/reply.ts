import { HEATER_KINDS } from '../../../engine/index.js';
import type { Button, Outgoing } from '../../chat.js';
import { questionText, type Question, type QuestionWords } from '../../text/describe-text.js';
import { metresOf } from './file-quantities.js';
import { plainUnit } from './size.js';
import type { Ask, DescribeState } from './state.js';

const BUTTON_MARK = 'describe';
/** A button's id comes back in a press and holds no more. */
const MOST_BYTES = 64;
const MOST_LABEL_LETTERS = 40;

/** What a pressed button stood for: the question it was under, and words. */
export interface Pressed {
  readonly topic: string;
  readonly detail: string;
  readonly says: string;
}

export function readButton(id: string): Pressed | null {
  const [mark, topic, detail, ...says] = id.split(':');
  return mark === BUTTON_MARK && topic !== undefined && detail !== undefined ? { topic, detail, says: says.join(':') } : null;
}

const button = ({ topic, detail }: Ask, label: string, says: string): Button => ({ id: `${BUTTON_MARK}:${topic}:${detail}:${says}`.slice(0, MOST_BYTES), label: label.slice(0, MOST_LABEL_LETTERS) });

/** The question as it goes out: its words, with buttons for the usual answers. */
export function questionFor(ask: Ask, state: DescribeState): Outgoing {
  const question: Question = questionText(ask, wordsFor(state));
  return {
    text: question.text,
    ...(question.choices === undefined ? {} : { buttons: question.choices.map((row) => row.map(({ label, says }) => button(ask, label, says))) }),
    ...(question.asksForLocation === true ? { asksForLocation: true } : {}),
  };
}

function wordsFor(state: DescribeState): QuestionWords {
  const { size, habits, file, pending } = state;
  const unit = plainUnit(size, habits?.lengths ?? null);
  const primary = unit !== null && 'unit' in unit ? unit.unit : habits?.lengths === 'ft' ? 'ft' : 'm';
  const width = size.width === undefined ? null : metresOf(size.width, primary);
  const strange = pending.flatMap(({ fact }) => (fact.about === 'bed' ? fact.crops : [])).find(({ known, hardiness }) => !known && hardiness === undefined);
  const layers = pending.find(({ fact }) => fact.about === 'layers')?.fact;
  return {
    primary,
    temperatureUnits: file.grower?.units ?? habits?.temperature ?? 'C',
    strangeCrop: strange?.name ?? null,
    beds: (file.beds ?? []).map(({ name }) => name),
    places: state.choices,
    plainSize: [size.width, size.length, ...(size.height === undefined ? [] : [size.height])].flatMap((quantity) => (quantity !== undefined && quantity.unit === null ? [quantity.value] : [])),
    likelyHeightM: width === null ? null : width / 2,
    flame: file.heater !== undefined && HEATER_KINDS[file.heater.kind].combustion === 'vented' ? 'flame-vented' : 'flame-unvented',
    layersAre: layers?.about === 'layers' && layers.films[0] !== undefined ? (layers.films[0] === 'standard' ? 'film' : `${layers.films[0]} film`) : null,
  };
}

/** Parts of a message under each other, empty ones left out; buttons come with the last. */
export function joined(parts: readonly string[], last: Outgoing | null): Outgoing {
  const text = [...parts, ...(last === null ? [] : [last.text])].filter((part) => part !== '').join('\n');
  return { ...(last ?? {}), text };
}
