import { describe, expect, it } from 'vitest';
import { stackDiffuseTransmittance } from '../../engine/cover/shortwave-transmittance.js';
import { FILMS } from '../../engine/data/films.js';
import { BLACK_COAT, STONES } from '../../engine/data/stones.js';
import type { GreenhouseFile } from '../../engine/greenhouse/greenhouse.js';
import { MASSLESS, sensibleStore } from '../../engine/network/enthalpy.js';
import { emptySources, stepImplicit } from '../../engine/network/implicit-step.js';
import { createNetwork, steadyConductor } from '../../engine/network/network.js';
import { NO_FANS } from '../../engine/night/controls.js';
import { PANE_TO_AIR_W_PER_M2K, PANE_TO_FILM_W_PER_M2K, STONES_TO_PANE_W_PER_M2K } from '../../engine/night/parts/stores-part.js';
import { kelvinToCelsius } from '../../engine/units.js';
import { CLEAR_COLD_NIGHT, hourOfLastNightS } from '../fixtures/houses.js';
import { hottestC, sunnyWinterDay } from './sunny-winter-day.js';

/**
 * Common practice, no source: in one sunlit glazed stone box blackened stones run 3 to 12 K above bare pale ones, and 8 K or more above sunlit
 * stones on the open floor. Input: the clear days of sunny-winter-day.ts at 40.1 N (480 W/m2 on the flat), house 4 x 8 m of two films; box of 1.5 m2
 * of pane over 0.15 m3 of stone (10 cm deep), no fan; pale gravel takes up 0.29 of the sun, blackened 0.96; the night model has one colour a box, so
 * half of its stones are blackened here, on the same relations.
 */
const GLAZED_M2 = 1.5;
const BOX = { volume: 0.15, glazed: GLAZED_M2, kind: 'pale gravel' } as const satisfies GreenhouseFile['stoneBox'];
const STEP_S = 600;
const [PANE, BLACK, PALE, CORE, AIR, FILM, FLOOR] = [0, 1, 2, 3, 4, 5, 6] as const;

/** Highest black and pale stones of one box; `contactWPerK` is what touching stones of both colours give each other. */
function halvesOfOneBoxC(contactWPerK: number): { black: number; pale: number } {
  const temps = { black: -Infinity, pale: -Infinity };
  let tempsK: Float64Array | null = null;
  const sources = emptySources(4);
  const half = GLAZED_M2 / 2;
  const day = sunnyWinterDay({ stoneBox: BOX }, {
    observe: ({ model }, record, keptW) => {
      const { lumps, sidesWPerK, sunShare } = model.house.stoneBox!;
      const network = createNetwork({
        nodes: [{ name: 'pane', store: MASSLESS }, { name: 'black', store: sensibleStore(lumps.skinJPerK / 2) }, { name: 'pale', store: sensibleStore(lumps.skinJPerK / 2) }, { name: 'core', store: sensibleStore(lumps.coreJPerK) }],
        boundaries: ['air', 'film', 'floor'],
        radiators: [],
        conductors: [
          steadyConductor(PANE, AIR, PANE_TO_AIR_W_PER_M2K * GLAZED_M2), steadyConductor(PANE, FILM, PANE_TO_FILM_W_PER_M2K * GLAZED_M2),
          ...[BLACK, PALE].flatMap((skin) => [steadyConductor(skin, PANE, STONES_TO_PANE_W_PER_M2K * half), steadyConductor(skin, CORE, lumps.skinToCoreWPerK / 2)]),
          steadyConductor(CORE, AIR, sidesWPerK / 2), steadyConductor(CORE, FLOOR, sidesWPerK / 2), steadyConductor(BLACK, PALE, contactWPerK),
        ],
      });
      tempsK ??= new Float64Array(7).fill(record.tempsK[model.air]!);
      tempsK.set([record.tempsK[model.air]!, record.tempsK[model.films[0]!]!, record.tempsK[model.columns.at(-1)!.surface]!], AIR);
      const onHalfW = (keptW * sunShare * stackDiffuseTransmittance([FILMS.glass.sheet])) / 2;
      stepImplicit({ network, tempsK, stepS: STEP_S, sources, updateSources: (_, out) => {
        out.powerW[BLACK]! += BLACK_COAT.absorptance * onHalfW;
        out.powerW[PALE]! += STONES['pale gravel'].bareAbsorptance * onHalfW;
      } });
      if (kelvinToCelsius(tempsK[BLACK]!) > temps.black) Object.assign(temps, { black: kelvinToCelsius(tempsK[BLACK]!), pale: kelvinToCelsius(tempsK[PALE]!) });
    },
  });
  expect(day.moments.length).toBeGreaterThan(0);
  return temps;
}

