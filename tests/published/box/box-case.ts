import { z } from 'zod';

/**
 * A box case as its description file has it: one rectangular room along the compass, walls in layers, windows, leakage, a fan by the
 * clock, a constant gain, no heating and no cooling. README.md of this folder explains every field.
 */
export const WALLS = ['north', 'east', 'south', 'west'] as const;
export type Wall = (typeof WALLS)[number];

const share = z.number().min(0).max(1);
/** A room whose surfaces absorb nothing would hold its radiation for ever. */
const absorbing = z.number().min(0.01).max(1);
const positive = z.number().positive();
const notNegative = z.number().nonnegative();
const hour = z.number().int().min(0).max(24);

const layer = z.strictObject({ name: z.string().min(1), thicknessM: positive, conductivityWPerMK: positive, densityKgPerM3: notNegative, heatCapacityJPerKgK: notNegative });

const pane = z.strictObject({
  thicknessM: positive,
  conductivityWPerMK: positive,
  densityKgPerM3: notNegative,
  heatCapacityJPerKgK: notNegative,
  longwaveEmittance: absorbing,
  sun: z.union([z.strictObject({ transmittance: share, reflectance: share }), z.strictObject({ refractiveIndex: z.number().min(1.01).max(3), absorbedShare: share })], {
    error: 'expected {"transmittance": 0.834, "reflectance": 0.075} (whole pane, straight on) or {"refractiveIndex": 1.526, "absorbedShare": 0.06}',
  }),
});

const gap = z.union([z.strictObject({ widthM: positive }), z.strictObject({ conductanceWPerM2K: positive })], {
  error: 'expected {"widthM": 0.012} (air, worked out) or {"conductanceWPerM2K": 6.3} (convection and longwave together)',
});

const glazing = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('panes'), panes: z.array(pane).min(1).max(4), gaps: z.array(gap) }),
  z.strictObject({
    kind: z.literal('u-value'),
    uValueWPerM2K: positive,
    filmsIncluded: z.strictObject({ insideWPerM2K: positive, outsideWPerM2K: positive }),
    transmittance: z.array(z.strictObject({ incidenceDeg: z.number().min(0).max(90), share })).min(2),
    absorbedOutside: share,
    absorbedInside: share,
    longwaveEmittance: absorbing,
  }),
]);

const opening = z.strictObject({ wall: z.enum(WALLS), widthM: positive, heightM: positive, fromCornerM: notNegative, sillM: notNegative });
const airDensity = z.enum(['site', 'sea-level']).default('site');

export const boxCaseSchema = z.strictObject({
  name: z.string().min(1),
  source: z.string().min(1),
  site: z.strictObject({
    latitude: z.number().min(-89).max(89),
    longitude: z.number().min(-180).max(180),
    utcOffsetH: z.number().min(-12).max(14),
    groundReflectance: share,
    terrain: z.enum(['open', 'wooded', 'town']),
  }),
  weather: z.strictObject({ sunClock: z.enum(['standard', 'solar']), diffuse: z.enum(['given', 'global-less-beam']) }),
  size: z.strictObject({ eastWestM: positive, northSouthM: positive, heightM: z.number().min(0.6).max(20) }),
  constructions: z.record(z.string(), z.array(layer).min(1)),
  walls: z.strictObject({ north: z.string(), east: z.string(), south: z.string(), west: z.string() }),
  roof: z.string(),
  floor: z.strictObject({ construction: z.string(), underside: z.discriminatedUnion('kind', [z.strictObject({ kind: z.literal('outside-air') }), z.strictObject({ kind: z.literal('ground'), tempC: z.number().min(-30).max(40) })]) }),
  finish: z.strictObject({ solarAbsorptanceOutside: share, solarAbsorptanceInside: absorbing, longwaveEmittanceOutside: share, longwaveEmittanceInside: absorbing }),
  glazing: glazing.optional(),
  windows: z.array(opening).default([]),
  gains: z.strictObject({ convectiveW: notNegative, radiativeW: notNegative }),
  infiltration: z.strictObject({ airChangesPerHour: notNegative, airDensity }),
  ventilation: z.array(z.strictObject({ fromHour: hour, toHour: hour, airflowM3PerH: positive, airDensity })).default([]),
});

export type BoxCase = z.output<typeof boxCaseSchema>;
export type Layer = z.output<typeof layer>;
export type Glazing = z.output<typeof glazing>;
export type Gap = z.output<typeof gap>;
export type Pane = z.output<typeof pane>;
export type Opening = z.output<typeof opening>;

export type BoxCaseCheck = { readonly ok: true; readonly boxCase: BoxCase } | { readonly ok: false; readonly faults: readonly string[] };

