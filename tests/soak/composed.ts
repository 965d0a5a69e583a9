import type { AssistantPorts } from '../../bot/assistant.js';
import { telegramChannel } from '../../bot/channels/telegram/channel.js';
import type { RealTime } from '../../bot/channels/telegram/real-time.js';
import type { WorkOut } from '../../bot/features/evening/work-out-evening.js';
import type { WorkOutWeek } from '../../bot/features/outlook/work-out-week.js';
import type { Memory } from '../../bot/journal.js';
import type { Clock, Log } from '../../bot/ports.js';
import { describer } from '../../bot/post/describe-reply.js';
import { COMMAND_WORDS, SHARE_PLACE } from '../../bot/text/command-words.js';
import { geocoder } from '../../bot/weather/geocoding.js';
import { liveSource } from '../../bot/weather/live-source.js';

export interface Parts {
  readonly memory: Memory;
  readonly clock: Clock;
  readonly clockSpeed: number;
  readonly log: Log;
  /** In place of the physics, which would take seconds. */
  readonly workOut: WorkOut;
  readonly workOutWeek: WorkOutWeek;
  readonly telegram: { readonly token: string; readonly apiRoot: string; readonly time?: RealTime };
  readonly weatherUrl: string;
  readonly count?: (event: string) => void;
}

/** The rooms of the assistant on Telegram as the program puts them together, but for the physics. */
export function composed({ memory, clock, clockSpeed, log, workOut, workOutWeek, telegram, weatherUrl, count = () => undefined }: Parts): { readonly ports: AssistantPorts; close(): Promise<void> } {
  const weather = liveSource({ clock, store: memory, log, firstUrl: weatherUrl, apiKey: null, wantsMembers: false, secondUrl: null, contact: null });
  const places = geocoder({ baseUrl: weatherUrl, apiKey: null, contact: null, log });
  const channel = telegramChannel({ ...telegram, commands: COMMAND_WORDS, placeLabel: SHARE_PLACE, clock, log });
  const ports: AssistantPorts = {
    memory,
    channels: new Map([[channel.name, channel]]),
    clock,
    log,
    weather: weather.source,
    workOut,
    workOutWeek,
    describe: describer({ memory, weather: weather.source, workOut, places, clock, log }),
    acknowledge: (row) => (row.content.kind === 'press' ? channel.acknowledge(row.content.token) : Promise.resolve()),
    count,
    clockSpeed,
  };
  return { ports, close: async () => void (await Promise.all([weather.close(), places.close()])) };
}
