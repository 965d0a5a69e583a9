import { cropById, cropFamilyOf, type Greenhouse } from '../../../engine/index.js';
import type { Meaning } from '../../language/intent.js';
import type { Records, StoredOutcome } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import { outcomeKept } from '../../text/outcome-text.js';
import type { Advisory, AdvisoryCrop } from '../evening/advisory.js';

type Outcome = Extract<Meaning, { kind: 'outcome' }>;

export interface OutcomeMessage {
  readonly greenhouseId: string;
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  readonly receivedAtS: number;
  readonly text: string;
}

/** Keeps how a crop came through, for the night that was said or that threatened it most. */
export async function logOutcome(outcome: Outcome, message: OutcomeMessage, store: Records): Promise<string> {
  const { greenhouseId, receivedAtS, text, zone } = message;
  const night = outcome.night === undefined ? await nightMeant(outcome, message, store) : { date: outcome.night, isRiskiest: false };
  const bed = bedMeant(outcome, message.greenhouse);
  const row = await store.addOutcome({ greenhouseId, receivedAtS, night: night.date, crop: outcome.crop, bed, state: outcome.state, text });
  return outcomeKept({ ...row, crop: cropWords(row.crop) }, { today: localTime(zone).date(receivedAtS), isRiskiest: night.isRiskiest, counts: await isOfAdvisedCrop(row, store) });
}

/** The crop as it is called; of a family its plain name. */
export const cropWords = (id: string): string => (cropById(id)?.commonName.split(' (')[0] ?? id).toLowerCase().replaceAll('_', ' ');

const ARTICLE = /^the /u;
const bedMeant = ({ bed }: Outcome, { beds }: Greenhouse): string | null =>
  bed === undefined ? null : (beds.find(({ name }) => name.toLowerCase().replace(ARTICLE, '') === bed.toLowerCase().replace(ARTICLE, ''))?.name ?? bed);

const DAY_S = 86_400;
/** Frost marks show up to two days later. */
const NIGHTS_BACK = 3;
/** Until then the night is not over. */
const NIGHT_ENDS_S = 4 * 3600;

/** Something was said of the crop for that night, by numbers of its own: only then is it known what its plants had, and what that moves. */
async function isOfAdvisedCrop({ greenhouseId, night, crop, bed }: StoredOutcome, store: Records): Promise<boolean> {
  return (await cropsAdvised(greenhouseId, night, store)).some((one) => isOf(crop, one) && !one.isClassFallback && !one.pickedBefore && (bed === null || bed === one.bed));
}

async function cropsAdvised(greenhouseId: string, night: string, store: Records): Promise<Advisory['crops']> {
  const stored = await store.advisoryFor(greenhouseId, night);
  return stored === null ? [] : (JSON.parse(stored.body) as Pick<Advisory, 'crops'>).crops;
}

/** Where no night was said: of the last three the one that threatened the crop most, else the last one. */
async function nightMeant({ crop }: Outcome, { greenhouseId, receivedAtS, zone }: OutcomeMessage, store: Records): Promise<{ readonly date: string; readonly isRiskiest: boolean }> {
  const time = localTime(zone);
  const dates = Array.from({ length: NIGHTS_BACK }, (_, back) => time.date(receivedAtS - NIGHT_ENDS_S - (back + 1) * DAY_S));
  const last = dates[0]!;
  const risks = await Promise.all(
    dates.map(async (date) => {
      const crops = await cropsAdvised(greenhouseId, date, store);
      return { date, risk: Math.max(0, ...crops.filter((one) => isOf(crop, one)).map(({ damageProbability }) => damageProbability)) };
    }),
  );
  const riskiest = risks.reduce((most, one) => (one.risk > most.risk ? one : most), risks[0]!);
  return { date: riskiest.date, isRiskiest: riskiest.date !== last };
}

const isOf = (crop: string, { crop: id, asked }: AdvisoryCrop): boolean => id === crop || asked === crop || cropFamilyOf(id)?.name === crop;