const fieldName = (path: readonly PropertyKey[]): string => path.reduce<string>((text, part) => (typeof part === 'number' ? `${text}[${part}]` : `${text}${text ? '.' : ''}${String(part)}`), '') || 'the file';

function faultText(issue: z.core.$ZodIssue): string {
  const message = issue.code === 'unrecognized_keys' ? `no such field: ${issue.keys.join(', ')}` : issue.message.replace(/^Invalid input: /u, '');
  return `${fieldName(issue.path)}: ${message}`;
}

/** Checks a parsed description; every fault names its field and what was expected. */
export function checkBoxCase(file: unknown): BoxCaseCheck {
  const parsed = boxCaseSchema.safeParse(file);
  if (!parsed.success) return { ok: false, faults: parsed.error.issues.map(faultText) };
  const faults = [...missingConstructions(parsed.data), ...glazingFaults(parsed.data), ...windowFaults(parsed.data)];
  return faults.length > 0 ? { ok: false, faults } : { ok: true, boxCase: parsed.data };
}

function missingConstructions({ constructions, walls, roof, floor }: BoxCase): readonly string[] {
  const used: readonly (readonly [string, string])[] = [...WALLS.map((wall) => [`walls.${wall}`, walls[wall]] as const), ['roof', roof], ['floor.construction', floor.construction]];
  const known = Object.keys(constructions);
  return used.filter(([, name]) => !known.includes(name)).map(([field, name]) => `${field}: no construction is called ${JSON.stringify(name)}; expected one of ${known.map((each) => JSON.stringify(each)).join(', ')}`);
}

function glazingFaults({ glazing, windows }: BoxCase): readonly string[] {
  if (!glazing) return windows.length > 0 ? ['glazing: missing, but there are windows'] : [];
  if (glazing.kind === 'u-value') {
    const { uValueWPerM2K, filmsIncluded, transmittance } = glazing;
    const filmsM2KPerW = 1 / filmsIncluded.insideWPerM2K + 1 / filmsIncluded.outsideWPerM2K;
    const rising = transmittance.every(({ incidenceDeg }, i) => i === 0 || incidenceDeg > transmittance[i - 1]!.incidenceDeg);
    return [
      ...(uValueWPerM2K * filmsM2KPerW < 1 ? [] : [`glazing.uValueWPerM2K: ${uValueWPerM2K} leaves nothing for the glass; with these films expected less than ${(1 / filmsM2KPerW).toFixed(2)}`]),
      ...(rising && transmittance[0]!.incidenceDeg === 0 && transmittance.at(-1)!.incidenceDeg === 90 ? [] : ['glazing.transmittance: expected rising angles from 0 to 90 degrees']),
    ];
  }
  const opaque = glazing.panes.flatMap(({ sun }, p) => ('transmittance' in sun && sun.transmittance + sun.reflectance > 1 ? [`glazing.panes[${p}].sun: transmittance and reflectance add up to more than 1`] : []));
  return glazing.gaps.length === glazing.panes.length - 1 ? opaque : [...opaque, `glazing.gaps: expected ${glazing.panes.length - 1} for ${glazing.panes.length} panes, got ${glazing.gaps.length}`];
}

/** Sums of written lengths may be off by rounding. */
const ROUNDING_M = 1e-9;

function windowFaults({ windows, size }: BoxCase): readonly string[] {
  const outside = windows.flatMap(({ wall, widthM, heightM, fromCornerM, sillM }, w) => {
    const lengthM = wall === 'north' || wall === 'south' ? size.eastWestM : size.northSouthM;
    const tooWide = fromCornerM + widthM > lengthM + ROUNDING_M;
    const tooHigh = sillM + heightM > size.heightM + ROUNDING_M;
    return tooWide || tooHigh ? [`windows[${w}]: reaches beyond its wall of ${lengthM} x ${size.heightM} m`] : [];
  });
  const overlapping = windows.flatMap((a, i) => windows.slice(0, i).flatMap((b, j) => (overlap(a, b) ? [`windows[${i}]: overlaps windows[${j}]`] : [])));
  return [...outside, ...overlapping];
}

const apart = (from: number, length: number, otherFrom: number, otherLength: number): boolean => from + length <= otherFrom + ROUNDING_M || otherFrom + otherLength <= from + ROUNDING_M;
const overlap = (a: Opening, b: Opening): boolean => a.wall === b.wall && !apart(a.fromCornerM, a.widthM, b.fromCornerM, b.widthM) && !apart(a.sillM, a.heightM, b.sillM, b.heightM);
