import type { z } from 'zod';
import { findCrop } from '../crops/catalogue.js';
import { greenhouseSchema, type Greenhouse } from './greenhouse.js';
import { deviceFaults } from './device-faults.js';
import type { GreenhouseFault } from './fault.js';
import { LEAST_BED_M2 } from './floor-columns.js';

export type GreenhouseCheck =
  | { readonly ok: true; readonly greenhouse: Greenhouse; readonly unknownCrops: readonly string[] }
  | { readonly ok: false; readonly faults: readonly GreenhouseFault[] };

/** A right value for the fields that have no example of their own in their message. */
const EXAMPLES: Readonly<Record<string, string>> = {
  '': '{"place": {"latitude": 45.1, "longitude": -72.2}, "size": {"width": 4, "length": 8, "height": 2.4}, "layers": [{"film": "standard"}]}',
  version: '1',
  name: '"the greenhouse"',
  place: '{"latitude": 45.1, "longitude": -72.2}',
  'place.latitude': '45.1',
  'place.longitude': '-72.2',
  'place.openSky': '0.75',
  'place.surroundings': '"wooded"',
  size: '{"width": 4, "length": 8, "height": 2.4}',
  layers: '[{"film": "standard"}, {"film": "standard"}]',
  'layers.film': '"standard"',
  shape: '"half-round"',
  ridgeRuns: '"east-west" or 75',
  leakage: '"ordinary"',
  soil: '{"kind": "loam", "moisture": "moist"}',
  'soil.kind': '"loam"',
  'soil.moisture': '"moist"',
  beds: '[{"name": "north bed", "area": 6, "crops": ["kale"]}]',
  'beds.name': '"north bed"',
  drums: '[{"litres": 208, "count": 4}]',
  'drums.count': '4',
  heater: '{"kind": "electric", "power": 1500}',
  'heater.kind': '"electric"',
  vents: '{"area": 2}',
  edgeInsulation: '{"depth": 0.6, "thickness": 0.05}',
  solidWall: '{"height": 1.8, "foam": 0.05, "masonry": 0.2}',
  curtain: '{"kind": "foil"}',
  stones: '[{"kind": "rock", "volume": 1, "blackened": true}]',
  'stones.kind': '"rock"',
  stoneBox: '{"volume": 0.5, "glazed": 1, "fan": {"airflow": 100, "supply": "sun"}}',
  tubes: '{"length": 12, "count": 2, "depth": 0.8, "fan": {"airflow": 150, "power": 25}}',
  fan: '{"airflow": 800, "power": 40}',
  compost: '{"volume": 1, "started": "2026-10-20", "against": "north bed"}',
  thermometers: '[{"name": "shed", "place": "outside", "height": 1.5, "hangs": "shade"}]',
  'thermometers.name': '"shed"',
  'thermometers.place': '"outside"',
  'thermometers.hangs': '"shade"',
  now: '{"snowOnRoof": 0.1, "powerOut": true}',
  grower: '{"bedtime": "21:30", "units": "C"}',
};

function exampleFor(path: readonly PropertyKey[]): string | null {
  const names = path.filter((part) => typeof part === 'string');
  for (let length = names.length; length >= 0; length -= 1) {
    const example = EXAMPLES[names.slice(0, length).join('.')];
    if (example !== undefined) return length === names.length ? example : `${names.slice(0, length).join('.') || 'the file'}: ${example}`;
  }
  return null;
}

const fieldName = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, part) => (typeof part === 'number' ? `${text}[${part}]` : `${text}${text ? '.' : ''}${String(part)}`), '') || 'the file';

function fault(issue: z.core.$ZodIssue): GreenhouseFault {
  const example = issue.message.includes('for example') || issue.message.includes('such as') ? null : exampleFor(issue.path);
  const message = issue.code === 'unrecognized_keys' ? `no such field: ${issue.keys.join(', ')}` : issue.message.replace(/^Invalid input: /u, '');
  return { field: fieldName(issue.path), message: example === null ? message : `${message}; for example ${example}` };
}

