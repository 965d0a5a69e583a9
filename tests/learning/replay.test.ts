import { existsSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readGreenhouse } from '../../bot/commands/read-input.js';
import { replaySeason, type NightPlace } from '../../bot/commands/replay-season.js';
import { readSeason, type SeasonFolder } from '../../bot/commands/season-folder.js';
import { seasonFolder, seasonGreenhouse } from './seasons.js';

const NAME = 's01-single-tunnel-clay';
const NIGHTS = 3;

function linesOf(season: SeasonFolder, greenhouse: Parameters<typeof replaySeason>[1], learnUntil = Infinity): readonly NightPlace[] {
  const lines: NightPlace[] = [];
  for (const { lines: of } of replaySeason(season, greenhouse, learnUntil)) {
    lines.push(...of);
    if (of[0]!.night === NIGHTS) break;
  }
  return lines;
}

describe.skipIf(!existsSync(seasonFolder(NAME)))('replay of a season (invented winters beside the project, absent in other copies)', () => {
  it('says a night the same whatever came after its evening', async () => {
    const season = await readSeason(seasonFolder(NAME));
    const greenhouse = await readGreenhouse(seasonGreenhouse(NAME));
    const lastEvening = season.evenings[NIGHTS - 1]!.issuedS;
    const later: SeasonFolder = {
      ...season,
      evenings: season.evenings.slice(0, NIGHTS),
      readings: season.readings.map((row) => (Number(row['unix']) > lastEvening ? { ...row, value: '-40' } : row)),
      actions: season.actions.slice(0, NIGHTS),
      truth: null,
      floor: null,
    };
    expect(linesOf(later, greenhouse)).toEqual(linesOf(season, greenhouse));
  });

  it('learns from readings only until it is told to stop', async () => {
    const season = await readSeason(seasonFolder(NAME));
    const greenhouse = await readGreenhouse(seasonGreenhouse(NAME));
    const frozen = linesOf(season, greenhouse, 0);
    const wrong: SeasonFolder = { ...season, readings: season.readings.map((row) => ({ ...row, value: '90' })) };
    expect(linesOf(wrong, greenhouse, 0)).toEqual(frozen);
    expect(frozen.every(({ n_readings }) => n_readings === 0)).toBe(true);
    expect(linesOf(season, greenhouse)).not.toEqual(frozen);
  });

  it('never hands what is for scoring to the replay', async () => {
    const season = await readSeason(seasonFolder(NAME));
    expect(season.readings.length).toBeGreaterThan(100);
    expect(season.readings.flatMap((row) => Object.keys(row)).filter((name) => name.startsWith('hidden_'))).toEqual([]);
  });
});
