import type { Intent, Topic } from './intent.js';
import { itemsSaid } from './items-said.js';
import type { Message } from './message.js';
import { wordings } from './wordings.js';

const OPEN_ASKS = wordings`
  (?:anything|something|what|owt|much|what else|anything else) (?:at all |else |in particular |special |extra |more |specific )*(?:(?:that )?(?:i|
  we) (?:should|must|need|got|ought|could|can|have|had better|might|am supposed|are supposed|want|are to|am to)|you (?:want|need|would like|recommend|
  suggest|advise)|to (?:do|prepare|be done|get ready|look out for|take care of)|for me to do|i (?:be )?doing)
  (?:what time|when|how) to (?:close|shut|cover|open|lock|button|start|protect|prepare|get ready)
  (?:anything|something|owt|much|any work|any news) (?:for (?:me|us)|on|needed)(?: to do)?(?: tonight| today| this evening| now)? (?:\? )?$
  what should (?:a|one|any) (?:\w+ )?do
  (?:do|should|must|shall|will) (?:i|we) (?:need to |have to |want to )?(?:be out|be there|be up|go there|come out|come down|get up|stay up|
  set an alarm|get out of bed)
  what (?:do|does|would|did|should) (?:you|ya|you all|duskward) (?:\w+ ){0,2}?(?:want|need|like|have|suggest|recommend|advise|reckon|say|
  think)(?: (?:me|us|i|we|that i))?(?: \w+){0,2}? (?:do|done|does|doing|should|tonight|prepare|take care)
  (?:what|how) (?:am|are) (?:i|we) (?:supposed|meant|best|going|doing|to)
  (?:what|any) (?:jobs|chores|tasks|work|duties|steps|measures|action|actions|preparations|precautions)
  what (?:should|shall|do|must|can|would|could|am|are|ought) (?:i|we|you|they|he|she|the (?:crew|kids|lads|boys|girls|others)) (?:\w+ ){0,5}?(?:do|suggest|recommend|advise|think|need|prepare|doing|say|now)
  what (?:do|should|can) (?:i|we)
  is it (?:best|better|wise|wiser|time|smart) (?:if |that |for me to )?(?:i|we)?(?: should)? ?(?:pick|harvest|@harvest|cover|close|heat|open|cut|go)
  what would you (?:do|advise|suggest|recommend)
  what (?:should|must|can|could|ought to) (?:be done|get done|happen|be closed|be covered)
  what (?:is|are) (?:the |your |my |our |tonight )*(?:orders|marching orders|instructions|duties|tasks)
  what (?:needs?|has|have) (?:to be )?(?:doing|done|to be done|doing tonight)
  what (?:to do|now|next tonight|is to be done|is left to do|is there to do|about tonight)
  what is (?:the |your |my |our |tonight )*(?:plan|advice|recommendation|job|jobs|to do|to-do|call|drill|list|verdict)
  ^ (?:any |your |the |tonight |my |give me |got |have you got )*(?:advice|plan|recommendations?|suggestions?|jobs|instructions|to-do|todo|
  orders)(?: (?:for|tonight|the|please|evening|night|now|any))* (?:\? )?$
  (?:anything|something|much) (?:to do|i should do|i need to do|i can do|needed|we should do|i ought to do|you want me to do)
  (?:do|should|must|would|will) (?:i|we) (?:need to |have to |want to |bother to )?(?:do|be doing|prepare|get ready|act|go out) (?:anything|something|
  for|tonight|a thing|much|it|out|the)
  how (?:do|should|can|shall) (?:i|we) (?:best )?(?:get ready|prepare|protect|save|set up|handle|keep)
  tell me what to do
  what have (?:i|we) (?:got )?to do
  (?:give|show|send|tell|read|text) (?:me |us )?(?:the |your |my |our |a |tonight )*(?:plan|advice|jobs|to do list|to-do|orders|instructions|
  marching orders|battle plan|game plan|steps|checklist|chores)
  (?:talk|walk|run|take) (?:me|us) (?:through|over) (?:tonight|the night|the plan|what to do|it|this evening)
  (?:on|left on) (?:the|my|your|our) (?:to do|to-do|todo|job|jobs|chore) list
  (?:do|must|should|shall) (?:i|we) (?:got to |have to |need to )?go (?:back )?(?:&outside|outside|out|down|up)(?: there| again)?
  (?:anything|something|much|what|what else|anything else) (?:\w+ )?(?:needing|needs|need|wants|left|still) (?:to be |to |be )?(?:done|doing|do|
  seeing to|sorting|attention)
  ^ (?:the |tonight |my |your )*(?:plan|jobs|chores|to do|to-do list|todo list|orders|action|actions|instructions|checklist|game plan|what to do|
  advice)(?: (?:for|tonight|this|the|evening|night|please|today|now))* (?:\? |; )*$
  (?:your|the) (?:advice|recommendation|suggestion|call|verdict|orders|take|thoughts) (?:for|on|about) (?:tonight|the night|this evening)
  (?:how|what) (?:do|should|can|must) (?:i|we) (?:\w+ )?(?:keep|protect|save|get|bring) (?:\w+ |%\d+ |my |the ){1,4}(?:through|alive|from|safe|warm)
  (?:where|with what) (?:do|should) (?:i|we) (?:start|begin)
  (?:am|are) (?:i|we) (?:all )?(?:good|ok|set|safe|fine|ready)(?: for)?(?: tonight| now| the night)?
  everything (?:is )?(?:ok|fine|good|set) (?:for )?tonight
  (?:what|which|anything|any|who) (?:\w+ ){0,3}?(?:at risk|in danger|in trouble|going to die)
  (?:what|which) (?:temperature|setting) (?:for|on) (?:the |my )?@heater
  rundown|run down|briefing|summary for tonight|marching orders|game plan|battle plan
  what is on (?:the|my|your|our) (?:list|agenda|menu|cards)
  (?:should|shall|do|can|could|must|may) (?:i|we) (?:\w+ ){0,2}?(?:doors?|open up|close up|shut up|doors? open|doors? shut)
  (?:should|shall) (?:the|my|our) @\w+ (?:be|go|stay|come|run)
  (?:do|can|should|shall) (?:i|we) (?:shut|close|open|leave) (?:the |my )*doors?
  when (?:do|can|should) (?:i|we) (?:open|close|shut) (?:up|the doors?)
  (?:what time|when) (?:do|should|must|shall) (?:i|we) (?:need to |have to )?(?:close|cover|go|start|get|shut|do|be)
  (?:can|could|may|should) (?:i|we) (?:just )?(?:go to bed|sleep|relax|go home|leave it|turn in)
  (?:anything|what) (?:i should|i need to|i must|we should)
  ^ (?:so |do i )?(?:pick|harvest|@harvest|cut|gather) .* or (?:leave|wait|hold|not|keep|hang)
`;

