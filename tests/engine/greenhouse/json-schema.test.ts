import { describe, expect, it } from 'vitest';
import { greenhouseJsonSchema } from '../../../engine/greenhouse/greenhouse.js';
import { checked, faultsOf, fileWith } from './files.js';

interface Schema {
  readonly type?: string | readonly string[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: unknown;
  readonly items?: Schema;
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly description?: string;
}

const schema = greenhouseJsonSchema() as Schema & { readonly $schema: string };
const field = (path: string): Schema => path.split('.').reduce<Schema>((at, name) => (at.properties ?? at.items?.properties)![name]!, schema);

/** All parts of the schema, with the name of each. */
function* parts(at: Schema, name = ''): Generator<readonly [string, Schema]> {
  yield [name, at];
  for (const [key, inner] of Object.entries(at.properties ?? {})) yield* parts(inner, `${name}.${key}`);
  for (const inner of [...(at.items ? [at.items] : []), ...(at.anyOf ?? []), ...(at.oneOf ?? [])]) yield* parts(inner, `${name}[]`);
}

describe('JSON Schema of a greenhouse file', () => {
  it('is of the 2020-12 draft and can be written as JSON', () => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  it('has the fields of the file and asks for three of them', () => {
    expect(Object.keys(schema.properties!)).toEqual(['version', 'name', 'place', 'size', 'layers', 'blower', 'shape', 'sideHeight', 'ridgeRuns', 'leakage', 'soil', 'none', 'beds', 'edgeInsulation', 'solidWall', 'curtain', 'drums', 'stones', 'stoneBox', 'tubes', 'fan', 'compost', 'heater', 'vents', 'thermometers', 'now', 'grower']);
    expect(schema.required).toEqual(['place', 'size', 'layers']);
    expect(Object.keys(schema.properties!)).toEqual(expect.arrayContaining(Object.keys(checked())));
  });

  it('refuses unknown fields wherever there are fields, and asks only for fields that exist', () => {
    for (const [name, part] of parts(schema)) {
      if (!part.properties) continue;
      expect(part.additionalProperties, name).toBe(false);
      expect(Object.keys(part.properties), name).toEqual(expect.arrayContaining([...(part.required ?? [])]));
    }
  });

  it('has a type or a choice in every part', () => {
    for (const [name, part] of parts(schema)) expect(part.type ?? part.anyOf ?? part.oneOf ?? part.enum ?? part.const, name).toBeDefined();
  });

  it.each(['place.elevation', 'size.width', 'sideHeight', 'beds.area', 'drums.litres', 'heater.power', 'heater.set', 'vents.area', 'vents.openAbove'])('%s takes a number or text and shows how', (path) => {
    expect(field(path).type).toEqual(['number', 'string']);
    expect(field(path).examples).toHaveLength(2);
  });

  it('says the defaults that the check fills in', () => {
    const filled = checked({ heater: { kind: 'electric', power: 1500 }, vents: { area: 2 } });
    expect([field('sideHeight').default, field('vents.openAbove').default]).toEqual([filled.sideHeight, filled.vents!.openAbove]);
    expect([field('shape').default, field('leakage').default, field('place.openSky').default]).toEqual([filled.shape, filled.leakage, filled.place.openSky]);
    expect([field('grower.hourWorth').default, field('soil.kind').default, field('heater.thermostat').default]).toEqual([filled.grower.hourWorth, filled.soil.kind, filled.heater!.thermostat]);
    expect([field('beds').default, field('drums').default]).toEqual([[], []]);
  });

  it('has examples that the check takes', () => {
    const first = (path: string, i: number): unknown => field(path).examples![i];
    for (const i of [0, 1]) {
      expect(faultsOf(fileWith({
        place: { latitude: first('place.latitude', 0), longitude: first('place.longitude', 0), elevation: first('place.elevation', i), timeZone: first('place.timeZone', 0) },
        size: { width: first('size.width', i), length: first('size.length', i), height: first('size.height', i) },
        sideHeight: first('sideHeight', i),
        beds: [{ name: 'north', area: first('beds.area', i) }],
        drums: [{ litres: first('drums.litres', i), count: 4 }],
        heater: { kind: 'electric', power: first('heater.power', i), set: first('heater.set', i) },
        vents: { area: first('vents.area', i), openAbove: first('vents.openAbove', i) },
      }))).toEqual([]);
    }
  });
});
