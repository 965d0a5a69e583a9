import { kelvinToCelsius, nightBand, type CropOutlook, type EveningPlan, type Greenhouse, type PlaceKey } from '../../engine/index.js';
import type { Advisory } from '../features/evening/advisory.js';
import { nightFlags } from './night-flags.js';
import type { BandPoint, NightLine, NightPicture, PicturedCrop } from './night-picture.js';

const SECONDS_PER_HOUR = 3600;
const AFTER_SUNRISE_S = 2 * SECONDS_PER_HOUR;
const BEFORE_SUNSET_S = SECONDS_PER_HOUR;
const BEFORE_FIRST_FLAG_S = SECONDS_PER_HOUR / 2;
/** Two lines that are never farther apart than this would be drawn on top of each other. */
const TOO_NEAR_TO_TELL_C = 0.4;

const SEVERITY = { safe: 0, watch: 1, 'at-risk': 2, 'likely-lost': 3 } as const satisfies Record<CropOutlook['verdict'], number>;

interface PictureSubject {
  readonly greenhouse: Greenhouse;
  readonly zone: string;
  /** As issued with the plan: when, on what weather, and what was said of that. */
  readonly advisory: Pick<Advisory, 'issuedAt' | 'weather' | 'reasons'>;
}

/** The picture of the night under the chosen plan. */
export function pictureOfPlan(plan: EveningPlan, subject: PictureSubject): NightPicture {
  const { greenhouse, zone, advisory } = subject;
  const nowS = secondsOf(advisory.issuedAt);
  const flags = nightFlags(plan);
  const crops = byRisk(plan);
  const worst = crops[0] ?? null;
  const plantPlace: PlaceKey = worst?.judgedAt ?? { place: 'inside' };
  const span = spanOf(plan, { nowS, firstFlagS: flags[0]?.atS ?? Infinity });
  const lines = linesOf(plan, { plantPlace, crops, span });
  return {
    greenhouse: greenhouse.name,
    zone,
    units: greenhouse.grower.units,
    nowS,
    eveningS: plan.night.sunsetS,
    span,
    sun: plan.night.hasSunset ? { sunsetS: plan.night.sunsetS, sunriseS: plan.night.sunriseS } : null,
    night: { fromS: Math.max(span.fromS, plan.night.sunsetS), toS: Math.min(span.toS, plan.night.sunriseS) },
    lines,
    band: bandOf(plan, plantPlace, span),
    low: lowOf(plan, plantPlace),
    crop: worst === null ? null : picturedCrop(worst, plan),
    flags,
    idle: advisory.reasons.some(({ code }) => code === 'too-late') ? 'too-late' : worst !== null && SEVERITY[worst.verdict] >= SEVERITY['at-risk'] ? 'not-worth-it' : 'calm',
    stale: advisory.weather.stale ? { ageS: Math.max(0, nowS - secondsOf(advisory.weather.issuedAt)) } : null,
    isInvented: advisory.reasons.some(({ code }) => code === 'demo-weather'),
    source: advisory.weather.source,
  };
}

const secondsOf = (iso: string): number => Date.parse(iso) / 1000;

/** Crops that stay in the ground, most at risk under the plan first. */
function byRisk({ chosen }: EveningPlan): readonly CropOutlook[] {
  const marginK = ({ judgedLowK, crop }: CropOutlook): number => judgedLowK - crop.thresholds.damageBeginsK;
  const staying = chosen.outlook.crops.filter((_, k) => !chosen.harvested.includes(k));
  return [...(staying.length > 0 ? staying : chosen.outlook.crops)].sort(
    (a, b) => SEVERITY[b.verdict] - SEVERITY[a.verdict] || b.lossProbability - a.lossProbability || b.damageProbability - a.damageProbability || marginK(a) - marginK(b),
  );
}

