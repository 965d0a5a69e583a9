import { describe, expect, it } from 'vitest';
import { COMMAND_WORDS, SHARE_PLACE } from '../../../../bot/text/command-words.js';
import { outsideGsm } from '../../text/gsm.js';
import { startRig, until } from './telegram-rig.js';

describe('the commands that Telegram offers', () => {
  it('are as the service wants them, in plain characters', async () => {
    const rig = await startRig({ channel: { commands: COMMAND_WORDS } });
    void rig.listen();
    await until('they are there', () => rig.api.world.commands.length > 0);
    expect(rig.api.world.commands.map(({ command }) => command)).toEqual(COMMAND_WORDS.map(({ name }) => name));
    expect(rig.logged).toEqual([]);
    await rig.close();
  });

  it.each([...COMMAND_WORDS.map(({ description }) => description), SHARE_PLACE])('%s', (words) => {
    expect(outsideGsm(words)).toEqual([]);
    expect(words).toMatch(/^[A-Z]/u);
  });

  it('has no word that carriers act on but "stop" and "help", which mean the same to them', () => {
    const carriers = ['stop', 'stopall', 'unsubscribe', 'cancel', 'end', 'quit', 'revoke', 'optout', 'yes', 'unstop', 'start', 'help', 'info'];
    expect(COMMAND_WORDS.map(({ name }) => name).filter((name) => carriers.includes(name))).toEqual(['help', 'stop']);
  });
});
