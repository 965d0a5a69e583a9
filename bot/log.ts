import { pino, type DestinationStream } from 'pino';
import { logFields } from './log-fields.js';
import type { Log } from './ports.js';
import { withoutTokens } from './without-tokens.js';

/** Structured logs on standard error: standard output belongs to the conversation. Message texts, coordinates and bot tokens never go in. */
export function createLog(level: string, destination: DestinationStream = pino.destination({ fd: 2, sync: true })): Log {
  const logger = pino({ level }, destination);
  return {
    info: (event, fields = {}) => logger.info(logFields(fields), withoutTokens(event)),
    warn: (event, fields = {}) => logger.warn(logFields(fields), withoutTokens(event)),
    error: (event, fields = {}) => logger.error(logFields(fields), withoutTokens(event)),
  };
}
