import { binomialCdf } from '../../engine/index.js';
import { readOptions, required } from './options.js';
import { InputError } from './input-error.js';
import { readGreenhouse } from './read-input.js';
import type { JudgedCells } from './replay-gate.js';
import { replaySeason, type NightPlace } from './replay-season.js';
import { readSeason, type SeasonFolder } from './season-folder.js';

export const REPLAY_USAGE = `duskward replay --season FOLDER --greenhouse FILE [--learn-until N] [--json]
  Evenings and mornings of a past season in order, each night said before its readings are seen; scores at the end.
  --learn-until N   stop learning after N readings of the low inside
  --json            one line a night and place`;

const CLAIMED = 0.8;

export async function replay(words: readonly string[]): Promise<void> {
  const options = readOptions(words, { season: { type: 'string' }, greenhouse: { type: 'string' }, 'learn-until': { type: 'string' }, json: { type: 'boolean' } }, REPLAY_USAGE);
  if (options.help) return void console.log(REPLAY_USAGE);
  const season = await readSeason(required(options.season, '--season', REPLAY_USAGE));
  const greenhouse = await readGreenhouse(required(options.greenhouse, '--greenhouse', REPLAY_USAGE));
  const until = options['learn-until'];
  if (until !== undefined && !/^\d+$/u.test(until)) throw new InputError(`--learn-until: expected a whole number of readings such as 14, got ${JSON.stringify(until)}`);
  const lines: NightPlace[] = [];
  const judged: JudgedCells[] = [];
  for (const night of replaySeason(season, greenhouse, until === undefined ? Infinity : Number(until))) {
    judged.push(...night.judged);
    for (const line of night.lines) {
      lines.push(line);
      console.log(options.json ? JSON.stringify(line) : `night ${line.night} ${line.place}: ${line.mean_c.toFixed(1)} C (${line.lo80_c.toFixed(1)} to ${line.hi80_c.toFixed(1)}) after ${line.n_readings} readings, ${line.decision}`);
    }
  }
  const scores = `${questionsOf(season, judged)}\n${scoresOf(season, lines)}`;
  // With --json every line of the answer is one night and place: scores go beside it.
  (options.json ? console.error : console.log)(scores);
}

/** How often the gate asked, and where the folder tells which readings were wrong, how often for nothing. */
function questionsOf({ readings, slips }: SeasonFolder, judged: readonly JudgedCells[]): string {
  const asked = judged.filter(({ verdict }) => verdict.outcome === 'ask');
  const bound = judged.filter(({ verdict }) => verdict.outcome === 'bound');
  const counts = `${judged.length} readings: ${asked.length} questioned and left out, ${bound.length} taken as not reset`;
  if (slips === null) return `${counts}.`;
  const slipOf = ({ cells }: JudgedCells): string | null => slips[readings.indexOf(cells)] ?? null;
  const wrong = judged.filter((one) => slipOf(one) !== null);
  return `${counts}; of ${wrong.length} wrong ones ${wrong.filter(({ verdict }) => verdict.outcome !== 'accept').length} were not learned from as typed, of ${judged.length - wrong.length} right ones ${asked.filter((one) => slipOf(one) === null).length} were questioned.`;
}

function scoresOf(season: SeasonFolder, lines: readonly NightPlace[]): string {
  const { truth } = season;
  if (truth === null) return 'No scores: the folder holds no truth.csv.';
  return ['inside', 'cover', 'outside']
    .flatMap((place) => {
      const pairs = lines.flatMap((line) => {
        const came = truth.find((row) => Number(row['night']) === line.night)?.[`min_${place}_c`];
        return line.place === place && came ? [{ line, cameC: Number(came) }] : [];
      });
      if (pairs.length === 0) return [];
      const mean = (of: (pair: (typeof pairs)[number]) => number): number => pairs.reduce((sum, pair) => sum + of(pair), 0) / pairs.length;
      const inside = pairs.filter(({ line, cameC }) => cameC >= line.lo80_c && cameC <= line.hi80_c).length;
      return [
        `${place}: ${pairs.length} nights, mean error ${mean(({ line, cameC }) => line.mean_c - cameC).toFixed(2)} C, root mean square ${Math.sqrt(mean(({ line, cameC }) => (line.mean_c - cameC) ** 2)).toFixed(2)} C, in the 80 % range ${inside} (chance of so few ${binomialCdf(inside, pairs.length, CLAIMED).toFixed(2)}), mean width ${mean(({ line }) => line.hi80_c - line.lo80_c).toFixed(2)} C`,
      ];
    })
    .join('\n');
}
