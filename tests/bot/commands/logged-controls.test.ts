import { describe, expect, it } from 'vitest';
import { loggedControls } from '../../../bot/commands/logged-controls.js';
import type { Cells } from '../../../bot/commands/season-folder.js';
import { checkedGreenhouse, REFERENCE_FILE } from '../../fixtures/houses.js';

const HOUR_S = 3600;
/** 16 h on 1 and 2 January 2025 in Greenwich. */
const ISSUED_S = [Date.UTC(2025, 0, 1, 16) / 1000, Date.UTC(2025, 0, 2, 16) / 1000] as const;
const evenings = ISSUED_S.map((issuedS, i) => ({ night: i + 1, date: `2025-01-0${i + 1}`, issuedS, response: null }));
const file = { ...REFERENCE_FILE, place: { ...REFERENCE_FILE.place, latitude: 51, longitude: 0, timeZone: 'Europe/London' }, beds: [{ name: 'north', area: 10, crops: [], cover: { kind: 'fabric' as const, weight: 30 } }, { name: 'south', area: 10, crops: [] }], heater: { kind: 'electric' as const, power: 1000 } };
const fan = { airflow: 150, power: 20 };
const logged = (first: Cells, devices: Record<string, unknown> = {}) => {
  const plan = loggedControls({ evenings, actions: [{ night: '1', ...first }, { night: '2' }] }, checkedGreenhouse({ ...file, ...devices }));
  return (hour: number) => plan(ISSUED_S[0] - 16 * HOUR_S + hour * HOUR_S);
};

describe('what the log of a season says was done', () => {
  it('a cover lies from its hour to its hour of the morning, on the beds that have one', () => {
    const at = logged({ cover: '1', cover_on: '17:30', cover_off: '07:30' });
    const covered = (hour: number): readonly boolean[] => at(hour).coverOn.slice(0, 2);
    expect(covered(17.4)).toEqual([false, false]);
    expect(covered(17.6)).toEqual([true, false]);
    expect(covered(24 + 7.4)).toEqual([true, false]);
    expect(covered(24 + 7.6)).toEqual([false, false]);
  });

  it('a fan runs as it was switched, by night or by day alone, and not on a night without one', () => {
    const tubes = { tubes: { length: 20, diameter: 0.1, depth: 0.5, fan } };
    const byNight = logged({ fan: '1', fan_on: '18:00', fan_off: '07:00' }, tubes);
    expect([17.9, 18.1, 30.9, 31.1, 43].map((hour) => byNight(hour).fansOn.tubes)).toEqual([false, true, true, false, false]);
    const byDay = logged({ fan: '1', fan_on: '10:30', fan_off: '15:00' }, tubes);
    expect([10.4, 10.6, 14.9, 15.1, 23].map((hour) => byDay(hour).fansOn.tubes)).toEqual([false, true, true, false, false]);
    expect(logged({ fan: '0' }, tubes)(22).fansOn.tubes).toBe(false);
  });

  it('is of the tubes where there are some, else of the box, else of the air; a house without a fan has none', () => {
    const on = { fan: '1', fan_on: '18:00', fan_off: '07:00' };
    const tubes = { length: 20, diameter: 0.1, depth: 0.5, fan };
    expect(logged(on, { tubes, fan })(22).fansOn).toMatchObject({ tubes: true, air: false });
    expect(logged(on, { stoneBox: { volume: 1, glazed: 2, fan }, fan })(22).fansOn).toMatchObject({ 'stone-box': true, air: false });
    expect(logged(on, { fan })(22).fansOn).toMatchObject({ tubes: false, air: true });
    expect(Object.values(logged(on)(22).fansOn).some((isOn) => isOn)).toBe(false);
  });

  it('a heater keeps its setting from when the vents are shut; vents that are shut stay so for the night', () => {
    const at = logged({ heater: '1', heater_set_c: '1.5', vents_closed_at: '15:30' });
    expect(at(15).heaterOn).toBe(false);
    expect(at(22)).toMatchObject({ heaterOn: true, heaterSetK: 274.65, ventsMayOpen: false });
    expect(at(15).ventsMayOpen).toBe(true);
    expect(logged({ vents_closed_at: 'closed all day' })(12).ventsMayOpen).toBe(false);
  });
});
