import { z } from 'zod';
import { CURTAIN_KINDS } from '../data/curtains.js';
import { HEATER_KIND_NAMES } from '../data/heater-kinds.js';
import { STONE_KINDS } from '../data/stones.js';
import { airflowM3PerH, areaM2, energyWh, fabricGPerM2, lengthM, powerW, tempC, volumeL, volumeM3 } from './quantities.js';

/** A cover over a bed, with another over it if there is one: both are laid and taken off together. */
const onePlane = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fabric'), weight: fabricGPerM2(10, 120, [30, '1 oz']).default(30) }),
  z.strictObject({ kind: z.literal('film-tunnel') }),
], { error: 'expected a second cover such as {"kind": "fabric", "weight": 17} or {"kind": "film-tunnel"}' });
const laid = { on: z.boolean().default(false), second: onePlane.optional().meta({ description: 'another cover over the first; both are laid together' }) };
export const rowCoverSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('fabric'), weight: fabricGPerM2(10, 120, [30, '1 oz']).default(30), ...laid }),
  z.strictObject({ kind: z.literal('film-tunnel'), ...laid }),
], { error: 'expected a cover such as {"kind": "fabric", "weight": 30} or {"kind": "film-tunnel"}' });

export const drumsSchema = z.strictObject({
  litres: volumeL(5, 5000, [208, '55 gal']).meta({ description: 'water in one vessel' }),
  count: z.number().int().min(1).max(500),
  touching: z.boolean().default(false),
  sunny: z.boolean().default(true),
});

export const heaterSchema = z.strictObject({
  kind: z.enum(HEATER_KIND_NAMES),
  power: powerW(30, 100_000, [1500, '5000 BTU/h']).meta({ description: 'rated input; a tea light has about 39 W, whatever pot stands over it' }),
  thermostat: z.boolean().default(true).meta({ description: 'false for what burns at one rate; candles and wood never have one' }),
  on: z.boolean().default(false).meta({ description: 'running already, without being asked' }),
  set: tempC(-5, 25, [2, '36 F']).optional().meta({ description: 'thermostat setting while it is on' }),
  burnHours: z.number().min(0.5).max(48).optional().meta({ description: 'how long one filling burns; 4 for candles, 5 for a wood stove, without end for the others' }),
  price: z.number().min(0).optional().meta({ description: 'price of one kWh, kg, litre or m3; a placeholder when left out' }),
  safetyRead: z.boolean().default(false).meta({ description: 'true once you have read the safety words for a flame in a closed house; without it no flame is ever advised, and one without a flue is not advised with it either' }),
});

export const ventsSchema = z.strictObject({
  area: areaM2(0.05, 200, [2, '20 sq ft']).meta({ description: 'area when fully open' }),
  openAbove: tempC(5, 40, [24, '75 F']).default(24).meta({ description: 'they open by day when it gets warmer than this inside' }),
  opener: z.boolean().default(false).meta({ description: 'true when an opener moves them by itself: nobody has to shut them' }),
});

/** A fan and what drives it. */
export const fanSchema = z.strictObject({
  airflow: airflowM3PerH(5, 5000, [150, '90 cfm']).meta({ description: 'with the tubes or stones it blows through' }),
  power: powerW(0.5, 2000, [20]).default(20),
  supply: z.enum(['mains', 'battery', 'sun']).default('mains').meta({ description: 'sun is a panel without a battery: it stands still at night' }),
  battery: energyWh(1, 50_000, [240, '1.2 kWh']).optional().meta({ description: 'capacity of the battery; a fifth of it is left in, for its life' }),
  on: z.boolean().default(false).meta({ description: 'running day and night already' }),
});

export const edgeInsulationSchema = z.strictObject({
  depth: lengthM(0.1, 2, [0.6, '2 ft']).meta({ description: 'how deep it reaches' }),
  thickness: lengthM(0.01, 0.3, [0.05, '2 in']).default(0.05),
});

export const solidWallSchema = z.strictObject({
  height: lengthM(0.3, 12, [2, '7 ft']).optional().meta({ description: 'the whole back wall of a lean-to, else up to 2 m when left out' }),
  foam: lengthM(0, 0.5, [0.05, '2 in']).default(0.05).meta({ description: 'thickness of insulation on its outside' }),
  masonry: lengthM(0, 1, [0.3, '1 ft']).default(0).meta({ description: 'thickness of the stone, brick or concrete inside the insulation' }),
  stone: z.enum(STONE_KINDS).default('brick'),
  blackened: z.boolean().default(false),
  behind: tempC(5, 30, [18, '65 F']).optional().meta({ description: 'temperature of the room behind it, when it is the wall of a heated building' }),
  faces: z.enum(['north', 'east', 'south', 'west']).optional().meta({ description: 'the side it stands on; the shady one when left out' }),
});

export const curtainSchema = z.strictObject({
  kind: z.enum(CURTAIN_KINDS).meta({ description: 'drawn flat over the beds: film, fabric, or foil with metal strips' }),
  drawn: z.boolean().default(false),
});

export const stonesSchema = z.strictObject({
  kind: z.enum(STONE_KINDS).default('rock'),
  volume: volumeM3(0.01, 200, [1, '35 cu ft']),
  exposed: areaM2(0.05, 500, [4, '40 sq ft']).optional().meta({ description: 'surface that air and sun reach; that of a heap when left out' }),
  blackened: z.boolean().default(false),
  sunny: z.boolean().default(true).meta({ description: 'false when they stand in the shade of crops or benches' }),
});

export const stoneBoxSchema = z.strictObject({
  kind: z.enum(STONE_KINDS).default('rock'),
  volume: volumeM3(0.02, 50, [0.5, '18 cu ft']),
  glazed: areaM2(0.1, 50, [1, '10 sq ft']).meta({ description: 'area of its pane' }),
  blackened: z.boolean().default(true),
  sunny: z.boolean().default(true),
  stoneSize: lengthM(0.01, 0.4, [0.08, '3 in']).default(0.08),
  fan: fanSchema.optional().meta({ description: 'blows house air through the stones' }),
});

export const tubesSchema = z.strictObject({
  length: lengthM(1, 200, [10, '33 ft']).meta({ description: 'of one tube' }),
  count: z.number().int().min(1).max(50).default(1),
  diameter: lengthM(0.03, 0.6, [0.1, '4 in']).default(0.1),
  depth: lengthM(0.1, 4, [0.6, '2 ft']).default(0.6),
  fan: fanSchema,
});

export const compostSchema = z.strictObject({
  volume: volumeM3(0.1, 50, [1, '1.3 cu yd']),
  started: z.iso.date({ error: 'expected the day it was heaped up, for example "2026-10-20"' }).meta({ examples: ['2026-10-20'], description: 'a heap warms up in a few days and fades within weeks' }),
  against: z.string().min(1).optional().meta({ description: 'name of the bed it lies against or under; it stands free when left out' }),
  fan: fanSchema.optional().meta({ description: 'blows house air through pipes in the heap; the heap then stands outside' }),
});

/** What has gone wrong or lies on the roof now; it counts from this evening on. */
export const nowSchema = z.strictObject({
  snowOnRoof: lengthM(0, 2, [0.1, '4 in']).default(0),
  powerOut: z.boolean().default(false),
  blowerOff: z.boolean().default(false).meta({ description: 'the blower that keeps two films apart has stopped' }),
  tornFilm: areaM2(0, 100, [0.2, '2 sq ft']).default(0).meta({ description: 'area of the hole' }),
  doorOpen: z.boolean().default(false),
  fuelOut: z.boolean().default(false),
  fansDead: z.boolean().default(false),
});
