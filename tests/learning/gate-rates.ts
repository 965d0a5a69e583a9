import { verdictOn, type JudgedCells } from '../../bot/commands/replay-gate.js';
import type { ReplayedNight } from '../../bot/commands/replay-season.js';
import type { Cells, SeasonFolder } from '../../bot/commands/season-folder.js';
import type { Greenhouse } from '../../engine/greenhouse/greenhouse.js';
import type { AcceptedReading } from '../../engine/learn/learned-house.js';
import type { GateVerdict } from '../../engine/learn/reading-gate.js';
import { typedTempK, type DegreeUnit, type ExplanationKind } from '../../engine/learn/reading-gate-explanations.js';
import { fahrenheitToCelsius } from '../../engine/units.js';
import type { Target } from './season-targets.js';

/** A reading as it was typed, what was wrong with it, and what the gate made of it. */
export interface GateCase {
  readonly kind: string;
  readonly verdict: GateVerdict;
  /** Of a season's own log, or made out of one of its good readings. */
  readonly made: boolean;
}

/** What explains each error that a grower makes at the keyboard or with a thermometer in the sun. */
const EXPLAINED: Readonly<Record<string, ExplanationKind>> = { wrong_sign: 'wrong-sign', wrong_unit: 'other-unit', lost_decimal: 'lost-point', lost_point: 'lost-point', sunlit: 'sunlit', typo: 'slip' };
/** The errors of which nine in ten must be asked about. */
const MUST_ASK = ['wrong_sign', 'wrong_unit', 'lost_decimal', 'lost_point', 'sunlit'];
const LEAST_ASKED = 0.9;
const LEAST_RIGHT_FIRST = 0.5;
const MOST_GOOD_ASKED = 0.04;
/** Nearer to what was meant no gate can tell an error from weather (project estimate). */
const PLAINLY_WRONG_K = 7;
/** A low that was not reset and is learned from as if it were the night does harm from here on (project estimate: two thermometer errors and a rounding). */
const HARMS_FROM_K = 2;

/** As one who reads half degrees Celsius would have it. */
const inHalves = (valueF: number): number => Math.round(fahrenheitToCelsius(valueF) * 2) / 2;

/** The same errors out of good readings, for a season holds few: sign, either unit for the other, lost point, sun. */
const MADE: readonly (readonly [string, (valueF: number) => readonly [number, DegreeUnit] | null])[] = [
  ['wrong_sign', (value) => [-inHalves(value), 'C']],
  ['wrong_unit', (value) => [Math.round(fahrenheitToCelsius(value)), 'F']],
  ['wrong_unit', (value) => [value, 'C']],
  ['lost_point', (value) => (Number.isInteger(inHalves(value)) ? null : [inHalves(value) * 10, 'C'])],
  ['sunlit', (value) => [value + 20, 'F']],
];
/** The sun is on it late in the morning. */
const LATER_S = 2 * 3600;

/** Every reading of a season with what the gate made of it, as the evening before had said the night, and errors made of its good lows. */
export function gateCases(season: SeasonFolder, { place }: Greenhouse, nights: readonly ReplayedNight[]): readonly GateCase[] {
  const settled: AcceptedReading[] = [];
  const kindOf = ({ cells }: JudgedCells): string => season.slips![season.readings.indexOf(cells)] ?? 'good';
  return nights.flatMap(({ judged }, n) =>
    judged.flatMap((one): readonly GateCase[] => {
      const known = { issued: nights[n - 1]?.lows ?? [], settled: [...settled], place };
      if (one.accepted !== null) settled.push(one.accepted);
      const kind = kindOf(one);
      const own = { kind: kind === 'not_reset' && isHarmless(one, season) ? 'not_reset_harmless' : kind, verdict: one.verdict, made: false };
      if (kind !== 'good' || one.cells['statistic'] !== 'low' || one.cells['unit'] !== 'F') return [own];
      const made = MADE.flatMap(([wrong, typed]): readonly GateCase[] => {
        const other = typed(Number(one.cells['value']));
        if (other === null || Math.abs(typedTempK(...other) - one.verdict.tempK) < PLAINLY_WRONG_K) return [];
        const cells: Cells = { ...one.cells, value: String(other[0]), unit: other[1], unix: String(Number(one.cells['unix']) + (wrong === 'sunlit' ? LATER_S : 0)) };
        return [{ kind: wrong, verdict: verdictOn(cells, known), made: true }];
      });
      return [own, ...made];
    }),
  );
}

/** The night's own low was as cold as what the thermometer still showed. */
function isHarmless({ cells, verdict }: JudgedCells, { truth }: SeasonFolder): boolean {
  const night = truth!.find((row) => row['night'] === cells['night'])!;
  return Math.abs(verdict.tempK - typedTempK(Number(night[`thermo_${cells['place']}_c`]), 'C')) < HARMS_FROM_K;
}

const share = (some: number, all: number): string => `${some} of ${all} (${((100 * some) / Math.max(1, all)).toFixed(1)} %)`;

/** What is asked of the gate over all seasons together. */
export function gateTargets(cases: readonly GateCase[]): readonly Target[] {
  const asked = (some: readonly GateCase[]): number => some.filter(({ verdict }) => verdict.outcome === 'ask').length;
  const rightFirst = (some: readonly GateCase[]): number => some.filter(({ kind, verdict }) => verdict.suggestions[0]?.kind === EXPLAINED[kind]).length;
  const good = cases.filter(({ kind }) => kind === 'good');
  const notReset = cases.filter(({ kind }) => kind === 'not_reset');
  return [
    ...[false, true].flatMap((made): readonly Target[] => {
      const wrong = cases.filter((one) => one.made === made && MUST_ASK.includes(one.kind));
      const whose = made ? 'errors made of good readings' : 'wrong readings of the logs';
      return [
        { what: `${whose}: ${share(asked(wrong), wrong.length)} questioned, at least ${100 * LEAST_ASKED} %`, isMet: asked(wrong) >= LEAST_ASKED * wrong.length },
        { what: `${whose}: right suggestion first for ${share(rightFirst(wrong), wrong.length)}, more than ${100 * LEAST_RIGHT_FIRST} %`, isMet: wrong.length === 0 || rightFirst(wrong) > LEAST_RIGHT_FIRST * wrong.length },
      ];
    }),
    { what: `good readings: ${share(asked(good), good.length)} questioned, at most ${100 * MOST_GOOD_ASKED} %`, isMet: asked(good) <= MOST_GOOD_ASKED * good.length },
    { what: `lows that were not reset and are ${HARMS_FROM_K} K off: ${share(notReset.filter(({ verdict }) => verdict.outcome !== 'accept').length, notReset.length)} taken as a bound or questioned, all of them`, isMet: notReset.every(({ verdict }) => verdict.outcome !== 'accept') },
  ];
}

/** Counts of each kind, for a person. */
export function gateLines(cases: readonly GateCase[]): readonly string[] {
  return [...new Set(cases.map(({ kind, made }) => `${kind}${made ? ', made' : ''}`))].sort().map((title) => {
    const some = cases.filter(({ kind, made }) => title === `${kind}${made ? ', made' : ''}`);
    const count = (outcome: GateVerdict['outcome']): number => some.filter(({ verdict }) => verdict.outcome === outcome).length;
    return `${title}: ${some.length}, ${count('ask')} questioned, ${count('bound')} taken as a bound; right suggestion first ${some.filter(({ kind, verdict }) => verdict.suggestions[0]?.kind === EXPLAINED[kind]).length}`;
  });
}
