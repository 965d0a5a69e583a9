import { outsideJson } from '../outside-data.js';
import type { PublishedRow, PublishedTable } from '../published-table.js';
import { once } from '../rc-network.js';
import { CLEAR_SKY_FORMULAS, CLEAR_SKY_NAMES } from '../longwave/clear-sky-formulas.js';
import { CLOUD_RULES, type CloudRule } from '../longwave/cloud-rules.js';
import { isNight, measuredSky } from '../longwave/measured-sky.js';
import { clearSky, enginesSky, scoreSky, withLinearCloud, type SkyModel, type SkyScore } from '../longwave/sky-score.js';

/**
 * SURFRAD station Bondville, Illinois, 1998: downwelling longwave measured by pyrgeometer, as carried by NOAA-OWP/noah-owp-modular.
 * Taken: 1837 night hours below 8 °C with cloud carried over from the daylight around them, 1164 day hours below 12 °C with the cloud of
 * the hour. Assumed: cloud = 1 - sunlight over clear sunlight. The list of scores was computed apart from this code.
 * Nothing of the engine's sky was fitted here: its one free number comes from Morin2012 and ARM-SGP.
 */
export const source = 'SURFRAD-Bondville';
/** Formulas that are scored here and nowhere else. */
export const sources = ['SURFRAD-Bondville', 'Li2017', 'Idso1981', 'DilleyOBrien1998', 'BerdahlFromberg1982', 'Angstrom1915'] as const;

const ORIGIN = 'NOAA-OWP/noah-owp-modular, data/bondville.dat (SURFRAD)';

const all = measuredSky('sky-scoring-set-bondville.csv');
const printed = (outsideJson('longwave/expected-scores.json') as { readonly sets: Readonly<Record<string, Readonly<Record<string, SkyScore>>>> } | null)?.sets ?? null;
const absent = all && printed ? {} : { absent: ORIGIN };

const SETS = {
  'night_T<8C_all': (all ?? []).filter(isNight),
  'night_T<8C_clear_both_sides': (all ?? []).filter((sky) => isNight(sky) && sky.kind.includes('clear both sides')),
  'day_T<12C_all': (all ?? []).filter((sky) => !isNight(sky)),
} as const;
const [NIGHTS, DAYS] = [SETS['night_T<8C_all'], SETS['day_T<12C_all']];

/** The sky of the house, and every rival with the plain linear rule, for a test that sets them side by side. */
export const nightScores = once(() => ({ engine: scoreSky(enginesSky, NIGHTS), rivals: CLEAR_SKY_NAMES.map((name) => ({ name, score: scoreSky(withLinearCloud(CLEAR_SKY_FORMULAS[name]), NIGHTS) })) }));
export const isAbsent = 'absent' in absent;

const METRICS = ['n', 'bias', 'rmse', 'tsky_bias', 'tsky_rmse'] as const;
const rowsOf = (name: string, expected: SkyScore, score: () => SkyScore): PublishedRow[] => METRICS.map((metric) => ({ name: `${name}: ${metric}`, expected: expected[metric], model: () => score()[metric] }));

const reproduced = (set: keyof typeof SETS): PublishedRow[] =>
  CLEAR_SKY_NAMES.flatMap((name) =>
    ([['clear', clearSky], ['linear_cloud', withLinearCloud]] as const).flatMap(([rule, make]: readonly [string, (formula: (typeof CLEAR_SKY_FORMULAS)[typeof name]) => SkyModel]) => {
      const score = once(() => scoreSky(make(CLEAR_SKY_FORMULAS[name]), SETS[set]));
      return printed ? rowsOf(`${name} / ${rule}`, printed[set]![`${name} / ${rule}`]!, score) : [];
    }),
  );

const rulesOnPrata = (printedScores: readonly (readonly [name: keyof typeof CLOUD_RULES, bias: number, rmse: number])[]): PublishedRow[] =>
  printedScores.flatMap(([name, bias, rmse]) => {
    const rule: CloudRule = CLOUD_RULES[name];
    const score = once(() => scoreSky(clearSky((sky) => rule(CLEAR_SKY_FORMULAS.Prata96(sky), (sky as (typeof NIGHTS)[number]).cloudFraction)), NIGHTS));
    return [{ name: `${name}: bias`, expected: bias, model: () => score().bias }, { name: `${name}: rmse`, expected: rmse, model: () => score().rmse }];
  });

const ownSky = (name: string, skies: typeof NIGHTS, allowed: { bias: number; rmse: number }): PublishedRow[] => {
  const score = once(() => scoreSky(enginesSky, skies));
  return [
    { name: `${name}: bias`, expected: 0, tolerance: allowed.bias, model: () => score().bias },
    { name: `${name}: root mean square`, expected: 0, tolerance: allowed.rmse, model: () => score().rmse },
  ];
};

export const tables: readonly PublishedTable[] = [
  ...(Object.keys(SETS) as (keyof typeof SETS)[]).map((set): PublishedTable => ({
    source, title: `list of scores, ${set}: twelve formulas with and without cloud`, unit: 'W/m2 and K', tolerance: 0.1, toleranceReason: 'the list is reproduced, rounded to 0.01', origin: 'from memory', rows: reproduced(set), ...absent,
  })),
  {
    source, title: 'list of scores, night: cloud rules on the clear sky of Prata', unit: 'W/m2', tolerance: 0.6, toleranceReason: 'the list is rounded to 1', origin: 'from memory', ...absent,
    rows: all ? rulesOnPrata([['linear', 1, 23], ['Walton polynomial', -21, 36], ['1 + 0.22 c^2.75', -23, 35], ['1 + 0.17 c^2', -23, 36], ['linear, weight 0.84', -5, 24], ['none', -35, 50]]) : [],
  },
  {
    source, title: "the engine's own sky against measured longwave", unit: 'W/m2', tolerance: 3, origin: 'measured', ...absent,
    toleranceReason: 'by night bias 3 and 23.5 in the root mean square, which is what the cloud leaves open when it is known from daylight; by day, with the cloud of the hour, 5 and 16',
    rows: all ? [...ownSky('cold nights', NIGHTS, { bias: 3, rmse: 23.5 }), ...ownSky('cold days', DAYS, { bias: 5, rmse: 16 })] : [],
  },
];
