import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startTestService, type TestService } from './service.js';

// The stand-in of the weather service with the weather of a real typical year, read in place when present.
const SERVER = fileURLToPath(new URL('../../../../shared/tools/weather-server.mjs', import.meta.url));
const present = existsSync(SERVER);
const START = '2026-01-14T22:00:00Z';

describe.skipIf(!present)(`against the stand-in of the service${present ? '' : ' (NOT RUN: ../shared/tools/weather-server.mjs is absent)'}`, () => {
  let child: ChildProcess;
  let service: TestService;
  let withMembers: TestService;
  beforeAll(async () => {
    child = spawn(process.execPath, [SERVER, '--port', '0', '--now', START], { stdio: ['ignore', 'pipe', 'inherit'] });
    if (child.stdout === null) throw new Error('stand-in: expected its standard output, got none');
    const [line] = (await once(child.stdout, 'data')) as [Buffer];
    const url = /http:\/\/\S+:\d+/.exec(line.toString())?.[0];
    if (url === undefined) throw new Error(`stand-in: expected its address on the first line, got "${line.toString()}"`);
    const patient = { startS: Date.parse(START) / 1000, budgetMs: 40_000, answerMs: 20_000 };
    service = startTestService(url, patient);
    withMembers = startTestService(url, { ...patient, wantsMembers: true });
  });
  afterAll(async () => {
    await service.close();
    await withMembers.close();
    child.kill('SIGTERM');
    await once(child, 'exit');
  });

  it('the first answer is whole: fifteen past days, a week ahead, two models, spread, soil, past year', async () => {
    const place = { latitude: 39.83, longitude: -104.65, elevationM: 1650 };
    const { hours, ground, notes, stale } = await service.source.weatherAt(place);
    expect(notes).toEqual([]);
    expect(stale).toBe(false);
    expect(hours.timeS).toHaveLength(528);
    expect(hours.airTempSpreadK.every((spread) => spread !== null && spread > 0)).toBe(true);
    for (const difference of hours.modelDifferenceK) expect(difference).toBeCloseTo(0.7, 1);
    expect(hours.surfacePressurePa[0]).toBeGreaterThan(80_000);
    expect(hours.surfacePressurePa[0]).toBeLessThan(86_000);
    // Denver in January, and over the year
    expect(Math.min(...hours.airTempK)).toBeGreaterThan(240);
    expect(Math.max(...hours.airTempK)).toBeLessThan(295);
    expect(ground.yearlyMeanAirTempK).toBeGreaterThan(280);
    expect(ground.yearlyMeanAirTempK).toBeLessThan(286);
    expect(ground.soilTemp54cmK).toBeGreaterThan(265);
  });

  it('its single runs stray as it makes them: by hours ahead, and in temperature and cloud apart from each other', async () => {
    const { hours, notes } = await withMembers.source.weatherAt({ latitude: 39.83, longitude: -104.65, elevationM: 1650 });
    expect(notes).toEqual([]);
    const at = (hoursAhead: number): number => hours.timeS.indexOf(Date.parse(START) / 1000 + hoursAhead * 3600);
    // The stand-in's growth of errors is 0.4 K and the root of hours ahead over 18, 1.5 at most.
    expect(hours.airTempSpreadK[at(14)]).toBeGreaterThan(1.28 * 0.75);
    expect(hours.airTempSpreadK[at(14)]).toBeLessThan(1.28 * 1.25);
    expect(hours.airTempSpreadK[at(14)]!).toBeLessThan(hours.airTempSpreadK[at(60)]!);
    // Three standard errors of a correlation of fifty runs that have nothing in common.
    for (const correlation of [at(8), at(14), at(38)].map((i) => hours.airTempCloudCorrelation[i]!)) expect(Math.abs(correlation)).toBeLessThan(3 / Math.sqrt(50));
    expect(hours.airTempSpreadK[at(-24)]).toBeNull();
  });
});
