import { celsiusToFahrenheit, type DegreeUnit } from '../../../engine/index.js';
import { readMessage } from '../../language/message.js';
import { celsius, signedValue } from '../../language/temperature.js';

/** A number as it stands in the message. */
export interface AsTyped {
  readonly value: number;
  readonly unit: DegreeUnit;
  readonly unitWritten: boolean;
}

/** Two numbers of one message are the same when they differ by less. */
export const SAME_C = 0.011;
const TENTHS = 10;

/** The number of the message that a temperature came from; worked out in the grower's unit where none fits. */
export function asTyped(tempC: number, message: { readonly text: string; readonly receivedAtS: number; readonly zone: string; readonly units: DegreeUnit }): AsTyped {
  const { temps } = readMessage({ text: message.text, atS: message.receivedAtS, zone: message.zone, units: message.units, crops: [] });
  for (const token of temps) {
    const unit = token.unit ?? message.units;
    const value = signedValue(token, unit);
    if (Math.abs(celsius(value, unit) - tempC) < SAME_C) return { value, unit, unitWritten: token.unit !== null };
  }
  const value = message.units === 'F' ? celsiusToFahrenheit(tempC) : tempC;
  return { value: Math.round(value * TENTHS) / TENTHS + 0, unit: message.units, unitWritten: false };
}