/** Stones of 8 cm laid like a chessboard: each black one touches four pale ones through its own height. */
const CHESSBOARD_W_PER_K = (2 * STONES['pale gravel'].thermalConductivityWPerMK * 0.05 * GLAZED_M2) / 0.08 ** 2;

describe('one sunlit glazed stone box, half of it blackened', () => {
  const halves = halvesOfOneBoxC(0);
  const chessboard = halvesOfOneBoxC(CHESSBOARD_W_PER_K);

  it.each([['lying apart', halves], ['touching like the fields of a chessboard', chessboard]] as const)('has its black stones 3 to 12 K above its pale ones, %s', (_name, { black, pale }) => {
    expect(black - pale).toBeGreaterThan(3);
    expect(black - pale).toBeLessThan(12);
  });

  it('evens out where black and pale stones touch', () => {
    expect(chessboard.black - chessboard.pale).toBeLessThan(halves.black - halves.pale);
  });

  it.each([['bare rock', false], ['blackened rock', true]] as const)('has its black half 8 K or more above sunlit stones on the open floor: %s', (_name, blackened) => {
    const day = sunnyWinterDay({ stones: [{ volume: 0.5, blackened }] });
    expect(halves.black - hottestC(day, day.runner.model.stones[0]!.skin)).toBeGreaterThan(8);
  });
});

describe('stones on the open floor', () => {
  it('are warmer blackened than bare by day, and bare than shaded', () => {
    const [black, bare, shaded] = [{ blackened: true }, {}, { sunny: false }].map((given) => {
      const day = sunnyWinterDay({ stones: [{ volume: 0.5, ...given }] });
      return hottestC(day, day.runner.model.stones[0]!.skin);
    });
    expect(black).toBeGreaterThan(bare!);
    expect(bare).toBeGreaterThan(shaded!);
  });
});

/** A coat of black paint and a pane are no heating: what the stones took up by day must be much, and must reach the plants by night. */
describe('what black stones are worth at the next dawn', () => {
  const dawnC = (changes: Partial<GreenhouseFile>, fanByNight = false): number =>
    sunnyWinterDay(changes, fanByNight ? { controls: (timeS) => ({ fansOn: { ...NO_FANS, 'stone-box': timeS > hourOfLastNightS(CLEAR_COLD_NIGHT, -8) } }) } : {}).nextDawnLowC;
  const without = dawnC({});
  const fan = { airflow: 100, power: 5 } as const;
  const box = (blackened: boolean): Partial<GreenhouseFile> => ({ stoneBox: { ...BOX, blackened, fan } });

  it('on the floor: 0.5 m3 of stones give below 0.4 K, and black paint on them below 0.1 K', () => {
    const [bare, black] = [dawnC({ stones: [{ volume: 0.5 }] }), dawnC({ stones: [{ volume: 0.5, blackened: true }] })];
    expect(bare - without).toBeGreaterThan(0);
    expect(bare - without).toBeLessThan(0.4);
    expect(black - bare).toBeGreaterThan(0);
    expect(black - bare).toBeLessThan(0.1);
  });

  it('in a box of 0.15 m3 without a fan at night: black instead of pale gives below 0.1 K, though it stood 10 K above it by day', () => {
    expect(dawnC(box(true)) - dawnC(box(false))).toBeGreaterThan(0);
    expect(dawnC(box(true)) - dawnC(box(false))).toBeLessThan(0.1);
  });

  it('in a box of half a cubic metre a fan by night brings more than standing still, and still below 0.6 K', () => {
    const large: Partial<GreenhouseFile> = { stoneBox: { volume: 0.5, glazed: GLAZED_M2, fan } };
    const [still, blown] = [dawnC(large), dawnC(large, true)];
    expect(blown - still).toBeGreaterThan(0);
    expect(blown - without).toBeLessThan(0.6);
  });
});
