import { beforeAll, describe, expect, it } from 'vitest';
import { nightLayout } from '../../../bot/chart/night-layout.js';
import type { NightPicture } from '../../../bot/chart/night-picture.js';
import { pictureOfPlan } from '../../../bot/chart/picture-of-plan.js';
import type { Advisory } from '../../../bot/features/evening/advisory.js';
import type { GreenhouseFile } from '../../../engine/greenhouse/greenhouse.js';
import type { EveningInput } from '../../../engine/plan/evening-scene.js';
import type { EveningPlan } from '../../../engine/plan/plan-evening.js';
import { celsiusToKelvin, kelvinToCelsius } from '../../../engine/units.js';
import { inventedEvening } from '../../fixtures/invented-evening.js';
import { CLEAR_COLD_NIGHT, checkedGreenhouse, hourOfLastNightS, REFERENCE_FILE, type InventedWeather } from '../../fixtures/houses.js';

const AFTERNOON = -9.5;
const COVER = { kind: 'fabric', weight: 30 } as const;

interface Night {
  readonly plan: EveningPlan;
  readonly picture: NightPicture;
}

function night(changes: Partial<GreenhouseFile>, options: { weather?: InventedWeather; input?: Partial<EveningInput>; zone?: string; advisory?: Partial<Pick<Advisory, 'weather' | 'reasons'>> } = {}): Night {
  const weather = options.weather ?? CLEAR_COLD_NIGHT;
  const plan = inventedEvening(changes, weather, options.input);
  const nowS = options.input?.nowS ?? hourOfLastNightS(weather, AFTERNOON);
  const issuedAt = new Date(nowS * 1000).toISOString();
  const advisory = { issuedAt, weather: { source: 'open-meteo', issuedAt, stale: false }, reasons: [], ...options.advisory };
  return { plan, picture: pictureOfPlan(plan, { greenhouse: checkedGreenhouse({ ...REFERENCE_FILE, ...changes }), zone: options.zone ?? 'America/Toronto', advisory }) };
}

describe('the picture of an evening', () => {
  let covered: Night;
  beforeAll(() => {
    covered = night({ beds: [{ name: 'north', area: 10, crops: ['kale', 'lettuce'], cover: COVER }, { name: 'south', area: 10, crops: ['mache'] }], vents: { area: 1 } });
  });

  it('shows the crop with the gravest verdict under the plan', () => {
    const { plan, picture } = covered;
    const grave = ['safe', 'watch', 'at-risk', 'likely-lost'];
    const staying = plan.chosen.outlook.crops.filter((_, k) => !plan.chosen.harvested.includes(k));
    expect(grave.indexOf(picture.crop!.verdict)).toBe(Math.max(...staying.map(({ verdict }) => grave.indexOf(verdict))));
    const outlook = staying.find(({ crop }) => crop.asked === picture.crop!.asked && crop.bed === picture.crop!.bed)!;
    expect(picture.lines[0]!.place).toEqual(outlook.judgedAt);
    expect(picture.crop!.damageBeginsC).toBeCloseTo(kelvinToCelsius(outlook.crop.thresholds.damageBeginsK), 9);
  });

  it('marks the low on the plant\'s line, at the time that the message gives, and nothing in the night is lower', () => {
    const { plan, picture } = covered;
    const plant = picture.lines[0]!;
    const told = plan.chosen.outlook.places.find(({ key }) => key.place === plant.place.place && key.bed === plant.place.bed)!;
    expect(picture.low.timeS).toBe(told.lowAtS);
    expect(plant.points).toContainEqual(picture.low);
    for (const { timeS, tempC } of plant.points) if (timeS > plan.night.sunsetS) expect(tempC).toBeGreaterThanOrEqual(picture.low.tempC);
  });

  it('has every line and the band at every step from an hour before sunset to two hours after sunrise', () => {
    const { plan, picture } = covered;
    const timesS = picture.band.map(({ timeS }) => timeS);
    expect(picture.span.fromS).toBeLessThanOrEqual(plan.night.sunsetS - 3000);
    expect(Math.abs(picture.span.toS - plan.night.sunriseS - 7200)).toBeLessThanOrEqual(600);
    expect([timesS[0], timesS.at(-1)]).toEqual([picture.span.fromS, picture.span.toS]);
    for (const { points } of picture.lines) expect(points.map(({ timeS }) => timeS)).toEqual(timesS);
  });

  it('lays the band around the plant\'s line', () => {
    const plant = covered.picture.lines[0]!;
    covered.picture.band.forEach(({ lowC, highC }, i) => {
      expect(plant.points[i]!.tempC).toBeGreaterThan(lowC);
      expect(plant.points[i]!.tempC).toBeLessThan(highC);
    });
  });

  it('draws no line twice', () => {
    const keys = covered.picture.lines.map(({ place }) => `${place.place} ${place.bed ?? ''}`);
    expect(new Set(keys).size).toBe(keys.length);
    expect(covered.picture.lines.map(({ name }) => name)).toContain('outside');
  });

  it('has a flag for every thing of the plan, at its time', () => {
    const { plan, picture } = covered;
    const timeOf = (action: EveningPlan['chosen']['actions'][number]): number => ('byS' in action ? action.byS : action.fromS);
    expect(plan.chosen.actions.length).toBeGreaterThan(0);
    expect(new Set(picture.flags.map(({ atS }) => atS))).toEqual(new Set(plan.chosen.actions.map(timeOf)));
    expect(picture.flags.flatMap((flag) => (flag.does === 'cover' ? flag.beds : [])).sort()).toEqual([...plan.chosen.coveredBeds].sort());
    expect(picture.flags.map(({ atS }) => atS)).toEqual(picture.flags.map(({ atS }) => atS).sort((a, b) => a - b));
  });

  it('is the same for the same evening', () => {
    const again = night({ beds: [{ name: 'north', area: 10, crops: ['kale', 'lettuce'], cover: COVER }, { name: 'south', area: 10, crops: ['mache'] }], vents: { area: 1 } });
    expect(again.picture).toEqual(covered.picture);
  });
});

