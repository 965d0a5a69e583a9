import type { Fact } from '../../language/house/house-fact.js';
import { lackOf, type DescribeContext } from './apply.js';
import { needsSafety } from './put-heat.js';
import { plainUnit } from './size.js';
import { FIRST_TOPICS, TOPICS, type Ask, type DescribeState, type Detail, type Topic } from './state.js';
import { lineOf } from './line-of.js';

/** The topic under which a thing that is only noted is asked about. */
const topicOf = (fact: Fact): Topic => {
  const line = lineOf(fact);
  return line === 'other' ? 'air' : line;
};

/** What to ask next; null when nothing is left. */
export function nextAsk(state: DescribeState, context: DescribeContext): Ask | null {
  if (state.choices.length > 0) return { topic: 'place', detail: 'choice' };
  const first = state.file.place === undefined ? ({ topic: 'place', detail: 'all' } as const) : (sizeAsk(state) ?? layersAsk(state));
  if (first !== null) return first;
  const open = openAsk(state, context);
  if (open !== null) return open;
  if (needsSafety(state.file) && !state.safetyDeclined) return { topic: 'heater', detail: 'safety' };
  if (!state.hangAsked && state.thermometers.some(({ heightM, sunlit }) => heightM === null && sunlit === null)) return { topic: 'thermometers', detail: 'hang' };
  if (state.mode === 'change') return null;
  const topic = TOPICS.find((one) => !isFirst(one) && state.told[one] === undefined);
  return topic === undefined ? null : { topic, detail: 'all' };
}

export const isFirst = (topic: Topic): boolean => (FIRST_TOPICS as readonly Topic[]).includes(topic);

function sizeAsk({ size, habits }: DescribeState): Ask | null {
  const ask = (detail: Detail): Ask => ({ topic: 'size', detail });
  if (size.width === undefined || size.length === undefined) return ask('all');
  const unit = plainUnit(size, habits?.lengths ?? null);
  if (unit !== null && 'asks' in unit) return ask('plain-unit');
  if (size.height === undefined) return ask(size.shape === undefined ? 'height-shape' : 'height');
  if (size.shape === undefined) return ask('shape');
  return size.shape !== 'half-round' && size.side === undefined && size.sideSkipped !== true ? ask('side') : null;
}

function layersAsk({ file, pending }: DescribeState): Ask | null {
  if (file.layers !== undefined) return null;
  return { topic: 'layers', detail: pending.some(({ fact }) => fact.about === 'layers') ? 'count' : 'all' };
}

/** The first thing that was said and lacks something. */
function openAsk(state: DescribeState, context: DescribeContext): Ask | null {
  for (const { fact, parked } of state.pending) {
    const detail = parked || fact.about === 'layers' ? null : lackOf(state, fact, context);
    if (detail !== null && detail !== 'place-first') return { topic: topicOf(fact), detail };
  }
  return null;
}

/** Which of the first three are still missing. */
export const missingFirst = (state: DescribeState): readonly Topic[] => FIRST_TOPICS.filter((topic) => (topic === 'size' ? sizeAsk(state) !== null : topic === 'place' ? state.file.place === undefined : layersAsk(state) !== null));
