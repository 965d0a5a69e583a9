import { existsSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readGreenhouse } from '../../bot/commands/read-input.js';
import { replaySeason, type ReplayedNight } from '../../bot/commands/replay-season.js';
import { readSeason, type SeasonFolder } from '../../bot/commands/season-folder.js';
import type { Greenhouse } from '../../engine/greenhouse/greenhouse.js';
import { reliabilityTable } from '../../engine/score/reliability.js';
import { costsByBed, nightsToDecide, policyCosts, summed, type NightToDecide } from './cover-decisions.js';
import { gateCases, gateTargets } from './gate-rates.js';
import { seasonFolder, seasonGreenhouse } from './seasons.js';
import { toldChanges, trueWorths } from './worth-of-changes.js';
import { worthTarget } from './worth-targets.js';
import { VERDICTS, verdictsOfNight } from './verdict-reliability.js';

const NAME = 's08-small-double-heater';
const NIGHTS = 10;

describe.skipIf(!existsSync(seasonFolder(NAME)))('the first nights of a season, learned as they came (invented winters beside the project, absent in other copies)', () => {
  let season: SeasonFolder;
  let greenhouse: Greenhouse;
  const nights: ReplayedNight[] = [];
  beforeAll(async () => {
    season = await readSeason(seasonFolder(NAME));
    greenhouse = await readGreenhouse(seasonGreenhouse(NAME));
    for (const night of replaySeason(season, greenhouse, Infinity)) {
      nights.push(night);
      if (nights.length === NIGHTS) break;
    }
  });

  it('drums are worth by "what if" what they are worth in truth, within the range that is told', () => {
    const told = toldChanges(nights.at(-1)!, ['plus_8_drums']).find(({ at }) => at === 'inside')!;
    const true8 = trueWorths(NAME).find(({ item, nights: of, at }) => item === 'plus_8_drums' && of === 'all' && at === 'inside')!;
    expect(told.meanK).toBeGreaterThan(0);
    expect(worthTarget('drums', [{ ...true8, ...told, nights: 'one', season: NAME, asked: 1 }]).isMet).toBe(true);
    expect(true8.changeK).toBeGreaterThan(told.q10K);
    expect(true8.changeK).toBeLessThan(told.q90K);
  });

  it('good readings are left alone, and errors made of them are questioned', () => {
    const cases = gateCases(season, greenhouse, nights);
    expect(cases.filter(({ kind }) => kind === 'good').length).toBeGreaterThan(NIGHTS);
    expect(gateTargets(cases).filter(({ isMet }) => !isMet)).toEqual([]);
  });

  it('verdicts on beds hold what they say: the worse the word, the oftener harm, and never so often after "safe" as it may', () => {
    const { words } = reliabilityTable(nights.flatMap((night) => verdictsOfNight(season, night)), VERDICTS);
    const shares = words.map(({ cases, happened }) => happened / cases);
    expect(words.length).toBeGreaterThan(2);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(words[0]).toMatchObject({ spokenAs: 'safe' });
    expect(shares[0]).toBeLessThan(0.05);
  });

  it('cover decisions cost no less than perfect knowledge, and less than to do the same every night', () => {
    const costs = summed([...costsByBed(nightsToDecide(season, nights)).values()]);
    expect(costs.perfect).toBeLessThanOrEqual(Math.min(costs.ours, costs.hindsight));
    expect(costs.ours).toBeLessThan(costs.always);
    expect(costs.ours).toBeLessThan(costs.never);
  });
});

describe('costs of ways to decide', () => {
  const night = (forecastLowC: number, lossOpen: number, covers: boolean): NightToDecide => ({ bed: 'bed', forecastLowC, lossCovered: 5, lossOpen, covers });

  it('are those of each night as it was decided; a threshold covers every night that was forecast colder', () => {
    // Two cold nights and one of them needless, a mild one that took the bed unforeseen.
    const costs = policyCosts([night(-6, 80, true), night(-4, 0, true), night(2, 0, false), night(3, 40, false)]);
    expect(costs).toEqual({ ours: 5 + 5 + 0 + 40, always: 20, never: 120, hindsight: 20, perfect: 5 + 0 + 0 + 5 });
  });
});
