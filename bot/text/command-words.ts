/** What a chat program offers while the grower types a slash: each is a word that can also be typed plainly. */
export const COMMAND_WORDS: readonly { readonly name: string; readonly description: string }[] = [
  { name: 'tonight', description: 'What to do tonight, how cold it gets, which crops are safe' },
  { name: 'week', description: 'The nights ahead, and what to prepare' },
  { name: 'crop', description: 'Will it survive? For example: /crop kale' },
  { name: 'done', description: 'What you did. For example: /done covered the beds' },
  { name: 'reading', description: 'What your thermometer says. For example: /reading 28F inside' },
  { name: 'why', description: 'What makes the night so cold, or not' },
  { name: 'record', description: 'How right I have been' },
  { name: 'history', description: 'The last nights: said, read and done' },
  { name: 'export', description: 'All that I keep, as files' },
  { name: 'settings', description: 'Units, times and place' },
  { name: 'help', description: 'What I can do' },
  { name: 'stop', description: 'Send me nothing more' },
];

/** On the button that sends the place. */
export const SHARE_PLACE = 'Send my location';
