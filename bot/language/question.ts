import { wordings } from './wordings.js';
const SUBJECT = String.raw`(?:the|my|our|a|an|one|two|=\d+|it|there|frost|snow|that|this|those|these|they|i|we|you|any|anything|everything|all|tonight|tomorrow|%\d+|&\w+|@\w+)`;

/** Words that open a question when it is written without its mark. "Was 29 this morning" and "did the covers" open none. */
const OPENERS: readonly RegExp[] = [
  /^ (?:what|where|which|who|how|why|any|anything|suppose|supposing|if|shall) /,
  /^ (?:(?:i|we) )?(?:reckon|guess|suppose|think|thinking|figure|wonder) (?:that )?(?:i|we) (?:should|ought|had better|better|need|must) /,
  / (?:is not it|is it not|will it not|will not it|are not we|do you think|you think|or what|you reckon|do you reckon) $/,
  /^ (?:imagine|pretend|picture|say that) /,
  /^ (?:with|without) .* (?:what|how|will|would|is|does|can) (?:would|will|could|much|low|cold|warm|is|does|do|it|we|i|the) /,
  /^ should (?!be |have |read |say )/,
  /^ will (?!not |@cover |cover |close |shut |do |pick |run |turn |put )/,
  /^ (?:would|can|could|do|does) (?!not |have )/,
  /^ (?:did|have|had) (?:i|you|we) /,
  /^ when (?:should|shall|do|does|will|is|can|would|are|to|will|was|did|next) /,
  new RegExp(`^ (?:is|are|am|was|were) ${SUBJECT} `),
  /^ (?:say|let us say|assume|assuming) (?:i|we) /,
  wordings`
    ^ did (?:you|them|that|this|those|these|they|i|we|my|the|it|%\d+|@\w+|all|adding|having) .*\b(?:help|work|make|matter|survive|freeze|get|come|go|save|
    change|do|pay|drop|hold|right|like|frost)
  `,
  /^ (?:have|has|had) (?:the|my|our|i|we|you|it|there|that|any|%\d+|@\w+) .*\b(?:helped|made|worked|been|paid|changed|saved|any)\b/,
  /^ (?:could|can|would) you (?:tell|say|give|explain) /,
  /^ (?:please |just )*(?:tell|show|give|walk|talk) (?:me|us) /,
  /^ (?:wonder|wondering|curious|dunno|not sure|no idea) (?:if|whether|what|how) /,
  /^ did (?:\w+ing|doing|@\w+) .*\b(?:help|work|matter|make|do|pay)\b/,
  /^ (?:is|are) (?!#|no |not |already |very |too |so |fine |ok |good |covered |now |still |at |down |up )\S+ [^#\s]+ .*\S/,
  /^ at (?:what|which) /,
  /^ is #\d+ (?:\w+ )?(?:too|cold|ok|enough|low|bad|safe|warm|fine|dangerous) /,
  /^ (?:you|ya) (?:think|reckon|figure|suppose|believe|expect) (?:i|we|it|the|my|that|there|they|%\d+|@\w+) /,
  /^ (?:do|does) (?:you|ya) (?:reckon|think|suppose|expect) /,
  /^ (?:worth|need to|time to|safe to|better to) /,
];

/** "What a cold one" is a cry, where no question mark makes it one. */
const CRIES = /^ (?:(?:wow|oh|ah|man|boy|gosh|well|my|,) )*what (?:a|an) /;

const asksInWords = (form: string, said: string): boolean => wordings`
  (?:yes|yea|yeah|y) or (?:no|nope|nah|n)
  how (?:much|cold|low) (?:cold|frost|degrees|temperature)? ?$
  or (?:no|not|nope|nah|naw|leave (?:it|them)|should i|bare|do not bother)|or (?:just|only) (?:the )?(?:one|single|a single)
  ^ (?:shut|close|open|cover|uncover|pick|harvest|@harvest|run|turn|put|light|pull|draw|heat) (?:\S+ )*?or (?:wait|leave|hold|keep|later|not|hang)
  on or off|off or on|up or down|down or up|in or out|shut or open|yea or nay
  open or (?:shut|closed)|(?:shut|closed) or open|what happens
  how (?:cold|low|bad|frosty) (?:are|is|will|would|does|do|can|could) (?:we|it|things|the)
  (?:what|how) (?:would|will|could|much|low|cold|warm) (?:it|that|we|i|the|they|this|be|colder|warmer|lower|would|will)
  (?:to|at|below) (?:what|which) (?:temperature|point|degree)
  (?:like|love|want|need|curious|dying) to know (?:\S+ ){0,5}?(?:what|how|if|whether|when|which)
`.test(said) || / (?:should|shall|can|could|must|may|do) (?:i|we) /.test(said) || OPENERS.some((opener) => opener.test(said)) || wordings`
  [,;] (?:how|what|which|any) (?:would|will|could|does|did|much|difference|good|happens)|@\w+ or #\d+
  ^ (?:ok |safe )?to (?:@cover|cover|uncover|open|close|vent|pick|harvest)
`.test(form) || / [,;] (?:how|will|would|are|is|should|what|could|can|does) (?:they|it|i|we|the|my|everything|all|that) /.test(form);

/** Whether the message asks: by its mark, or by the way it opens. */
export const isQuestion = (form: string, said: string): boolean => form.includes(' ? ') || !CRIES.test(said) && asksInWords(form, said);
