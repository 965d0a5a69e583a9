import type { CautionCode } from '../features/evening/advisory.js';

const LOCAL_RULES = 'Follow the maker\'s instructions, your local codes, and a licensed electrician or gas fitter where they ask for one.';

const FLUED = `Flame in the house: check that the flue draws and fresh air comes in, keep 1 m (3 ft) from film and covers, fit a carbon monoxide alarm, never sleep in there. Headache or dizziness: get out and call for help. ${LOCAL_RULES}`;

const CAUTIONS = {
  'heater-electric': `Electric heat: use an outlet with ground-fault protection (GFCI or RCD), an outdoor-rated heavy cord with a drip loop, at most 80 % of the circuit, and keep 1 m (3 ft) from film and covers. ${LOCAL_RULES}`,
  'fan-electric': `Fan in a damp house: ground-fault protection (GFCI or RCD), a fan and cord made for wet places, no hand on it while it runs. ${LOCAL_RULES}`,
  'flame-vented': FLUED,
  'flame-unvented': `Unvented flame: it gives off carbon monoxide, ethylene and water, and can kill people and crops in a closed house. I do not advise it. While it burns leave an opening for fresh air, whatever the plan says of vents, fit a carbon monoxide alarm, keep 1 m (3 ft) from film and covers, refuel cold and outside, never sleep in there. Headache or dizziness: get out and call for help. ${LOCAL_RULES}`,
  'unvented-left-out': 'Your burner has no flue, so it is in no plan of mine: in a closed house its gas can kill. Electric heat or a flue is the safe way.',
  'flame-not-advised': `Your burner stays out of the plan until you have read this and said "I have read the safety words". ${FLUED}`,
  'frozen-leaves': 'Do not touch, bend or cut frozen leaves. Use what froze soon, cook it rather than can it, and throw away what is mushy.',
  'snow-on-film': 'Snow: pull it down from the ground with a soft broom. No ladder on ice, nobody inside while it is heavy, leave if the frame groans.',
  'not-a-promise': 'This is an estimate, not a promise. Nobody\'s safety should rest on it.',
} as const satisfies Record<CautionCode, string>;

export const cautionText = (code: CautionCode): string => CAUTIONS[code];
