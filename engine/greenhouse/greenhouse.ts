import { z } from 'zod';
import { TERRAINS } from '../airflow/wind-at-cover.js';
import { FILM_KINDS } from '../data/films.js';
import { SOIL_KINDS } from '../data/soils.js';
import { SHAPES } from '../cover/profile.js';
import { compostSchema, curtainSchema, drumsSchema, edgeInsulationSchema, fanSchema, heaterSchema, nowSchema, rowCoverSchema, solidWallSchema, stoneBoxSchema, stonesSchema, tubesSchema, ventsSchema } from './devices.js';
import { areaM2, lengthM } from './quantities.js';

/** The version of the file format that this program writes; older versions are lifted when they are read. */
export const GREENHOUSE_VERSION = 1;

const place = z.strictObject({
  name: z.string().min(1).max(120).optional().meta({ description: 'the town or spot in your words', examples: ['Ashgrove'] }),
  latitude: z.number().min(-90).max(90).meta({ description: 'degrees, north positive', examples: [45.1] }),
  longitude: z.number().min(-180).max(180).meta({ description: 'degrees, east positive', examples: [-72.2] }),
  elevation: lengthM(-430, 6000, [180, '590 ft']).optional().meta({ description: 'height above sea level; the weather service fills it in when left out' }),
  timeZone: z.string().optional().meta({ description: 'IANA name; worked out from the place when left out', examples: ['America/Toronto'] }),
  surroundings: z.enum(TERRAINS).default('wooded').meta({ description: 'what the wind meets before the house; wooded is the middle case' }),
  openSky: z.number().min(0.2).max(1).default(0.75).meta({ description: 'share of the sky over the house without trees and slopes; 0.75 is the usual prior (0.6 to 0.9)' }),
});

const film = z.strictObject({
  film: z.enum(FILM_KINDS).default('standard').meta({ description: 'standard polyethylene, thermal (EVA) or ir-barrier film; glass; twin-wall panels' }),
});

const crop = z.union([
  z.string().min(1),
  z.strictObject({
    crop: z.string().min(1),
    hardiness: z.enum(['tender', 'half-hardy', 'hardy', 'very hardy']).optional(),
    worth: z.number().min(0).optional().meta({ description: 'what this crop is worth to you in this bed, in your money; its part of what the others leave of the bed when left out' }),
  }),
], { error: 'expected the name of a crop, for example "kale" or {"crop": "minutina", "hardiness": "hardy"}' });

const bed = z.strictObject({
  name: z.string().min(1).max(40),
  area: areaM2(0.1, 2000, [6, '65 sq ft']).optional().meta({ description: 'growing area; beds without an area share what the path and edge leave' }),
  crops: z.array(crop).default([]),
  cover: rowCoverSchema.optional().meta({ description: 'the row cover that you have for this bed, if any; "on" says whether it lies on it now' }),
  worth: z.number().min(0).optional().meta({ description: 'what the whole bed is worth to you, in your money; 5 for each square metre when left out' }),
  coverMinutes: z.number().min(0).max(600).optional().meta({ description: 'time to cover this bed; 3 minutes and 1 for each square metre when left out' }),
});

const thermometer = z.strictObject({
  name: z.string().min(1).max(40).meta({ description: 'what you call it, and what you say with its number: "shed 21"' }),
  place: z.enum(['inside', 'outside', 'cover', 'soil', 'water', 'stones', 'tube']).default('inside').meta({ description: 'cover: in the air under a row cover' }),
  bed: z.string().min(1).max(40).optional().meta({ description: 'the bed that it hangs over or stands in' }),
  height: lengthM(0, 12, [1.5, '5 ft']).optional().meta({ description: 'above the ground' }),
  hangs: z.enum(['shade', 'sun']).optional().meta({ description: 'sun: it is lit at some time of the day' }),
});

const clockTime = (example: string) => z.string().regex(/^(?:[01]?\d|2[0-3]):[0-5]\d$/u, `expected a time such as "${example}"`);

/** Needless trips that one saved bed may be worth: more than any bed here makes up for (decision rule of this project). */
export const MOST_TRIPS = 1000;

