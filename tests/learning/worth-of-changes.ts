import { existsSync, readFileSync } from 'node:fs';
import { checkedGreenhouse } from '../fixtures/houses.js';
import type { Greenhouse, GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { runNight } from '../../engine/night/night-run.js';
import { nightSpan } from '../../engine/night/night-span.js';
import { NO_CHOICES, type NightChoices } from '../../engine/plan/action.js';
import { controlsOfChoices } from '../../engine/plan/controls-of-choices.js';
import { eveningScene, type DoneTonight, type EveningInput } from '../../engine/plan/evening-scene.js';
import { planOutlook } from '../../engine/plan/outlook.js';
import { supposeNight, type PlaceChange } from '../../engine/plan/suppose-night.js';
import { celsiusToKelvin } from '../../engine/units.js';
import type { ReplayedNight } from '../../bot/commands/replay-season.js';
import type { Cells, SeasonFolder } from '../../bot/commands/season-folder.js';
import { seasonFolder } from './seasons.js';

/** What is supposed: another house, or the same with something else done in it. */
interface Supposition {
  readonly house?: (greenhouse: Greenhouse) => Partial<GreenhouseFile>;
  readonly covers?: boolean;
  readonly heater?: false | { readonly setC: number };
}

const FLEECE_30 = { kind: 'fabric', weight: 30 } as const;

/** The variants of the seasons' tables as a grower would suppose them. */
export const SUPPOSITIONS: Readonly<Record<string, Supposition>> = {
  plus_8_drums: { house: ({ drums }) => ({ drums: [...drums, { litres: 208, count: 8, touching: false, sunny: true }] }) },
  without_drums: { house: () => ({ drums: [] }) },
  second_film: { house: ({ layers }) => ({ layers: [...layers, { film: 'standard' }] }) },
  ir_inner_film: { house: ({ layers }) => ({ layers: [layers[0]!, { film: 'thermal' }] }) },
  cover_every_night: { house: ({ beds }) => ({ beds: beds.map((bed) => ({ ...bed, cover: bed.cover ?? FLEECE_30 })) }), covers: true },
  cover_never: { covers: false },
  heater_1kW_set_3C_every_night: { house: () => ({ heater: { kind: 'electric', power: 1000 } }), heater: { setC: 3 } },
  no_heater: { heater: false },
};

/** What the log says was added in a season can be supposed away again. */
export const TAKEN_AWAY = 'without_drums';
/** Every so many nights are asked, and all of the coldest: enough for a mean, in a quarter of the time. */
const ASKED_EVERY = 4;
/** Before them nothing is learned. */
const FIRST_ASKED = 4;

/** What is asked of one night of a season. */
export function askedOfNight({ name, truth, actions }: SeasonFolder, night: number): readonly string[] {
  const items = [...new Set(trueWorths(name).map(({ item }) => item))];
  const counts = (nights: TrueWorth['nights'], item: string): boolean => nightsOf(name, { item, nights }, truth!).has(night);
  if (night < FIRST_ASKED || !(night % ASKED_EVERY === 0 || counts('coldest_tenth', items[0]!))) return [];
  const hasAdded = actions.some((row) => Number(row['night']) <= night && /added .* drums/u.test(row['note'] ?? ''));
  return [...items.filter((item) => counts('all', item)), ...(hasAdded ? [TAKEN_AWAY] : [])];
}

const COVERED_ONLY = 'cover_every_night';
const LOOK_EVERY_S = 600;
/** The coldest hour may come after sunrise. */
const MORNING_S = 2 * 3600;

/** How one night's change was told, and where: air of the house, or at plants under a cover that came on against the air of the house before. */
export interface ToldChange {
  readonly night: number;
  readonly item: string;
  readonly at: PlaceChange['at'];
  readonly meanK: number;
  readonly q10K: number;
  readonly q90K: number;
}

/** Everything that the seasons' tables ask of one night, as "what if" would answer on its evening. */
export function toldChanges({ evening, lines }: ReplayedNight, items: readonly string[]): readonly ToldChange[] {
  if (items.length === 0) return [];
  const night = lines[0]!.night;
  const input: EveningInput = { ...evening, bedtimeS: evening.nowS };
  const choices = choicesAsLogged(evening);
  const scene = eveningScene(input);
  const controls = controlsOfChoices(scene.house, scene.standing, choices);
  const outlook = planOutlook(scene.forcings.map((forcing) => runNight(scene.evening, forcing, controls)), scene.scenarios, [], { residual: scene.residual, nightStartS: scene.nightStartS, nightEndS: scene.nightEndS, coveredBeds: [] });
  return items.flatMap((item): readonly ToldChange[] => {
    const { house, covers, heater } = SUPPOSITIONS[item]!;
    const greenhouse = house ? checkedGreenhouse({ ...evening.greenhouse, ...house(evening.greenhouse) }) : evening.greenhouse;
    const done: DoneTonight = {
      covers: covers === undefined ? new Map() : new Map(greenhouse.beds.map(({ name }) => [name, covers])),
      ...(heater === undefined ? {} : { heater: heater === false ? { on: false, setK: null } : { on: true, setK: celsiusToKelvin(heater.setC) } }),
    };
    const otherwise: NightChoices = { ...choices, ...(covers === undefined ? {} : { covers: new Map() }), ...(heater === undefined ? {} : { heater: null }) };
    const told = supposeNight({ ...input, greenhouse, doneTonight: done }, otherwise, { greenhouse: evening.greenhouse, pastControls: evening.pastControls, outlook, coveredBeds: [] });
    return told.changes.filter(({ at }) => at === 'inside' || item === COVERED_ONLY).map(({ at, meanK, q10K, q90K }) => ({ night, item, at, meanK, q10K, q90K }));
  });
}

/** What the log has for tonight, as choices of an evening. */
function choicesAsLogged({ greenhouse, nowS, pastControls }: ReplayedNight['evening']): NightChoices {
  const endS = nightSpan(nowS, greenhouse.place).sunriseS + MORNING_S;
  const instants = Array.from({ length: Math.ceil((endS - nowS) / LOOK_EVERY_S) }, (_, i) => nowS + i * LOOK_EVERY_S);
  const first = (is: (timeS: number) => boolean): number | undefined => instants.find(is);
  const heatS = first((timeS) => pastControls(timeS).heaterOn);
  return {
    ...NO_CHOICES,
    covers: new Map(greenhouse.beds.flatMap(({ name }, column) => {
      const fromS = first((timeS) => pastControls(timeS).coverOn[column] === true);
      return fromS === undefined ? [] : [[name, fromS] as const];
    })),
    ventsShutS: first((timeS) => !pastControls(timeS).ventsMayOpen) ?? null,
    heater: heatS === undefined ? null : { fromS: heatS, untilS: 1 + instants.findLast((timeS) => pastControls(timeS).heaterOn)!, setK: pastControls(heatS).heaterSetK },
  };
}

/** One worth that the truth holds: the mean change of some nights, or the change of one. */
export interface TrueWorth {
  readonly item: string;
  readonly nights: 'all' | 'clear' | 'overcast' | 'coldest_tenth' | 'one';
  readonly at: PlaceChange['at'];
  readonly changeK: number;
}

/** A worth beside what was told of it: means over the nights that were asked. */
export interface JudgedWorth extends TrueWorth {
  readonly season: string;
  readonly asked: number;
  readonly meanK: number;
  readonly q10K: number;
  readonly q90K: number;
}

export const trueWorths = (season: string): readonly TrueWorth[] =>
  cellsOf(season, 'whatif.csv').flatMap((cells): readonly TrueWorth[] => {
    const worth = { item: cells['variant']!, nights: cells['nights'] as TrueWorth['nights'] };
    const inside = { ...worth, at: 'inside', changeK: Number(cells['inside_change_c']) } as const;
    return worth.item === COVERED_ONLY ? [inside, { ...worth, at: 'plants', changeK: Number(cells['bed_air_vs_inside_base_c']) }] : [inside];
  });

/** Nights that a row of the table stands for; how many it counts is the table's own. */
export function nightsOf(season: string, { item, nights }: Pick<TrueWorth, 'item' | 'nights'>, truth: readonly Cells[]): ReadonlySet<number> {
  const row = cellsOf(season, 'whatif.csv').find((cells) => cells['variant'] === item && cells['nights'] === nights)!;
  const heated = new Set(cellsOf(season, 'actions.csv').flatMap((cells) => (cells['heater'] === '1' ? [cells['night']] : [])));
  const could = item === 'no_heater' ? truth.filter((cells) => heated.has(cells['night'])) : truth;
  const by = { all: (): number => 0, clear: (cells: Cells): number => -Number(cells['clear_fraction']), overcast: (cells: Cells): number => Number(cells['clear_fraction']), coldest_tenth: (cells: Cells): number => Number(cells['min_outside_c']), one: (): number => 0 }[nights];
  return new Set([...could].sort((a, b) => by(a) - by(b)).slice(0, Number(row['n'])).map((cells) => Number(cells['night'])));
}

/** Every worth of a season beside what was told of its nights; worths none of whose nights was asked are left out. */
export function judgedWorths(season: string, told: readonly ToldChange[], truth: readonly Cells[]): readonly JudgedWorth[] {
  return trueWorths(season).flatMap((worth) => {
    const nights = nightsOf(season, worth, truth);
    const some = told.filter(({ item, at, night }) => item === worth.item && at === worth.at && nights.has(night));
    const mean = (of: (change: ToldChange) => number): number => some.reduce((sum, change) => sum + of(change), 0) / some.length;
    return some.length === 0 ? [] : [{ ...worth, season, asked: some.length, meanK: mean(({ meanK }) => meanK), q10K: mean(({ q10K }) => q10K), q90K: mean(({ q90K }) => q90K) }];
  });
}

/** Night by night, where the truth holds the same winter without a change that was made in it. */
export function judgedNights(season: string, item: string, told: readonly ToldChange[]): readonly JudgedWorth[] {
  if (!existsSync(`${seasonFolder(season)}/truth_counterfactual.csv`)) return [];
  const effectK = new Map(cellsOf(season, 'truth_counterfactual.csv').map((cells) => [Number(cells['night']), Number(cells['effect_inside_c'])]));
  return told.filter((change) => change.item === item && change.at === 'inside').map((change) => ({ ...change, season, nights: 'one', asked: 1, changeK: -effectK.get(change.night)! }));
}

function cellsOf(season: string, name: string): readonly Cells[] {
  const [head = [], ...rows] = readFileSync(`${seasonFolder(season)}/${name}`, 'utf8').trim().split('\n').map((line) => line.trim().split(','));
  return rows.map((cells) => Object.fromEntries(head.map((column, i) => [column, cells[i] ?? ''])));
}
