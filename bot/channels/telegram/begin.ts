import type { Api } from 'grammy';
import { asStopSignal } from './bot-api.js';
import { callFailure } from './call-failure.js';
import { untilAnswered, type Patience } from './until-answered.js';

/** Who we are, as the service says. */
export interface Me {
  readonly id: number;
  readonly username: string;
}

/** A command that Telegram offers while the grower types. */
export interface CommandWords {
  /** 1 to 32 of a-z, 0-9 and _. */
  readonly name: string;
  readonly description: string;
}

/** Asks who we are and offers the commands. Null when stopped meanwhile. */
export async function begin(api: Api, commands: readonly CommandWords[], patience: Patience): Promise<Me | null> {
  const me = await untilAnswered('getMe', () => api.getMe(asStopSignal(patience.signal)), patience);
  if (me === null) return null;
  try {
    await api.setMyCommands(commands.map(({ name, description }) => ({ command: name, description })), {}, asStopSignal(patience.signal));
  } catch (error) {
    // Growers can type the words all the same.
    if (!patience.signal.aborted) patience.log.warn('telegram does not take the list of commands', { cause: callFailure(error).cause });
  }
  return { id: me.id, username: me.username };
}
