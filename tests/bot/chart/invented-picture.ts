import fc from 'fast-check';
import type { NightFlag, NightLine, NightPicture } from '../../../bot/chart/night-picture.js';

/** Invented pictures of nights: a smooth fall through the night and a rise after dawn. Nothing here comes from the model. */
const HOUR_S = 3600;
const STEP_S = 600;
/** 16:00 in Toronto on 25 November 2026. */
export const AFTERNOON_S = Date.parse('2026-11-25T16:00:00-05:00') / 1000;

export interface NightShape {
  readonly hoursBeforeSunset: number;
  readonly nightHours: number;
  readonly startC: number;
  readonly lowC: number;
  /** How the other lines lie to the plant's (K): outside, inside, under the cover; null where there is no such line. */
  readonly offsetsC: { readonly outside: number; readonly inside: number | null; readonly cover: number | null };
  readonly halfBandC: number;
  readonly damageBelowLowC: number;
  readonly killedBelowDamageC: number | null;
  readonly asked: string;
  readonly bed: string;
  readonly greenhouse: string;
  readonly units: 'C' | 'F';
  readonly flags: readonly NightFlag[];
}

export const PLAIN_SHAPE: NightShape = {
  hoursBeforeSunset: 1, nightHours: 15, startC: 8, lowC: -4, offsetsC: { outside: -6, inside: -3, cover: 1.5 }, halfBandC: 2.5, damageBelowLowC: 1.5, killedBelowDamageC: 4,
  asked: 'kale', bed: 'the north bed', greenhouse: 'Wren Hollow', units: 'C',
  flags: [{ atS: AFTERNOON_S + 0.7 * HOUR_S, does: 'cover', beds: ['the north bed'] }],
};

export function inventedPicture(changes: Partial<NightShape> = {}): NightPicture {
  const shape = { ...PLAIN_SHAPE, ...changes };
  const { hoursBeforeSunset, nightHours, startC, lowC, offsetsC, halfBandC } = shape;
  const sunsetS = AFTERNOON_S + hoursBeforeSunset * HOUR_S;
  const sunriseS = sunsetS + nightHours * HOUR_S;
  const steps = Math.round(((hoursBeforeSunset + nightHours + 2) * HOUR_S) / STEP_S);
  const lowStep = Math.round(((hoursBeforeSunset + nightHours) * HOUR_S) / STEP_S);
  const timesS = Array.from({ length: steps }, (_, i) => AFTERNOON_S + (i + 1) * STEP_S);
  const plantC = (i: number): number => (i < lowStep ? lowC + (startC - lowC) * (1 - (i + 1) / lowStep) ** 2 : lowC + (startC - lowC) * ((i + 1 - lowStep) / (steps - lowStep)) ** 2);
  const line = (name: NightLine['name'], place: NightLine['place'], offsetC: number): NightLine => ({ name, place, points: timesS.map((timeS, i) => ({ timeS, tempC: plantC(i) + offsetC })) });
  const damageBeginsC = lowC - shape.damageBelowLowC;
  return {
    greenhouse: shape.greenhouse, zone: 'America/Toronto', units: shape.units, nowS: AFTERNOON_S, eveningS: sunsetS,
    span: { fromS: timesS[0]!, toS: timesS.at(-1)! }, sun: { sunsetS, sunriseS }, night: { fromS: sunsetS, toS: sunriseS },
    lines: [
      line('plant', { place: 'leaf', bed: shape.bed }, 0),
      ...(offsetsC.cover === null ? [] : [line('cover', { place: 'cover', bed: shape.bed }, offsetsC.cover)]),
      ...(offsetsC.inside === null ? [] : [line('inside', { place: 'inside' }, offsetsC.inside)]),
      line('outside', { place: 'outside' }, offsetsC.outside),
    ],
    band: timesS.map((timeS, i) => ({ timeS, lowC: plantC(i) - halfBandC, highC: plantC(i) + halfBandC })),
    low: { timeS: timesS[lowStep - 1]!, tempC: lowC },
    crop: { asked: shape.asked, bed: shape.bed, isUnderCover: offsetsC.cover !== null, isPicked: false, verdict: 'watch', damageProbability: 0.2, lossProbability: 0.02, damageBeginsC, killedC: shape.killedBelowDamageC === null ? null : damageBeginsC - shape.killedBelowDamageC },
    flags: shape.flags, idle: 'calm', stale: null, isInvented: false, source: 'open-meteo',
  };
}

/** Evenly spread: numbers by their bit pattern would nearly all lie at zero. */
const within = (min: number, max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max: 1000 }).map((share) => min + ((max - min) * share) / 1000);

const FLAGS: fc.Arbitrary<NightFlag> = fc.record({ hours: within(0, 16), does: fc.constantFrom('cover', 'pick', 'heater', 'fan', 'shut-vents', 'draw-curtain') }).map(({ hours, does }): NightFlag => {
  const atS = AFTERNOON_S + hours * HOUR_S;
  switch (does) {
    case 'cover':
      return { atS, does, beds: ['the long bed by the door', 'east'] };
    case 'pick':
      return { atS, does, crops: ['lettuce'] };
    case 'heater':
      return { atS, does, setC: 2 };
    case 'fan':
      return { atS, does, fan: 'tubes', run: true };
    default:
      return { atS, does };
  }
});

/** Nights of every kind: short and long, mild and bitter, lines close together and far apart, limits anywhere. */
export const ANY_SHAPE: fc.Arbitrary<NightShape> = fc.record({
  hoursBeforeSunset: within(0.5, 3),
  nightHours: within(5, 17),
  lowC: within(-25, 8),
  fallC: within(1, 15),
  offsetsC: fc.record({ outside: within(-9, 2), inside: fc.option(within(-6, 1)), cover: fc.option(within(0.5, 5)) }),
  halfBandC: within(0.6, 6),
  damageBelowLowC: within(-12, 15),
  killedBelowDamageC: fc.option(within(0.8, 12)),
  asked: fc.constantFrom('kale', 'Brussels sprouts', 'mache', 'very old purple sprouting broccoli of my aunt'),
  bed: fc.constantFrom('bed', 'the north bed', 'WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW'),
  greenhouse: fc.constantFrom('Wren Hollow', 'WWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWWW'),
  units: fc.constantFrom('C' as const, 'F' as const),
  flags: fc.array(FLAGS, { maxLength: 8 }).map((flags) => flags.sort((a, b) => a.atS - b.atS)),
}).map(({ fallC, ...shape }) => ({ ...shape, startC: shape.lowC + fallC }));