/**
 * Checks a greenhouse file and fills in the defaults.
 * Units: lengths in m, areas in m2, volumes in L, temperatures in degrees C unless a text with a unit is given.
 * Valid: see the schema.
 * Outside: every fault is returned with its field and an example; nothing is guessed.
 * Source: schema of this project.
 */
export function checkGreenhouse(file: unknown): GreenhouseCheck {
  const parsed = greenhouseSchema.safeParse(file);
  if (!parsed.success) return { ok: false, faults: parsed.error.issues.map(fault) };
  const faults = contradictions(parsed.data);
  if (faults.length > 0) return { ok: false, faults };
  const unknownCrops = parsed.data.beds.flatMap((bed) => bed.crops).map((entry) => (typeof entry === 'string' ? entry : entry.crop)).filter((name) => findCrop(name) === null);
  return { ok: true, greenhouse: parsed.data, unknownCrops: [...new Set(unknownCrops)] };
}

/** Areas are written to a few digits: this much too much is no contradiction. */
const ROUNDING_M2 = 0.01;

/** Taller than this for its width is a tower, not a house that this model knows. */
const MOST_HEIGHT_TO_WIDTH = 2;

/** What each field alone cannot know. */
function contradictions(greenhouse: Greenhouse): GreenhouseFault[] {
  const faults: GreenhouseFault[] = [];
  const { size, beds } = greenhouse;
  const named = new Set<string>();
  beds.forEach((bed, i) => {
    if (named.has(bed.name)) faults.push({ field: `beds[${i}].name`, message: `two beds are called ${JSON.stringify(bed.name)}; give each its own name, for example "north bed"` });
    named.add(bed.name);
  });
  faults.push(...thermometerFaults(greenhouse));
  const floorM2 = size.width * size.length;
  const bedM2 = beds.reduce((sum, bed) => sum + (bed.area ?? LEAST_BED_M2), 0);
  if (bedM2 > floorM2 + ROUNDING_M2) faults.push({ field: 'beds', message: `the beds add up to ${bedM2.toFixed(1)} m2, but the floor has ${floorM2.toFixed(1)} m2; for example an area of ${(floorM2 / (beds.length + 1)).toFixed(1)} for each` });
  if (size.height > MOST_HEIGHT_TO_WIDTH * size.width) faults.push({ field: 'size.height', message: `${size.height} m is too high for a width of ${size.width} m; expected at most ${(MOST_HEIGHT_TO_WIDTH * size.width).toFixed(1)}, for example ${(size.width / 2).toFixed(1)}` });
  if (greenhouse.shape !== 'half-round' && greenhouse.sideHeight > size.height - 0.1) faults.push({ field: 'sideHeight', message: `the side wall (${greenhouse.sideHeight} m) must be lower than the ridge (${size.height} m), for example ${(size.height * 0.6).toFixed(1)}` });
  if (greenhouse.place.timeZone !== undefined && !/^[A-Za-z_]+(?:\/[A-Za-z0-9_+-]+)*$/u.test(greenhouse.place.timeZone)) faults.push({ field: 'place.timeZone', message: `no such time zone: ${JSON.stringify(greenhouse.place.timeZone)}; for example "America/Toronto"` });
  return [...faults, ...deviceFaults(greenhouse)];
}

function thermometerFaults({ thermometers, beds }: Greenhouse): readonly GreenhouseFault[] {
  return thermometers.flatMap(({ name, bed }, i): GreenhouseFault[] => [
    ...(thermometers.findIndex((other) => other.name === name) < i ? [{ field: `thermometers[${i}].name`, message: `two thermometers are called ${JSON.stringify(name)}; give each its own name, for example "shed"` }] : []),
    ...(bed !== undefined && !beds.some((one) => one.name === bed) ? [{ field: `thermometers[${i}].bed`, message: `no bed is called ${JSON.stringify(bed)}; expected ${beds.length > 0 ? `one of ${beds.map((one) => JSON.stringify(one.name)).join(', ')}` : 'the name of a bed'}, for example ${JSON.stringify(beds[0]?.name ?? 'north bed')}` }] : []),
  ]);
}