describe('evenings out of the ordinary', () => {
  it('no crops: the air of the house, no limits', () => {
    const { picture } = night({ beds: [] });
    expect([picture.crop, picture.lines.map(({ name, place }) => [name, place.place])]).toEqual([null, [['plant', 'inside'], ['outside', 'outside']]]);
    const layout = nightLayout(picture);
    expect(layout.tag).toBeNull();
    expect(layout.plot.limits).toEqual([]);
  });

  it('twelve beds: beds that are due together share a flag', () => {
    const beds = ['kale', 'spinach', 'lettuce', 'leek', 'mache', 'pak choi', 'lettuce', 'kale', 'parsley', 'lettuce', 'radish', 'lettuce'].map((crop, i) => ({ name: `bed ${i + 1}`, area: 5, crops: [crop], cover: COVER }));
    const { plan, picture } = night({ size: { width: 8, length: 20, height: 3 }, beds });
    expect(plan.chosen.coveredBeds.length).toBeGreaterThan(3);
    expect(picture.flags.filter(({ does }) => does === 'cover')).toHaveLength(1);
    expect(nightLayout(picture).flags.some(({ words }) => words.text.endsWith(`cover ${plan.chosen.coveredBeds.length} beds`))).toBe(true);
  });

  it('asked in the night: from now on, and only what is still to come', () => {
    const nowS = hourOfLastNightS(CLEAR_COLD_NIGHT, 3);
    const { picture } = night({}, { input: { nowS } });
    expect(picture.span.fromS).toBeGreaterThanOrEqual(nowS);
    expect(picture.span.fromS).toBeLessThanOrEqual(nowS + 600);
    expect(picture.low.timeS).toBeGreaterThanOrEqual(nowS);
    expect(nightLayout(picture).sky.sunsetX).toBeNull();
  });

  it('an old forecast is marked with its age, and its band is wider', () => {
    const nowS = hourOfLastNightS(CLEAR_COLD_NIGHT, AFTERNOON);
    const ageS = 30 * 3600;
    const old = night({ beds: [] }, { input: { weatherAgeS: ageS }, advisory: { weather: { source: 'open-meteo', issuedAt: new Date((nowS - ageS) * 1000).toISOString(), stale: true } } }).picture;
    const fresh = night({ beds: [] }).picture;
    expect(old.stale).toEqual({ ageS });
    expect(fresh.stale).toBeNull();
    old.band.forEach(({ lowC, highC }, i) => expect(highC - lowC).toBeGreaterThan(fresh.band[i]!.highC - fresh.band[i]!.lowC));
  });

  it('invented weather is said', () => {
    expect(night({ beds: [] }, { advisory: { reasons: [{ code: 'demo-weather' }] } }).picture.isInvented).toBe(true);
  });

  it('what is picked is shown as left out', () => {
    const mild: InventedWeather = { ...CLEAR_COLD_NIGHT, dayHighK: celsiusToKelvin(10), nightLowK: celsiusToKelvin(2), lastLowK: celsiusToKelvin(-3) };
    const { plan, picture } = night({ beds: [{ name: 'bed', area: 10, crops: ['basil'] }] }, { weather: mild });
    expect(plan.chosen.harvested).toEqual([0]);
    expect(picture.crop!.isPicked).toBe(true);
    expect(nightLayout(picture).verdictLine.text).toContain('left out');
  });

  it('a limit of another organ than the one drawn is not drawn over it', () => {
    const { plan, picture } = night({ beds: [{ name: 'bed', area: 10, crops: ['parsnip'] }] });
    const { crop } = plan.chosen.outlook.crops[0]!;
    expect(crop.killNode).not.toBe(crop.damageNode);
    expect(crop.thresholds.killedK).not.toBeNull();
    expect(picture.crop!.killedC).toBeNull();
  });

  it('the words of the grower come in their own units', () => {
    const words = (units: 'C' | 'F'): string[] => {
      const layout = nightLayout(night({ grower: { units } }).picture);
      return [...layout.tickTexts.map(({ text }) => text), ...layout.plot.labels.flatMap(({ lines }) => lines.map(({ text }) => text))];
    };
    for (const text of words('F')) expect(text).not.toMatch(/\dC\b/u);
    for (const text of words('C')) expect(text).not.toMatch(/\dF\b/u);
  });
});
