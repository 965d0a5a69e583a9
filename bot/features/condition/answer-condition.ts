import { checkGreenhouse, type GreenhouseFile } from '../../../engine/index.js';
import type { ConditionItem, Meaning } from '../../language/intent.js';
import type { Records } from '../../ports.js';
import { conditionRefused, conditionText } from '../../text/condition-text.js';
import type { Advisory } from '../evening/advisory.js';
import type { EveningSubject } from '../evening/issue-advisory.js';
import type { Supposing } from '../evening/supposed-night.js';
import type { WorkedOutEvening } from '../evening/work-out-evening.js';

type Condition = Extract<Meaning, { kind: 'condition' }>;
type Now = NonNullable<GreenhouseFile['now']>;

/** What is taken where no size is said (project estimates). */
const SNOW = '10 cm';
const HOLE = '0.2 m2';
const LENGTH = /\b\d+(?:[.,]\d+)?\s*(?:cm|m|in|inch|inches|ft|feet|foot)\b/iu;
const AREA = /\b\d+(?:[.,]\d+)?\s*(?:m2|sq m|sq ft|ft2)(?![a-z0-9])/iu;

const WRONG: Readonly<Record<ConditionItem, (text: string) => Now>> = {
  snow: (text) => ({ snowOnRoof: LENGTH.exec(text)?.[0] ?? SNOW }),
  'power-out': () => ({ powerOut: true }),
  'blower-off': () => ({ blowerOff: true }),
  'torn-film': (text) => ({ tornFilm: AREA.exec(text)?.[0] ?? HOLE }),
  'door-open': () => ({ doorOpen: true }),
  'fuel-out': () => ({ fuelOut: true }),
  'fan-dead': () => ({ fansDead: true }),
};

const RIGHT: Readonly<Record<ConditionItem, Now>> = {
  snow: { snowOnRoof: 0 },
  'power-out': { powerOut: false },
  'blower-off': { blowerOff: false },
  'torn-film': { tornFilm: 0 },
  'door-open': { doorOpen: false },
  'fuel-out': { fuelOut: false },
  'fan-dead': { fansDead: false },
};

/** The file with what went wrong, or is right again. */
export const withCondition = (file: GreenhouseFile, { items, on }: Condition, text: string): GreenhouseFile =>
  ({ ...file, now: Object.assign({}, file.now, ...items.map((item) => (on ? WRONG[item](text) : RIGHT[item]))) as Now });

/** The house as the rest of a message finds it. */
export function afterCondition(condition: Condition, text: string, subject: EveningSubject): EveningSubject {
  const check = checkGreenhouse(withCondition(subject.greenhouse, condition, text));
  return check.ok ? { ...subject, greenhouse: check.greenhouse } : subject;
}

/** The evening's part in it. */
export interface ConditionEvening {
  readonly nowS: number;
  readonly store: Records;
  readonly cropName: (id: string) => string;
  readonly compose: (subject: EveningSubject, supposing: Supposing) => Promise<WorkedOutEvening>;
  readonly keep: (evening: WorkedOutEvening, store: Records) => Promise<void>;
}

/** What went wrong with the house: kept in its description, with the night that comes of it. */
export async function prepareCondition(condition: Condition, text: string, subject: EveningSubject, { nowS, store: records, cropName, compose, keep }: ConditionEvening): Promise<(store: Records) => Promise<{ readonly text: string }>> {
  const { greenhouseId, greenhouse: before } = subject;
  const stored = await records.greenhouse(greenhouseId);
  const file = withCondition(stored === null ? before : (JSON.parse(stored.body) as GreenhouseFile), condition, text);
  const check = checkGreenhouse(file);
  if (!check.ok) return () => Promise.resolve({ text: conditionRefused(condition.items) });
  const { greenhouse } = check;
  const evening = await compose({ ...subject, greenhouse }, { greenhouse: before });
  const earlier = await records.advisoryFor(greenhouseId, evening.advisory.night);
  const earlierLowC = earlier === null ? null : insideLowC(JSON.parse(earlier.body) as Advisory);
  const said = conditionText(condition, evening, { earlierLowC, units: greenhouse.grower.units, cropName });
  return async (store) => {
    await store.saveGreenhouse({ id: greenhouseId, body: JSON.stringify(file), savedAtS: nowS });
    await keep(evening, store);
    return { text: said };
  };
}

const insideLowC = ({ places }: Advisory): number | null => places.find(({ place }) => place === 'inside')?.lowC.q50 ?? null;
