import type { WeatherFailure } from '../ports.js';
import { AnswerRefusedError, ServiceCallError } from './open-meteo/errors.js';

/** A service that brought no weather: it is asked elsewhere. Any other error is a defect and goes on. */
export const isWeatherFailure = (error: unknown): error is ServiceCallError | AnswerRefusedError => error instanceof ServiceCallError || error instanceof AnswerRefusedError;

export const failureOf = (error: ServiceCallError | AnswerRefusedError): WeatherFailure => (error instanceof ServiceCallError ? error.kind : 'unusable');