const ASKS_WHETHER = wordings`
  should|shall|do|does|must|can|could|may|need|needs|needed|worth|better|best|ought|safe|time|when|whether|which|how many|how much|how long|how high
  how hot|is it|ok|necessary|required|bother|want|wants|have to|will|want me to|good idea|what|are|is
`;
const HARVEST = / (?:harvest|harvesting|pick|picking|cut|gather|pull|bring in|@harvest) /;

/** The topic that the words ask about, if it is one. */
export function topicOf(said: string): Topic | null {
  const items = itemsSaid(said);
  if (/ (?:cover|covering|covered|uncover|uncovering|tucking|tuck|wrap|wrapping) /.test(said) || items.includes('cover')) return 'cover';
  if (items.includes('heater') || / (?:heat|heating) /.test(said)) return 'heater';
  if (items.includes('vents') || / (?:vent|venting|ventilate) /.test(said)) return 'vents';
  if (items.includes('fan') || items.includes('tube')) return 'fan';
  if (/ (?:leave|keep|beds?|crops|them|everything) (?:\w+ ){0,2}?(?:bare|open) /.test(said)) return 'cover';
  if (HARVEST.test(said)) return 'harvest';
  return null;
}

const withTopic = (topic: Topic | null): Intent => (topic === null ? { kind: 'advice' } : { kind: 'advice', topic });

