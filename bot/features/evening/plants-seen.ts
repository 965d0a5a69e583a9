import { celsiusToKelvin, cropFamilyOf, nightBehind, type Greenhouse, type PlantsSeen } from '../../../engine/index.js';
import type { OutcomeNight, StoredOutcome, StoredReading } from '../../ports.js';
import { localTime } from '../../text/local-time.js';
import type { Advisory, AdvisoryCrop } from './advisory.js';

/** How well the low at the plants of a past night is known: with a reading of that morning, and from the forecast alone (project estimates). */
const READ_SD_K = 0.8;
const SAID_SD_K = 2;

/** What the plants had in the nights of which it was told how they came through them. */
export function plantsSeen(nights: readonly OutcomeNight[], readings: readonly StoredReading[], { greenhouse, zone }: { greenhouse: Greenhouse; zone: string }): readonly PlantsSeen[] {
  const time = localTime(zone);
  return nights.flatMap(({ outcome, advisory }): readonly PlantsSeen[] => {
    if (advisory === null) return [];
    const { crops, places, alternatives } = JSON.parse(advisory) as Pick<Advisory, 'crops' | 'places' | 'alternatives'>;
    const meant = crops.filter((one) => isMeant(one, outcome) && !one.isClassFallback && !one.pickedBefore).sort((a, b) => marginC(a) - marginC(b))[0];
    if (meant === undefined) return [];
    const idle = alternatives.find(({ actions }) => actions.length === 0)?.crops.find(({ crop, bed }) => crop === meant.crop && bed === meant.bed);
    const said = places.find(({ place }) => place === 'inside');
    const read = readings.filter((row) => row.place === 'inside' && row.statistic === 'low' && row.judged === 'good' && time.date(nightBehind(row.validAtS, greenhouse.place).sunsetS) === outcome.night)[0];
    const isRead = said !== undefined && read !== undefined && meant.judgedAt !== 'soil';
    // Whether the plan was followed is not asked here: half of what it changes is left open.
    const openK = idle === undefined ? 0 : Math.abs(meant.judgedLowC - idle.judgedLowC) / 2;
    return [{ cropId: meant.crop, effectiveFraction: meant.hardening, lowK: celsiusToKelvin(meant.judgedLowC + (isRead ? read.tempC - said.lowC.q50 : 0)), lowSdK: Math.hypot(isRead ? READ_SD_K : SAID_SD_K, openK), state: outcome.state }];
  });
}

const marginC = ({ judgedLowC, damageBeginsC }: AdvisoryCrop): number => judgedLowC - damageBeginsC;

const isMeant = ({ crop, asked, bed }: AdvisoryCrop, outcome: StoredOutcome): boolean =>
  (outcome.bed === null || outcome.bed === bed) && (crop === outcome.crop || asked === outcome.crop || cropFamilyOf(crop)?.name === outcome.crop);
