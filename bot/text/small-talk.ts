export const SMALL_TALK_HELLO = 'Hello. Say "tonight" for the plan, or "help".';

/** A short word back, without a claim. */
export function smallTalk(text: string): string {
  const said = text.toLowerCase();
  if (NUMBER.test(said)) return `${plainAnswer(said)} I note no number from that.`;
  if (/\b(?:good ?night|night night|sleep (?:well|tight)|bye|goodbye|see you)\b/u.test(said)) return 'Good night.';
  if (/\b(?:hi|hello|hey|hiya|howdy|good (?:morning|evening|afternoon|day)|morning|evening)\b/u.test(said)) return SMALL_TALK_HELLO;
  if (/\b(?:who|what) (?:are|made) you\b|\bhow are you\b|\byour name\b|\brobot\b/u.test(said)) return 'I am Duskward: I look after your greenhouse at night. Say "help" for what I can do.';
  return plainAnswer(said);
}

/** Somebody else's number, or one from long ago: it must not be thought noted. */
const NUMBER = /\d|\b(?:minus|negative|below|zero|nought|degrees?|eleven|twelve|\w+teen|twenty|thirty|forty)\b/u;
const plainAnswer = (said: string): string => (THANKS.test(said) ? 'You are welcome.' : 'All right.');
const THANKS = /\b(?:thanks|thank|thx|ty|cheers|ta|appreciated?|merci|danke|gracias|grateful|obliged)\b/u;
