/** Words for what a conversation needs besides the greenhouse. */
export const CHAT_WORDS = {
  cannotRead: (what: string): string => `I cannot read a ${what}. Words and numbers work, for example "28F inside" or "tonight".`,
  photo: 'I cannot see pictures. Type what the thermometer says, for example "28F inside".',
  forwarded: 'That is a forwarded message, so I do not take it as yours. Type it yourself if it is meant for me.',
  parked: 'I could not handle that message, and have put it aside. Please say it in other words.',
  oldButton: 'That button belongs to an evening that is over. Say "tonight" for the new one.',
  pressed: (button: string): string => `(button: ${button})`,
  paused: 'Quiet from now on: nothing comes unasked. Say "start" to get the evening message again. You can still ask.',
  resumed: 'The evening message comes again. Say "stop" for quiet.',
  eraseAsks: 'This forgets the greenhouse, its readings and all that was said, for everybody who shares it. Say "erase everything" to do it, or anything else to keep it.',
  erased: 'All of it is forgotten. Say "start" if you ever want to begin anew.',
  eraseKept: 'Nothing was erased.',
  invite: (code: string): string => `Whoever sends me "join ${code}" within a week shares this greenhouse. In a group: add me, then write "/join ${code}" there.`,
  joined: (name: string): string => `You now share ${name}. The evening message comes here too.`,
  badInvite: 'That code is not known, or is used or too old. Ask for a new one: whoever has the greenhouse says "invite".',
  groupReadings: 'In a group I see only commands and answers to my messages: send a reading as an answer to me, or as "/reading 28F inside".',
  nothingToShare: 'There is no greenhouse here to share yet.',
} as const;