const grower = z.strictObject({
  hourWorth: z.number().min(0).max(500).default(15).meta({ description: 'what an hour of your time is worth, for weighing effort; may be 0' }),
  trip: z.enum(['easy', 'annoying', 'awful']).default('easy').meta({ description: 'how bad it is to go out and do what a night asks for; its minutes count 1, 1.5 or 2.5 times' }),
  careful: z.union([z.enum(['relaxed', 'normal', 'careful', 'never-lose-it']), z.number().min(0).max(MOST_TRIPS)], { error: 'expected "relaxed", "normal", "careful", "never-lose-it" or a number of trips such as 10' }).default('normal').meta({ description: 'how many needless trips one saved bed is worth to you, where a trip costs tripShare of what that bed is worth: 3, 5, 10, 20, or any number' }),
  tripShare: z.number().positive().optional().meta({ description: 'what a trip costs beside the worth of the bed that it saves, as it was counted when you first said how many trips; 1/6 when left out' }),
  carefulSince: z.iso.datetime({ offset: true }).optional().meta({ description: 'when you last said how careful to be: calls that you left and losses before it count no more', examples: ['2026-01-14T18:00:00Z'] }),
  tripSince: z.iso.datetime({ offset: true }).optional().meta({ description: 'when you last said how bad the trip is: calls that you left before it count no more', examples: ['2026-01-14T18:00:00Z'] }),
  carefulAsked: z.boolean().optional().meta({ description: 'you were asked how careful to be, and are not asked unbidden again' }),
  bedtime: clockTime('21:30').default('21:30'),
  eveningAt: clockTime('16:30').optional().meta({ description: 'when the evening message comes; early enough for its work when left out' }),
  morningAt: clockTime('08:00').default('08:00').meta({ description: 'when the morning plan and the question for the low come' }),
  quiet: z.strictObject({ from: clockTime('21:30').default('21:30'), until: clockTime('06:30').default('06:30') }).prefault({}).meta({ description: 'nothing is sent unasked in between' }),
  units: z.enum(['C', 'F']).default('C'),
});

/**
 * What the grower has, in the words of the trade. Only place, size and layers must be given: every other field has a default
 * with its reason beside it.
 */
export const greenhouseSchema = z.strictObject({
  version: z.literal(GREENHOUSE_VERSION).default(GREENHOUSE_VERSION),
  name: z.string().min(1).max(60).default('the greenhouse'),
  place,
  size: z.strictObject({
    width: lengthM(1, 60, [4, '13 ft']),
    length: lengthM(1, 60, [8, '26 ft']),
    height: lengthM(0.8, 12, [2.4, '8 ft']),
  }),
  layers: z.array(film).min(1, 'expected one or two layers of film, for example [{"film": "standard"}]').max(2, 'expected one or two layers of film, outer first'),
  blower: z.boolean().default(false).meta({ description: 'a small blower keeps the two films apart' }),
  shape: z.enum(SHAPES).default('half-round').meta({ description: 'half-round is the usual hooped house, gothic a pointed one; a lean-to has one slope down from a solid back wall' }),
  sideHeight: lengthM(0, 8, [1.5, '5 ft']).default(1.5).meta({ description: 'upright side wall of a gable, gothic or lean-to house' }),
  ridgeRuns: z.union([z.enum(['east-west', 'north-south']), z.number().min(0).max(360)], { error: 'expected "east-west", "north-south" or degrees from north' }).default('east-west').meta({ description: 'or degrees from north' }),
  leakage: z.enum(['tight', 'ordinary', 'leaky']).default('ordinary').meta({ description: 'ordinary is a home-built house with hand-closed sides' }),
  soil: z.strictObject({
    kind: z.enum(SOIL_KINDS).default('loam'),
    moisture: z.enum(['dry', 'moist', 'wet']).default('moist'),
    pathMoisture: z.enum(['dry', 'moist', 'wet']).default('moist').meta({ description: 'bone-dry ground holds and brings little heat; under a winter house it is rarely that dry below the crust' }),
  }).prefault({}),
  none: z.array(z.enum(['covers', 'water', 'air', 'compost', 'heater', 'crops', 'thermometers'])).optional().meta({ description: 'what you said is not there, so that it is read back as none' }),
  beds: z.array(bed).max(12).default([]),
  edgeInsulation: edgeInsulationSchema.optional().meta({ description: 'foam let into the ground along the walls' }),
  solidWall: solidWallSchema.optional().meta({ description: 'an insulated wall along one long side; a lean-to always has one' }),
  curtain: curtainSchema.optional(),
  drums: z.array(drumsSchema).max(6).default([]),
  stones: z.array(stonesSchema).max(6).default([]),
  stoneBox: stoneBoxSchema.optional().meta({ description: 'stones under glass in an insulated box' }),
  tubes: tubesSchema.optional().meta({ description: 'tubes in the ground that house air is blown through' }),
  fan: fanSchema.optional().meta({ description: 'a fan that stirs the air of the house' }),
  compost: compostSchema.optional(),
  heater: heaterSchema.optional(),
  vents: ventsSchema.optional(),
  thermometers: z.array(thermometer).max(12).default([]),
  now: nowSchema.prefault({}),
  grower: grower.prefault({}),
});

export type GreenhouseFile = z.input<typeof greenhouseSchema>;
export type Greenhouse = z.output<typeof greenhouseSchema>;

/** The JSON Schema of a greenhouse file. Defaults are in the first unit, which is also read: they are said where the library leaves them out. */
export function greenhouseJsonSchema(): unknown {
  return z.toJSONSchema(greenhouseSchema, {
    io: 'input',
    unrepresentable: 'any',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema instanceof z.ZodDefault) jsonSchema.default = zodSchema.def.defaultValue;
    },
  });
}
