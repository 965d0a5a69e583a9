const SUBJECT = String.raw`(?:the|my|our|a|an|one|two|=\d+|it|there|frost|snow|that|this|those|these|they|i|we|you|any|anything|everything|all|tonight|tomorrow|%\d+|&\w+|@\w+)`;

/** Words that open a question when it is written without its mark. "Was 29 this morning" and "did the covers" open none. */
const OPENERS: readonly RegExp[] = [
  /^ (?:what|where|which|who|how|why|any|anything|suppose|supposing|if|shall) /,
  /^ should (?!be |have |read |say )/,
  /^ (?:will|would|can|could|do|does) (?!not )/,
  /^ when (?:should|shall|do|does|will|is|can|would|are|to|will|was|did|next) /,
  new RegExp(`^ (?:is|are|am|was|were) ${SUBJECT} `),
  /^ did (?:you|that|this|i|we|my|the|it|%\d+|@\w+|all|adding|having) .*\b(?:help|work|make|matter|survive|freeze|get|come|go|save|change|do|pay|drop|hold|right|like|frost)\b/,
  /^ (?:have|has|had) (?:the|my|our|i|we|you|it|there|that|any|%\d+|@\w+) .*\b(?:helped|made|worked|been|paid|changed|saved|any)\b/,
  /^ (?:worth|need to|time to|safe to|better to) /,
];

/** Whether the message asks: by its mark, or by the way it opens. */
export const isQuestion = (form: string, said: string): boolean => form.includes(' ? ') || OPENERS.some((opener) => opener.test(said));
