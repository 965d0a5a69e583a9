import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { areaM2, fabricGPerM2, lengthM, powerW, tempC, volumeL } from '../../../engine/greenhouse/quantities.js';

const length = lengthM(0, 1000, [4]);
const area = areaM2(0, 10_000, [6]);
const volume = volumeL(0, 10_000, [208]);
const temperature = tempC(-100, 200, [2]);
const power = powerW(0, 100_000, [1500]);
const fabric = fabricGPerM2(0, 500, [30]);

describe('as growers write it', () => {
  // Exact by definition (NIST-SP811): foot 0.3048 m, inch 0.0254 m, US gallon 3.785411784 L; Btu/h 0.29307107 W; oz/yd2 33.9057475 g/m2.
  it.each([
    [length, 4, 4], [length, '4', 4], [length, '4 m', 4], [length, '4m', 4], [length, '2,4 m', 2.4], [length, '400 cm', 4], [length, ' 4 Metres ', 4],
    [length, '13 ft', 3.9624], [length, '13ft', 3.9624], [length, '13 feet', 3.9624], [length, "13'", 3.9624], [length, '1 foot', 0.3048],
    [length, '12\' 6"', 3.81], [length, '12\'6"', 3.81], [length, '12 ft 6 in', 3.81], [length, '12 feet 6 inches', 3.81], [length, '30 in', 0.762], [length, '30"', 0.762],
    [area, '65 sq ft', 6.0386976], [area, '65 ft2', 6.0386976], [area, '65 ft²', 6.0386976], [area, '6 m²', 6], [area, '6 sq m', 6],
    [volume, '55 gal', 208.19764812], [volume, '1 gallon', 3.785411784], [volume, '2 gallons', 7.570823568], [volume, '208 L', 208], [volume, '208 litres', 208],
    [temperature, '36 F', 20 / 9], [temperature, '36F', 20 / 9], [temperature, '36°F', 20 / 9], [temperature, '32 °f', 0], [temperature, '-40 F', -40], [temperature, '2 C', 2], [temperature, '-2,5 °C', -2.5], [temperature, '+3', 3],
    [power, '5000 BTU/h', 1465.35535], [power, '5000 btu', 1465.35535], [power, '1.5 kW', 1500], [power, '1500 W', 1500], [power, '1500 watts', 1500],
    [fabric, '1 oz', 33.9057475], [fabric, '0.9 oz/yd2', 30.51517275], [fabric, '30 g/m2', 30], [fabric, '30 gsm', 30], [fabric, '30g', 30],
  ])('#%#: %s', (kind, written, value) => {
    expect(kind.parse(written)).toBeCloseTo(value, 5);
  });

  it('a number in the first unit comes back whichever way it is written', () => {
    fc.assert(fc.property(fc.double({ min: 0, max: 300, noNaN: true }).map((value) => Math.round(value * 100) / 100), (value) => {
      expect(length.parse(value)).toBe(value);
      expect(length.parse(`${value} m`)).toBe(value);
      expect(length.parse(`${value} ft`)).toBeCloseTo(value * 0.3048, 9);
    }));
  });
});

describe('not a quantity', () => {
  it.each([
    '', ' ', 'four metres', '4 yards', '4 m 5', 'm', '--4', '4..5 m', '1e3 m', 'Infinity', 'NaN', '4 constructor', '4 __proto__', '4 toString', '12\' 6"x', '4 f',
  ])('a length of %j is refused with its units and an example', (written) => {
    const message = length.safeParse(written).error?.issues[0]?.message;
    expect(message).toMatch(/^expected a length with one of the units m, .* for example 4; got /u);
    expect(message).toContain(JSON.stringify(written));
  });

  it.each([null, undefined, true, [], {}, Number.NaN, Number.POSITIVE_INFINITY])('a length of %s is refused', (written) => {
    expect(length.safeParse(written).error?.issues[0]?.message).toBe('expected a length, for example 4');
  });

  it('out of range names the range', () => {
    expect(lengthM(1, 60, [4, '13 ft']).safeParse('300 ft').error?.issues[0]?.message).toBe('expected a length from 1 to 60 m, for example 4 or "13 ft"; got "300 ft"');
  });
});
