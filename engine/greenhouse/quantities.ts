import { z } from 'zod';
import { fahrenheitToCelsius, KG_PER_M2_PER_OUNCE_PER_YARD2, LITRES_PER_US_GALLON, METRES_PER_FOOT, METRES_PER_INCH, WATTS_PER_BTU_PER_HOUR } from '../units.js';

/**
 * Numbers as growers write them: plain in the first unit, or text with a unit. The value that comes out is in the first unit.
 */
interface Quantity {
  readonly name: string;
  readonly examples: readonly (number | string)[];
  /** Unit spellings and what one of them is in the first unit; a function where there is an offset. */
  readonly units: Readonly<Record<string, number | ((value: number) => number)>>;
  readonly lowest: number;
  readonly highest: number;
}

const WRITTEN = /^\s*([+-]?\d+(?:[.,]\d+)?)\s*([^\d\s].*?)?\s*$/u;
/** Spellings that a plain text message can carry; the others are read but not named. */
const PLAIN = /^[ -~]+$/u;
const FEET_AND_INCHES = /^\s*(\d+(?:\.\d+)?)\s*(?:ft|feet|')\s*(\d+(?:\.\d+)?)\s*(?:in|inch|inches|")\s*$/u;

function valueOf(quantity: Quantity, written: number | string): number | null {
  if (typeof written === 'number') return written;
  const both = FEET_AND_INCHES.exec(written);
  if (both && 'ft' in quantity.units) return Number(both[1]) * METRES_PER_FOOT + Number(both[2]) * METRES_PER_INCH;
  const parts = WRITTEN.exec(written);
  if (!parts) return null;
  const value = Number(parts[1]!.replace(',', '.'));
  const unit = parts[2]?.toLowerCase();
  if (unit === undefined) return value;
  const conversion = Object.hasOwn(quantity.units, unit) ? quantity.units[unit] : undefined;
  if (conversion === undefined) return null;
  return typeof conversion === 'number' ? value * conversion : conversion(value);
}

function quantity(definition: Quantity) {
  const example = definition.examples.map((e) => JSON.stringify(e)).join(' or ');
  const units = Object.keys(definition.units).filter((unit) => PLAIN.test(unit)).join(', ');
  const range = `${definition.lowest} to ${definition.highest} ${Object.keys(definition.units)[0]}`;
  return z
    .union([z.number(), z.string()], { error: `expected ${definition.name}, for example ${example}` })
    .meta({ examples: [...definition.examples] })
    .transform((written, context) => {
      const value = valueOf(definition, written);
      if (value === null || !Number.isFinite(value)) {
        context.addIssue({ code: 'custom', message: `expected ${definition.name} with one of the units ${units}, for example ${example}; got ${JSON.stringify(written)}` });
        return z.NEVER;
      }
      if (value < definition.lowest || value > definition.highest) {
        context.addIssue({ code: 'custom', message: `expected ${definition.name} from ${range}, for example ${example}; got ${JSON.stringify(written)}` });
        return z.NEVER;
      }
      return value;
    });
}

const FEET = { ft: METRES_PER_FOOT, feet: METRES_PER_FOOT, foot: METRES_PER_FOOT, "'": METRES_PER_FOOT, in: METRES_PER_INCH, inch: METRES_PER_INCH, inches: METRES_PER_INCH, '"': METRES_PER_INCH };
const METRES = { m: 1, metres: 1, meters: 1, cm: 0.01, ...FEET };

export const lengthM = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a length', examples, units: METRES, lowest, highest });

const SQUARE_METRES = { m2: 1, 'm²': 1, 'sq m': 1, ft2: METRES_PER_FOOT ** 2, 'ft²': METRES_PER_FOOT ** 2, 'sq ft': METRES_PER_FOOT ** 2 };
export const areaM2 = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'an area', examples, units: SQUARE_METRES, lowest, highest });

const LITRES = { l: 1, litres: 1, liters: 1, gal: LITRES_PER_US_GALLON, gallons: LITRES_PER_US_GALLON, gallon: LITRES_PER_US_GALLON };
export const volumeL = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a volume', examples, units: LITRES, lowest, highest });

const DEGREES = { c: 1, '°c': 1, f: fahrenheitToCelsius, '°f': fahrenheitToCelsius };
export const tempC = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a temperature', examples, units: DEGREES, lowest, highest });

const WATTS = { w: 1, watts: 1, kw: 1000, 'btu/h': WATTS_PER_BTU_PER_HOUR, btu: WATTS_PER_BTU_PER_HOUR };
export const powerW = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a heating power', examples, units: WATTS, lowest, highest });

const GRAMS_PER_KG = 1000;
const GRAMS_PER_M2_PER_OUNCE = GRAMS_PER_KG * KG_PER_M2_PER_OUNCE_PER_YARD2;
const OUNCES = { 'g/m2': 1, 'g/m²': 1, g: 1, gsm: 1, 'oz/yd2': GRAMS_PER_M2_PER_OUNCE, oz: GRAMS_PER_M2_PER_OUNCE };
export const fabricGPerM2 = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a fabric weight', examples, units: OUNCES, lowest, highest });

const CUBIC_METRES = { m3: 1, 'm³': 1, 'cu m': 1, l: 0.001, litres: 0.001, liters: 0.001, ft3: METRES_PER_FOOT ** 3, 'cu ft': METRES_PER_FOOT ** 3, yd3: (3 * METRES_PER_FOOT) ** 3, 'cu yd': (3 * METRES_PER_FOOT) ** 3 };
export const volumeM3 = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a volume', examples, units: CUBIC_METRES, lowest, highest });

const MINUTES_PER_HOUR = 60;
const CUBIC_METRES_PER_HOUR = { 'm3/h': 1, 'm³/h': 1, cfm: MINUTES_PER_HOUR * METRES_PER_FOOT ** 3, 'l/s': 3.6 };
export const airflowM3PerH = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'an airflow', examples, units: CUBIC_METRES_PER_HOUR, lowest, highest });

const WATT_HOURS = { wh: 1, kwh: 1000 };
export const energyWh = (lowest: number, highest: number, examples: readonly (number | string)[]) => quantity({ name: 'a battery capacity', examples, units: WATT_HOURS, lowest, highest });
