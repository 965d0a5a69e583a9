import { pino } from 'pino';
import type { Log } from './ports.js';

/** Structured logs on standard error: standard output belongs to the conversation. Message texts and coordinates never go in. */
export function createLog(level: string): Log {
  const logger = pino({ level, redact: ['*.latitude', '*.longitude', 'latitude', 'longitude', 'text'] }, pino.destination({ fd: 2, sync: true }));
  return {
    info: (event, fields = {}) => logger.info(fields, event),
    warn: (event, fields = {}) => logger.warn(fields, event),
    error: (event, fields = {}) => logger.error(fields, event),
  };
}
