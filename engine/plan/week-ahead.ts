import { HEATER_KINDS } from '../data/heater-kinds.js';
import type { Greenhouse } from '../greenhouse/greenhouse.js';
import type { Controls } from '../night/controls.js';
import { nightSpan } from '../night/night-span.js';
import { celsiusToKelvin } from '../units.js';
import { coverableBeds, heaterMayBeAdvised } from './candidates.js';
import { bedsHelped, coldSpell, cropsToPick, type ColdSpell, type Preparation } from './cold-spell.js';
import { standingControls } from './controls-of-choices.js';
import { cropsAtStake, type CropAtStake } from './crops-at-stake.js';
import { eveningBeginning, type BeginningInput, type EveningBeginning } from './evening-beginning.js';
import { nightsAhead, type NightAhead, type NightlyRoutine } from './nights-ahead.js';

/** The nights that the forecast reaches: as the house stands, and with all covers and the curtain used each night. */
export interface WeekAhead {
  readonly usual: readonly NightAhead[];
  /** A night on which nothing is threatened without them is told as it is. */
  readonly covered: readonly NightAhead[];
  /** Null when no two threatened nights follow each other. */
  readonly spell: ColdSpell | null;
  readonly prepare: readonly Preparation[];
}

export interface WeekInput extends BeginningInput {
  readonly cropShiftsK?: ReadonlyMap<string, number>;
}

/** The setting that fuel is counted for: tissue stays above freezing with a margin. */
const FROST_GUARD_K = celsiusToKelvin(2);
/** A cover to buy, for beds that have none: the usual middle weight. */
const COVER_TO_GET = { kind: 'fabric', weight: 30, on: false } as const;

/**
 * The week ahead of a greenhouse, and what to prepare, buy or pick before a cold spell.
 * Units: SI.
 * Valid: weather from the past fortnight to some days ahead.
 * Outside: throws RangeError when the weather does not reach back to now.
 * Source: physics of engine/night, decision rules of engine/plan.
 */
export function weekAhead(input: WeekInput): WeekAhead {
  const base = preparedHouse(input, input.greenhouse);
  const { standing } = base;
  const usual = walk(input, base, { standing, coveredBeds: [], curtain: false, heaterSetK: null });
  const beds = coverableBeds(input.greenhouse, base.house, standing);
  const best: NightlyRoutine = { standing, coveredBeds: beds, curtain: base.house.curtain !== null, heaterSetK: null };
  const covered = walk(input, base, best, usual.filter(({ outlook }) => outlook.crops.every(({ verdict }) => verdict === 'safe')));
  const spell = coldSpell(usual);
  return { usual, covered, spell, prepare: spell === null ? [] : preparations(input, base, { spell, covered, best }) };
}

interface PreparedHouse extends EveningBeginning {
  readonly greenhouse: Greenhouse;
  readonly standing: Controls;
  readonly crops: readonly CropAtStake[];
}

function preparedHouse(input: WeekInput, greenhouse: Greenhouse): PreparedHouse {
  const beginning = eveningBeginning({ ...input, greenhouse }, nightSpan(input.nowS, greenhouse.place));
  return { ...beginning, greenhouse, standing: standingControls(greenhouse, beginning.house), crops: cropsAtStake(greenhouse, beginning.evening, input.cropShiftsK) };
}

/** `settled`: nights that need not be worked out for this routine. */
const walk = (input: WeekInput, { house, evening, weather, crops, residual, forecastError, cloudWeight }: PreparedHouse, routine: NightlyRoutine, settled: readonly NightAhead[] = []): readonly NightAhead[] =>
  nightsAhead({ house, evening, weather, weatherAgeS: input.weatherAgeS, crops, routine, errors: { residual, forecast: forecastError, cloudWeight }, settled });

function preparations(input: WeekInput, base: PreparedHouse, known: { spell: ColdSpell; covered: readonly NightAhead[]; best: NightlyRoutine }): readonly Preparation[] {
  const { spell, covered, best } = known;
  const sameNight = (nights: readonly NightAhead[]): NightAhead => nights.find(({ span }) => span.sunsetS === spell.worst.span.sunsetS)!;
  const worstCovered = sameNight(covered);
  const coverEach = bedsHelped(spell.worst.outlook.crops, worstCovered.outlook.crops).filter((bed) => best.coveredBeds.includes(bed));
  const bare = base.greenhouse.beds.filter((bed) => bed.cover === undefined && bed.crops.length > 0);
  const get = bare.length === 0 ? [] : bedsHelpedByNewCovers(input, best, worstCovered, covered);
  const spellNights = covered.filter(({ span }) => spell.nights.some((night) => night.span.sunsetS === span.sunsetS));
  return [
    ...(coverEach.length > 0 ? [{ what: 'cover-each-night', beds: coverEach } as const] : []),
    ...(get.length > 0 ? [{ what: 'get-cover', beds: get } as const] : []),
    ...fuelFor(input, base, { best, spell, covered }),
    ...cropsToPick(spellNights),
  ];
}

/** The worst night with a cover on every bed that has none: the whole evening is worked out anew, because the house is another one. */
function bedsHelpedByNewCovers(input: WeekInput, best: NightlyRoutine, worstCovered: NightAhead, covered: readonly NightAhead[]): readonly string[] {
  const greenhouse: Greenhouse = { ...input.greenhouse, beds: input.greenhouse.beds.map((bed) => (bed.cover ? bed : { ...bed, cover: COVER_TO_GET })) };
  const house = preparedHouse(input, greenhouse);
  const others = covered.filter((night) => night !== worstCovered);
  const nights = walk(input, house, { ...best, standing: house.standing, coveredBeds: coverableBeds(greenhouse, house.house, house.standing) }, others);
  const worst = nights.find((night) => !others.includes(night))!;
  const uncovered = input.greenhouse.beds.filter((bed) => bed.cover === undefined).map(({ name }) => name);
  return bedsHelped(worstCovered.outlook.crops, worst.outlook.crops).filter((bed) => uncovered.includes(bed));
}

function fuelFor(input: WeekInput, base: PreparedHouse, known: { best: NightlyRoutine; spell: ColdSpell; covered: readonly NightAhead[] }): readonly Preparation[] {
  const { heater } = input.greenhouse;
  if (!heater || !heaterMayBeAdvised(input.greenhouse, base.standing) || HEATER_KINDS[heater.kind].unitSold === 'kWh') return [];
  const others = known.covered.filter(({ span }) => !known.spell.nights.some((night) => night.span.sunsetS === span.sunsetS));
  const heated = walk(input, base, { ...known.best, heaterSetK: FROST_GUARD_K }, others).filter((night) => !others.includes(night));
  const energyJ = heated.reduce((sum, { outlook }) => sum + outlook.meanHeaterJ, 0) * (heater.power / base.house.heater!.deliveredW);
  return energyJ > 0 ? [{ what: 'fuel', energyJ, units: energyJ / HEATER_KINDS[heater.kind].energyPerUnitJ, nights: heated.length }] : [];
}
