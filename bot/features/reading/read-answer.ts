/** What a short answer says, whatever was asked about a reading. */
export type Answer =
  | { readonly kind: 'yes' | 'no' | 'as-typed' | 'drop' | 'unsure' | 'sunlit' | 'not-reset' | 'reset' | 'other' }
  /** One of the answers by its number, counted from 0. */
  | { readonly kind: 'number'; readonly at: number };

const NUMBER = /^(?:number |no\.? |option |answer |#)?\(?([1-9])\)?$/u;

/** From the particular to the general; the first that fits counts. */
const WORDS: readonly (readonly [Exclude<Answer['kind'], 'number' | 'other'>, RegExp])[] = [
  ['not-reset', /^(?!.*\d)(?:.*\b(?:(?:forgot|failed) to reset|(?:was|were|is) ?n[o']?t reset|did ?n[o']?t reset|never reset|not reset|no reset|have ?n[o']?t reset|unreset)\b.*)$/u],
  ['reset', /^(?!.*\d)(?:.*\b(?:was reset|i reset|i did reset|did reset|had reset|have reset|reset it)\b.*)$/u],
  ['sunlit', /^(?!.*\d)(?!.*\b(?:no|not|shade)\b)(?:.*\b(?:in the sun|in sun|sun was on|sunlight|sunny|sun)\b.*)$/u],
  ['drop', /^(?:no |please |just |ok |oops )*(?:drop|delete|undo|scrap|scratch|forget|ignore|remove|cancel|discard|take)(?: (?:it|that|this|one|back|reading|the|last))*$|^(?:never mind|nevermind|leave it out)$/u],
  ['unsure', /^(?:i )?(?:am |'m )?(?:don'?t know|do not know|dunno|not sure|no idea|no clue|unsure|can'?t say|cannot say|skip|later|maybe)(?: .{0,30})?$/u],
  ['as-typed', /^(?:no |yes |yep |it |that |really |the |number |really was |is |was |it's |that's |as )*(?:as typed|as i (?:typed|said|wrote)|(?:really|definitely|truly)(?: (?:is|was|did|that|so|it))*|(?:is|was|it's|that's|that is|it is) (?:really |quite )?(?:right|correct|true)|what i (?:typed|said|meant|read)|what it (?:says|said|shows|showed)|correct|(?:double )?checked it(?: again)?|i am sure|i'm sure|for real)$/u],
  ['yes', /^(?:y|yes|yep|yeah|yup|ya|sure|ok|okay|right|exactly|of course|indeed|sorry yes|yes please|that one|oh yes|yes sorry|oops yes|ah yes|yes it was|yes i did|yes i meant that|yes indeed|the first|first|first one)$/u],
  ['no', /^(?:n|no|nope|nah|wrong|no wrong|neither|none|not that|no it (?:is not|isn't|was not|wasn't)|no it's not|not right|no not that|no i did not|no i didn't)$/u],
];

export function readAnswer(text: string): Answer {
  const said = text
    .toLowerCase()
    .replace(/[’‘]/gu, "'")
    .replace(/[.,!;:?]+/gu, ' ')
    .replace(/\s+/gu, ' ')
    .trim();
  const number = NUMBER.exec(said)?.[1];
  if (number !== undefined) return { kind: 'number', at: Number(number) - 1 };
  const found = WORDS.find(([, pattern]) => pattern.test(said));
  return { kind: found?.[0] ?? 'other' };
}