/** From now, but no long afternoon in which nothing is to be done, to two hours after sunrise; on the steps of the run. */
function spanOf({ chosen, night }: EveningPlan, { nowS, firstFlagS }: { nowS: number; firstFlagS: number }): NightPicture['span'] {
  const { startS, stepS, tempK } = chosen.outlook.centralRun;
  const wishedS = Math.max(nowS, Math.min(night.sunsetS - BEFORE_SUNSET_S, firstFlagS - BEFORE_FIRST_FLAG_S));
  const fromS = startS + Math.max(1, Math.ceil((wishedS - startS) / stepS)) * stepS;
  const toS = startS + Math.min(tempK[0]!.length, Math.round((night.sunriseS + AFTER_SUNRISE_S - startS) / stepS)) * stepS;
  return { fromS: Math.min(fromS, toS - stepS), toS };
}

/** The plant's line, that under the cover, the house and outside, as far as each is a line of its own. */
function linesOf(plan: EveningPlan, about: { plantPlace: PlaceKey; crops: readonly CropOutlook[]; span: NightPicture['span'] }): readonly NightLine[] {
  const { plantPlace, crops, span } = about;
  const line = (name: NightLine['name'], place: PlaceKey): NightLine => ({ name, place, points: pointsOf(plan, place, span) });
  const plant = line('plant', plantPlace);
  const covered = crops.map(({ crop }) => crop.bed).find((bed) => isCovered(plan, bed));
  const others = [
    ...(covered === undefined ? [] : [line('cover', { place: 'cover', bed: covered })]).filter((cover) => cover.place.bed !== plantPlace.bed || farthestApartC(plant, cover) > TOO_NEAR_TO_TELL_C),
    line('inside', { place: 'inside' }),
    line('outside', { place: 'outside' }),
  ];
  return [plant, ...others.filter(({ place }) => place.place !== plantPlace.place || place.bed !== plantPlace.bed)];
}

const isCovered = ({ chosen }: EveningPlan, bed: string): boolean => chosen.outlook.places.some(({ key }) => key.place === 'cover' && key.bed === bed);

const farthestApartC = (a: NightLine, b: NightLine): number => Math.max(...a.points.map(({ tempC }, i) => Math.abs(tempC - b.points[i]!.tempC)));

function pointsOf({ chosen }: EveningPlan, key: PlaceKey, span: NightPicture['span']): NightLine['points'] {
  const { startS, stepS, tempK, places } = chosen.outlook.centralRun;
  const series = tempK[places.findIndex(({ place, bed }) => place === key.place && bed === key.bed)]!;
  return Array.from(series, (oneK, i) => ({ timeS: startS + (i + 1) * stepS, tempC: kelvinToCelsius(oneK) })).filter(({ timeS }) => timeS >= span.fromS && timeS <= span.toS);
}

function bandOf(plan: EveningPlan, plantPlace: PlaceKey, span: NightPicture['span']): readonly BandPoint[] {
  const { timesS, q10K, q90K } = nightBand(plan, plantPlace, span);
  return timesS.map((timeS, i) => ({ timeS, lowC: kelvinToCelsius(q10K[i]!), highC: kelvinToCelsius(q90K[i]!) }));
}

/** The low of the middle weather, at the time that the message names. */
function lowOf(plan: EveningPlan, plantPlace: PlaceKey): NightPicture['low'] {
  const { lowAtS } = plan.chosen.outlook.places.find(({ key }) => key.place === plantPlace.place && key.bed === plantPlace.bed)!;
  const { startS, stepS, tempK, places } = plan.chosen.outlook.centralRun;
  const series = tempK[places.findIndex(({ place, bed }) => place === plantPlace.place && bed === plantPlace.bed)]!;
  return { timeS: lowAtS, tempC: kelvinToCelsius(series[Math.round((lowAtS - startS) / stepS) - 1]!) };
}

function picturedCrop({ crop, verdict, damageProbability, lossProbability }: CropOutlook, plan: EveningPlan): PicturedCrop {
  const { damageBeginsK, killedK } = crop.thresholds;
  return {
    asked: crop.asked,
    bed: crop.bed,
    isUnderCover: isCovered(plan, crop.bed),
    isPicked: plan.chosen.harvested.some((k) => plan.crops[k] === crop),
    verdict,
    damageProbability,
    lossProbability,
    damageBeginsC: kelvinToCelsius(damageBeginsK),
    killedC: killedK === null || crop.killNode !== crop.damageNode ? null : kelvinToCelsius(killedK),
  };
}