/** "Run the heater?", "covers on tonight?", "fan?": nothing but a deed or a thing, and a question mark. */
const BARE_ASK = wordings`
  ^ (?:(?:so|double|two|one|second|extra|then|the|my|all|a|any|run|running|use|using|turn|put|switch|close|closing|shut|open|opening|closed|covered|
  cover|covering|pick|picking|harvest|harvesting|cut|pull|set|light|start|leave|keep|uncover|take|on|off|down|up|in|over|out|tonight|now|today|tomorrow|
  night|needed|necessary|yet|or|not|no|bed|beds|everything|it|them|overnight|this|evening|again|more|worth|it|ok|yes|which|way|fire|firing|burn|sheet|
  sheets|layers|for|to|be|safe|shut|raise|lower|roll|rolled|rolling|crack|cracked|single|please|instead|just|in|put|bare|nah|uncover|early|later|late|
  this|evening|%\d+|@\w+|&inside|=\d+|#\d+|greens|salad) )+(?:\? )?$
`;

/** A crop or the cold is asked about, in words that also ask what to do. */
const NO_ADVICE = wordings`
  (?:worried|nervous|worry|anxious|concerned) about (?:the |my |our )?%\d+
  what would you say (?:it|the|we)|what (?:do )?you (?:say|reckon|think) for (?:the )?(?:tonight|tomorrow|&\w+)
  how (?:cold|low|warm) (?:\S+ ){0,4}?(?:under|beneath) (?:the |my )?@cover
`;

/** What to do tonight, as a whole, or where a deed is asked about in so many words ("should I cover", "is it safe to open"). */
export function openAdvice(message: Message): Intent | null {
  const { said } = message;
  if (NO_ADVICE.test(said)) return null;
  const topic = topicOf(said);
  // A rundown of last week is no plan.
  if (/ (?:rundown|run down|briefing|recap|summary) .*(?:last|past|previous|yesterday|did) /.test(said)) return null;
  if (OPEN_ASKS.test(said)) return withTopic(topic);
  return message.asks && topic !== null && DEED.test(said) ? withTopic(topic) : null;
}

const DEED = wordings`
  (?:should|shall|must) (?:i|we)|(?:i|we) (?:should|must|need to|have to|ought to)|would you
  (?:ok|safe|fine|all right|worth|time|better|best|wise|necessary|smart|good idea|need|have|want me|ought|too late|too early) to
  (?:do|can|may|could|will) (?:i|we) (?:need|have|want|\w+)|worth (?:\w+ing|it)|when (?:do|can|to|should|does)
  (?:beds?|crops|plants|greens|%\d+) (?:need|want|needing)
  (?:better|best|good|wise) (?:that |if )?(?:i|we) (?!did|had)\w+|how (?:high|hot|low|many|much|long)|which
`;

/** "Should I clear the snow": what to do is asked, whatever it is. */
export const anyAdvice = ({ said, asks }: Message): Intent | null => (asks && / (?:should|shall|must) (?:i|we) /.test(said) ? { kind: 'advice' } : null);

/** Advice about one thing, where nothing but the thing and a question is there. */
export function advice(message: Message): Intent | null {
  const { said, form } = message;
  const topic = topicOf(said);
  if (!message.asks || / (?:why|how come) /.test(said)) return null;
  if (/ what (?:is|are) (?:a |an )?@\w+ (?:\? )?$/.test(form)) return null;
  const isItem = topic !== null || itemsSaid(said).length > 0;
  if (!isItem) return null;
  return BARE_ASK.test(form) || ASKS_WHETHER.test(said) || / (?:yes|yeah|y) or (?:no|n) /.test(said) ? withTopic(topic) : null;
}
