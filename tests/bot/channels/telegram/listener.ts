import { appendFileSync, openSync, fsyncSync } from 'node:fs';
import { telegramChannel } from '../../../../bot/channels/telegram/channel.js';
import { createLog } from '../../../../bot/log.js';

// A bot whose journal is a file: node --import tsx listener.ts API_ROOT TOKEN FILE. Takes its time over each message, so that a kill finds it at work.
const [apiRoot = '', token = '', file = ''] = process.argv.slice(2);
const TAKING_MS = 8;

const journal = openSync(file, 'a');
const channel = telegramChannel({ token, apiRoot, commands: [], placeLabel: 'x', clock: { nowS: () => Math.floor(Date.now() / 1000) }, log: createLog('warn') });
const stop = new AbortController();
process.once('SIGTERM', () => stop.abort());
await channel.listen(async ({ content }) => {
  await new Promise((resolve) => setTimeout(resolve, TAKING_MS));
  appendFileSync(journal, `${content.kind === 'text' ? content.text : content.kind}\n`);
  fsyncSync(journal);
}, stop.signal);
