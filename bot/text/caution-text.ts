import type { CautionCode } from '../features/evening/advisory.js';

const LOCAL_RULES = 'Follow the maker\'s instructions, your local codes, and a licensed electrician or gas fitter where they ask for one.';

const CAUTIONS = {
  'heater-electric': `Electric heat: use an outlet with ground-fault protection (GFCI or RCD), an outdoor-rated heavy cord with a drip loop, at most 80 % of the circuit, and keep 1 m (3 ft) from film and covers. ${LOCAL_RULES}`,
  'fan-electric': `Fan in a damp house: ground-fault protection (GFCI or RCD), a fan and cord made for wet places, no hand on it while it runs. ${LOCAL_RULES}`,
  'flame-vented': `Flame in the house: check that the flue draws and fresh air comes in, keep 1 m (3 ft) from film and covers, fit a carbon monoxide alarm, never sleep in there. Headache or dizziness: get out and call for help. ${LOCAL_RULES}`,
  'flame-unvented': `Unvented flame: it gives off carbon monoxide, ethylene and water, and can kill people and crops in a closed house. Leave an opening for fresh air, fit a carbon monoxide alarm, keep 1 m (3 ft) from film and covers, refuel cold and outside, never sleep in there. Headache or dizziness: get out and call for help. ${LOCAL_RULES}`,
  'flame-not-advised': 'Your burner is left out of the plan until you have read the safety words for a flame in a closed house (README, Cautions) and set "safetyRead" in the greenhouse file.',
  'frozen-leaves': 'Do not touch, bend or cut frozen leaves. Use what froze soon, cook it rather than can it, and throw away what is mushy.',
  'snow-on-film': 'Snow: pull it down from the ground with a soft broom. No ladder on ice, nobody inside while it is heavy, leave if the frame groans.',
  'not-a-promise': 'This is an estimate, not a promise. Nobody\'s safety should rest on it.',
} as const satisfies Record<CautionCode, string>;

export const cautionText = (code: CautionCode): string => CAUTIONS[code];
