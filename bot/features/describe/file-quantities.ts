import { fahrenheitToCelsius, LITRES_PER_US_GALLON, METRES_PER_FOOT, METRES_PER_INCH } from '../../../engine/index.js';
import type { Quantity } from '../../language/house/clause.js';
import type { Habits } from './units-of-place.js';

/** The unit that a plain length is in. */
export type PlainLength = 'ft' | 'm';

/** As the greenhouse file has it: a number in its first unit, or text with the unit that was said. */
export type FileQuantity = number | string;

/** Litres in one imperial gallon (exact, NIST-SP811). */
const LITRES_PER_IMPERIAL_GALLON = 4.54609;
const LITRES_PER_CUBIC_METRE = 1000;
const CUBIC_METRES_PER_CUBIC_FOOT = METRES_PER_FOOT ** 3;
const CUBIC_METRES_PER_CUBIC_YARD = 27 * CUBIC_METRES_PER_CUBIC_FOOT;
const FEET_PER_YARD = 3;
/** Kilograms in one pound (exact), short ton and metric ton (NIST-SP811). */
const KG = { kg: 1, lb: 0.45359237, ton: 907.18474, tonne: 1000 } as const;
/** Loose rock with the air between it, as in the engine's table of stones; brick and concrete are laid close. */
const DENSITY_KG_PER_M3 = { 'pale gravel': 1600, rock: 1600, brick: 1800, concrete: 2300, earth: 1900 } as const;
const WATTS_PER_KILOWATT = 1000;

const plain = (value: number): number => Math.round(value * 1000) / 1000;

/** A length in metres; null where its unit is none of length. */
export function metresOf({ value, unit }: Quantity, plainUnit: PlainLength): number | null {
  switch (unit ?? plainUnit) {
    case 'm':
      return value;
    case 'ft':
      return value * METRES_PER_FOOT;
    case 'in':
      return value * METRES_PER_INCH;
    case 'cm':
      return value / 100;
    case 'mm':
      return value / 1000;
    case 'yd':
      return value * FEET_PER_YARD * METRES_PER_FOOT;
    default:
      return null;
  }
}

export function fileLength(quantity: Quantity, plainUnit: PlainLength): FileQuantity {
  const unit = quantity.unit ?? plainUnit;
  if (unit === 'ft' || unit === 'in' || unit === 'cm') return `${plain(quantity.value)} ${unit}`;
  return plain(metresOf(quantity, plainUnit) ?? quantity.value);
}

export function fileArea({ value, unit }: Quantity, plainUnit: PlainLength): FileQuantity {
  return unit === 'sq ft' || (unit === null && plainUnit === 'ft') ? `${plain(value)} sq ft` : plain(value);
}

/** The product of two sides, in the unit of the sides where both are feet. */
export function areaOfSides(sides: readonly [Quantity, Quantity], plainUnit: PlainLength): FileQuantity {
  const [one, two] = shareUnit(sides);
  if (one!.unit === 'ft' || (one!.unit === null && plainUnit === 'ft')) {
    if (two!.unit === one!.unit) return `${plain(one!.value * two!.value)} sq ft`;
  }
  return plain((metresOf(one!, plainUnit) ?? 0) * (metresOf(two!, plainUnit) ?? 0));
}

/** "6m x 15" and "4x4x4 ft": numbers without a unit have that of their neighbour. */
export function shareUnit(quantities: readonly Quantity[]): readonly Quantity[] {
  const unit = quantities.find((quantity) => quantity.unit !== null)?.unit ?? null;
  return quantities.map((quantity) => (quantity.unit === null ? { ...quantity, unit } : quantity));
}

/** Water in one vessel; null where a plain number could be either. */
export function fileLitres({ value, unit }: Quantity, habits: Habits): FileQuantity | null {
  switch (unit ?? (habits.lengths === 'ft' ? 'gal' : habits.lengths === 'm' ? 'l' : null)) {
    case 'gal':
      return habits.gallons === 'imperial' ? plain(value * LITRES_PER_IMPERIAL_GALLON) : `${plain(value)} gal`;
    case 'l':
      return plain(value);
    case 'm3':
      return plain(value * LITRES_PER_CUBIC_METRE);
    case 'cu ft':
      return plain(value * CUBIC_METRES_PER_CUBIC_FOOT * LITRES_PER_CUBIC_METRE);
    default:
      return null;
  }
}

/** The same shared out over several vessels. */
export function fileLitresEach(inAll: Quantity, count: number, habits: Habits): FileQuantity | null {
  return fileLitres({ value: inAll.value / count, unit: inAll.unit }, habits);
}

/** A heap or store in m3; weight by the density of what it is made of. Null where the unit is none of either. */
export function fileVolume({ value, unit }: Quantity, kind: keyof typeof DENSITY_KG_PER_M3 = 'rock'): FileQuantity | null {
  switch (unit) {
    case 'cu yd':
    case 'yd':
      return `${plain(value)} cu yd`;
    case 'cu ft':
      return `${plain(value)} cu ft`;
    case 'm3':
      return plain(value);
    case 'l':
      return plain(value / LITRES_PER_CUBIC_METRE);
    case 'gal':
      return plain((value * LITRES_PER_US_GALLON) / LITRES_PER_CUBIC_METRE);
    case 'kg':
    case 'lb':
    case 'ton':
    case 'tonne':
      return plain((value * KG[unit]) / DENSITY_KG_PER_M3[kind]);
    default:
      return null;
  }
}

export const volumeOfSides = (sides: readonly Quantity[], plainUnit: PlainLength): FileQuantity => {
  const shared = shareUnit(sides);
  const cubicMetres = shared.reduce((product, side) => product * (metresOf(side, plainUnit) ?? 0), 1);
  return shared.every(({ unit }) => (unit ?? plainUnit) === 'ft') ? `${plain(cubicMetres / CUBIC_METRES_PER_CUBIC_YARD)} cu yd` : plain(cubicMetres);
};

export function filePower({ value, unit }: Quantity): FileQuantity | null {
  if (unit === 'w' || unit === 'kw') return plain(value * (unit === 'kw' ? WATTS_PER_KILOWATT : 1));
  return unit === 'btu' ? `${plain(value)} btu` : null;
}

export function fileAirflow({ value, unit }: Quantity): FileQuantity | null {
  if (unit === 'm3/h') return plain(value);
  return unit === 'cfm' || unit === 'l/s' ? `${plain(value)} ${unit}` : null;
}

export const fileEnergy = ({ value, unit }: Quantity): FileQuantity => (unit === 'kwh' ? `${plain(value)} kwh` : plain(value));

export const fileWeight = ({ value, unit }: Quantity): FileQuantity => (unit === 'oz' ? `${plain(value)} oz` : plain(value));

export const celsiusOf = ({ value, unit }: Quantity, temperature: 'C' | 'F'): number => plain(unit === 'F' || (unit !== 'C' && temperature === 'F') ? fahrenheitToCelsius(value) : value);
