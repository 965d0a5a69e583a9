import type { Signal } from '../../language/house/signals.js';
import * as say from '../../text/describe-text.js';
import { missingText, skippedText } from '../../text/describe-summary-text.js';
import type { DescribeContext } from './apply.js';
import type { Taken } from './taken.js';
import { isFirst, missingFirst, nextAsk } from './next-ask.js';
import { FRESH, TOPICS, type Ask, type DescribeState } from './state.js';
import { LINES, lineText, summaryOf, viewOf } from './summary.js';

const nothing = (state: DescribeState, parts: readonly string[], more: Partial<Taken> = {}): Taken => ({ state, parts, lines: [], problems: [], understood: true, ...more });

/** Skip, back, later, done and the like; null where the word says something else here. */
export function steer(state: DescribeState, signal: Signal, ask: Ask | null, context: DescribeContext): Taken | null {
  if (state.restarting) return signal.kind === 'yes' ? nothing({ ...FRESH, mode: state.mode }, [say.STARTED_OVER]) : nothing({ ...state, restarting: false }, []);
  switch (signal.kind) {
    case 'later':
      return nothing({ ...state, paused: true }, [say.PAUSED], { isWhole: true });
    case 'done':
      return done(state);
    case 'summary':
      return state.mode === 'change' && ask === null ? nothing({ ...state, asking: null }, [summaryOf(viewOf(state))], { isWhole: true }) : nothing(state, [summaryOf(viewOf(state))]);
    case 'line':
    case 'number': {
      if (signal.kind === 'number' && ask !== null) return null;
      const line = LINES[(signal.kind === 'line' ? signal.line : signal.number) - 1];
      if (line === undefined) return nothing(state, [summaryOf(viewOf(state))]);
      return line === 'other' ? nothing(state, [say.WHAT_TO_CHANGE], { isWhole: true }) : nothing(state, [], { ask: { topic: line, detail: 'all' } });
    }
    case 'restart':
      return nothing({ ...state, restarting: true }, [say.ASK_START_OVER], { isWhole: true });
    case 'start':
      return ask === null ? null : nothing(state, []);
    case 'help':
      return ask === null ? null : nothing(state, [say.WHY[ask.topic]], { ask });
    case 'back':
      return back(state, ask);
    case 'skip':
    case 'unknown':
      return ask === null ? null : skip(state, ask, signal.kind, context);
    case 'yes':
    case 'no':
      return ask === null ? null : agree(state, ask, signal.kind);
  }
}

function done(state: DescribeState): Taken {
  const missing = missingFirst(state);
  if (missing.length > 0) return nothing(state, [missingText(missing)]);
  const told = { ...state.told };
  for (const topic of TOPICS) told[topic] ??= 'skipped';
  const parked = state.pending.map((one) => ({ ...one, parked: true }));
  return nothing({ ...state, told, pending: parked, safetyDeclined: true, hangAsked: true }, []);
}

/** The question before this one again; what was answered stays until it is answered anew. */
function back(state: DescribeState, ask: Ask | null): Taken {
  const at = ask === null ? TOPICS.length : TOPICS.indexOf(ask.topic);
  const before = TOPICS[at - 1];
  return before === undefined ? nothing(state, [say.NO_BACK]) : nothing(state, [], { ask: { topic: before, detail: 'all' } });
}

function skip(state: DescribeState, ask: Ask, kind: 'skip' | 'unknown', context: DescribeContext): Taken {
  if (ask.detail === 'side') return nothing({ ...state, size: { ...state.size, sideSkipped: true } }, [], { lines: ['size'] });
  if (ask.detail === 'height' && kind === 'unknown' && state.size.shape === 'half-round') return nothing(state, [], { ask: { topic: 'size', detail: 'likely-height' } });
  if (ask.detail === 'height-shape' && kind === 'unknown') return nothing(state, [], { ask: { topic: 'size', detail: 'shape' } });
  if (isFirst(ask.topic)) return nothing(state, [say.NEEDED_FIRST, say.WHY[ask.topic]], { ask });
  if (ask.detail === 'safety') return nothing({ ...state, safetyDeclined: true }, []);
  if (ask.detail === 'hang') return nothing({ ...state, hangAsked: true }, []);
  if (ask.detail === 'all') {
    const next: DescribeState = { ...state, told: { ...state.told, [ask.topic]: state.told[ask.topic] ?? 'skipped' } };
    return nothing(next, [skippedText(ask.topic, lineText(ask.topic, viewOf(next)))]);
  }
  return parked(state, ask, context);
}

/** A thing that lacks something is kept without being counted on. */
function parked(state: DescribeState, ask: Ask, context: DescribeContext): Taken {
  const waiting = state.pending.find((one) => !one.parked && nextAsk({ ...state, pending: [one] }, context)?.detail === ask.detail);
  const pending = state.pending.map((one) => (one === waiting ? { ...one, parked: true } : one));
  return nothing({ ...state, pending }, waiting === undefined ? [] : [lineText(ask.topic, viewOf({ ...state, pending }))]);
}

function agree(state: DescribeState, ask: Ask, kind: 'yes' | 'no'): Taken | null {
  if (ask.detail === 'safety') {
    const { heater } = state.file;
    return kind === 'yes' && heater !== undefined ? nothing({ ...state, file: { ...state.file, heater: { ...heater, safetyRead: true } } }, [], { lines: ['heater'] }) : nothing({ ...state, safetyDeclined: true }, []);
  }
  if (ask.detail === 'likely-height') return nothing(state, [], { ask: { topic: 'size', detail: 'height' } });
  if (ask.topic === 'units' && kind === 'yes') return nothing({ ...state, told: { ...state.told, units: 'told' } }, [], { lines: ['units'] });
  if (kind === 'yes') return nothing(state, [say.TELL_MORE], { ask });
  if (isFirst(ask.topic)) return nothing(state, [say.NEEDED_FIRST], { ask });
  if (ask.topic === 'crops' || ask.topic === 'soil' || ask.topic === 'evening') return nothing({ ...state, told: { ...state.told, [ask.topic]: 'skipped' } }, []);
  return ask.topic === 'units' ? nothing(state, [], { ask }) : null;
}
