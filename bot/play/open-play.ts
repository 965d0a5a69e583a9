import { consoleChannel, type ConsoleChannelOptions, type ConsoleStreams } from '../channels/console/console-channel.js';
import type { Channel, ChatAddress } from '../chat.js';
import type { Memory } from '../journal.js';
import type { Log } from '../ports.js';
import { describer } from '../post/describe-reply.js';
import { subjectOf } from '../post/subject.js';
import { localTime } from '../text/local-time.js';
import { PLAY_WORDS } from '../text/play-text.js';
import type { NightThreads } from '../threads/night-threads.js';
import { demoSource } from '../weather/demo.js';
import { clockMove, type ClockNow } from './clock-words.js';
import { driver, type Driver, type DriverPorts } from './driver.js';
import { inventedTowns } from './invented-towns.js';
import type { MovingClock } from './moving-clock.js';

export interface PlayRooms {
  readonly memory: Memory;
  readonly clock: MovingClock;
  readonly threads: Omit<NightThreads, 'close'>;
  readonly log: Log;
  /** The clock's zone while there is no greenhouse. */
  readonly zone: string;
}

/** Somebody at a console. */
export interface Player extends ConsoleStreams, Pick<ConsoleChannelOptions, 'firstWords' | 'greeting' | 'farewell' | 'keepFile' | 'left'> {
  readonly address: ChatAddress;
}

/** Conversations on consoles about greenhouses under invented weather, on a clock that the players move. Listens to each player until the signal. */
export function openPlay(rooms: PlayRooms, players: readonly Player[]): (signal: AbortSignal) => Promise<void> {
  const { memory, clock } = rooms;
  const seats = new Map<string, Seat>();
  const play = driver(portsOf(rooms, { name: 'console', listen: () => Promise.resolve(), acknowledge: () => Promise.resolve(), send: async (to, message) => seats.get(to.chat)!.send(to, message) }));
  for (const player of players) seats.set(player.address.chat, seat(player, { play, clock, now: () => clockNow(player.address, rooms) }));
  return async (signal) => {
    await Promise.all([...seats.values()].map((one) => one.listen(async (inbound) => {
      await memory.openChat(inbound, { isGroup: false, atS: clock.nowS() });
      await play.hear(inbound);
    }, signal)));
  };
}

type Seat = Pick<Channel, 'listen' | 'send'>;

/** A console with the time above what is said at it. */
function seat(player: Player, { play, clock, now }: { play: Driver; clock: MovingClock; now: () => Promise<ClockNow> }): Seat {
  let toldS = NaN;
  const tellTime = async (): Promise<void> => {
    const { nowS, zone } = await now();
    if (nowS === toldS) return;
    toldS = nowS;
    const time = localTime(zone);
    player.output.write(`\n${PLAY_WORDS.time(time.day(nowS), time.clock(nowS))}\n`);
  };
  const takesOver = async (text: string): Promise<boolean> => {
    const move = clockMove(text, await now());
    if (move === null) return false;
    if ('fault' in move) player.output.write(`${PLAY_WORDS.clockStays(move.fault)}\n`);
    else await play.moveTo(move.toS).then(tellTime);
    return true;
  };
  const channel = consoleChannel({ ...player, clock, takesOver, isUnsettled: () => Promise.resolve(false) });
  return {
    listen: (handOver, signal) => channel.listen(handOver, signal),
    send: async (to, message) => {
      await tellTime();
      return channel.send(to, message);
    },
  };
}

async function clockNow(address: ChatAddress, { memory, clock, zone }: PlayRooms): Promise<ClockNow> {
  const greenhouseId = (await memory.chat(address))?.greenhouseId ?? null;
  const subject = greenhouseId === null ? null : await subjectOf(greenhouseId, memory);
  return { nowS: clock.nowS(), zone: subject?.zone ?? zone, greenhouse: subject?.greenhouse ?? null };
}

function portsOf({ memory, clock, threads, log }: PlayRooms, channel: Channel): DriverPorts {
  const weather = demoSource(clock, clock.nowS());
  return {
    memory,
    clock,
    log,
    weather,
    workOut: threads.workOut,
    workOutWeek: threads.workOutWeek,
    drawNights: threads.drawNights,
    channels: new Map([[channel.name, channel]]),
    describe: describer({ memory, weather, workOut: threads.workOut, places: inventedTowns, clock, log }),
    acknowledge: () => Promise.resolve(),
    count: () => undefined,
  };
}
