import type { Intent, PlainKind } from './intent.js';
import type { Message } from './message.js';

interface PlainAsk {
  readonly kind: PlainKind;
  readonly said: readonly RegExp[];
}

const END = String.raw`(?: (?:please|now|it|me|all|this|these|those|my|messages?|texts?|texting|messaging|sending|alerts?|msgs?|everything|for|good|the|and|anymore|any|more|stuff|notifications?|contacting|bothering|them|thanks|daily|nightly|to|here|duskward|again))*`;

/** Heard before everything else: carriers act on some of these words themselves, and the rest must never be taken for talk. */
const FIRST: readonly PlainAsk[] = [
  {
    kind: 'stop',
    said: [
      new RegExp(`^ (?:please |just )*(?:stop|stopall|stop all|unsubscribe|optout|opt out|opt-out|revoke)${END} $`),
      / (?:take|remove) (?:me|my number) (?:off|from) /,
      / (?:do not|no more|stop) (?:text|texts|message|messages|contact|texting|messaging|contacting|sending|send|bother|bothering)(?: me)?(?: (?:any|more|anymore|again|ever|please|these|texts|messages|at all|all))* $/,
      / (?:leave me alone|want to unsubscribe|unsubscribe me|want out|want to stop) /,
    ],
  },
  { kind: 'help', said: [/^ (?:help|info|commands?|menu|instructions|usage|how to|manual)(?: (?:please|me|with|this))* (?:\? )?$/, /^ (?:\? )+$/, / how (?:do|can) i (?:tell|give|send|report|say|enter|log) /, / how (?:do|does|can|should) (?:i|this|it|you|one|we) (?:use|work|talk to|operate)(?: \w+){0,3} $/, / what is this(?: \w+){0,2} $/, / (?:what can (?:you|i) (?:do|ask|say|send|text|type)|what (?:are|do) (?:the |you )?(?:commands|understand)|what do (?:i|you) do here|need help|how does this work|can you help me|explain how (?:this|you) work|give me (?:some )?help|what (?:should|do) i (?:type|send|write|text)|who are you|what are you) /] },
  { kind: 'start', said: [/ (?:sign up|sign me up|get me started|how do (?:i|we) (?:start|begin|join)) (?:\w+ ){0,6}$/, /^ (?:start|unstop|resume|begin|restart|subscribe|sign me up|get started|let us start|let us go|start again|start over|turn (?:it|messages) back on|resubscribe)(?: (?:please|now|again|messages|texts|\w{6,}))* $/] },
  { kind: 'erase', said: [/ (?:delete|erase|remove|wipe|destroy|forget|clear) (?:\w+ ){0,3}?(?:data|account|everything|me|information|info|details|records|profile) /, /^ erase(?: (?:it|all|please|everything))* $/] },
  { kind: 'export', said: [/ (?:export|download|backup|back up) /, / (?:send|give|email|mail|show|get) (?:me |us )?(?:a copy of |all |everything |the |my |of )*(?:data|everything you have|what you have|data file|csv|records you have) /, / (?:copy of my data|all my data|data you (?:have|hold|keep)) /] },
];

const LATER: readonly PlainAsk[] = [
  { kind: 'settings', said: [
    /^ (?:settings?|preferences|options|units?|change settings|pause|mute|snooze|my settings|unpause|quiet)(?: (?:please|for|a|an|the|week|night|nights|tonight|until|me|messages|=\d+|weekend|month|my|few|days|\w+day|tomorrow))* $/,
    / (?:use|switch|change|set|want|prefer|show|give|talk|speak|in|go|to) (?:\w+ ){0,4}?(?:celsius|fahrenheit|centigrade|metric|imperial)(?: |$)/, / (?:switch|change|use|set) (?:\w+ ){0,3}?(?:to |units? )(?:c|f|degrees c|degrees f) /,
    / (?:change|set|update|move|edit|fix) (?:my |the |our |your )*(?:time|units|location|place|zone|timezone|address|name|zip|postcode|zip code|greenhouse location|message time|evening message|alarm|reminder|coordinates|number|phone number|schedule|hour) /,
    / (?:text|message|send|remind|wake|ping|tell|alert|call|write|notify|warn) (?:me|us|it|them|(?:the |my |your )?(?:\w+ )?(?:message|advice|plan|update|text|alert|reminder|report)s?|texts)(?: [@\w]+){0,4} (?:at|earlier|later|before|every|by|sooner|only)(?: |$)/,
    / (?:earlier|later) (?:message|messages|text|texts) /, / (?:messages?|texts?|advice|alerts?) (?:\w+ ){0,5}?(?:earlier|later|sooner) /, / no (?:messages|texts|alerts) (?:this|for|until|till|tonight|today|on) /, / (?:new|changed) (?:postcode|post code|zip|zip code|address|location|phone number) /, / (?:pause|mute|snooze) (?:\w+ ){0,3}(?:messages|texts|for|until|me|it|alerts) /, / (?:on holiday|on vacation|away) (?:until|for|next|this) /, / (?:i|we) (?:have )?moved to /, / i (?:use|prefer|want|need) (?:celsius|fahrenheit|c|f) /,
  ] },
  { kind: 'why', said: [/^ (?:but |and |so )?(?:why|how come|what for|explain|reasons?|because|how so)(?: |$)/, / (?:what makes you (?:say|think)|how do you know|how did you (?:get|work|come|figure|arrive|decide|calculate|know)|on what basis|explain (?:that|yourself|why|the|your)|what is (?:that|this|it) based on|reason (?:for|behind)|tell me why|where (?:did|does|do) (?:that|you|this|it) (?:\w+ )?(?:come|get)|why (?:not|so|is|do|did|should|would|are|the|cover|was|that|cold)|what is (?:the|your) (?:reason|reasoning|thinking)) /] },
  { kind: 'next', said: [/^ (?:\w+ )*@(?:water|stones|layer|film|wall|tube|compost) or (?:\w+ )*@(?:water|stones|layer|film|wall|tube|compost) (?:\? )?$/, / (?:which|what) is (?:better|best) .*@\w+ or .*@\w+ /, / (?:more|better) from .*@\w+ or .*@\w+ /,
    / should (?:i|we) (?:get|buy|build|install|add) (?!\w+ on)/, / what (?:\w+ ){0,3}?(?:build|buy|upgrade|improve|add|install|invest|improvement|upgrades|improvements|get) (?:\w+ ){0,3}?(?:next|first|now|gives?|helps?|most|best|is|would|money|this)(?: |$)/, / (?:best|biggest|cheapest|next|most useful|better|good|worthwhile|smartest) (?:\w+ )?(?:upgrade|improvement|improvements|upgrades|investment|project|buy|bang|change|thing to (?:build|buy|add|improve|do for the &inside)|step) /,
    / what (?:would|will|could|should|can|might) (?:\w+ ){0,4}?(?:help|improve|build|buy|upgrade|add|install|invest)(?: \w+){0,3} (?:most|next|best|first|the &inside|a difference)(?: |$)/, / (?:where|how|what) (?:\w+ |=\d+ ){0,5}?(?:spend|spent|invest|money|budget) /, / (?:best|cheapest|easiest|good) way to (?:make|keep|get) (?:it|the &inside|my &inside|things) (?:warmer|warm|better) /, / how (?:can|could|do|should|would) i (?:\w+ )?(?:improve|upgrade|better|make) (?:the |my |our |it )*(?:&inside|warmer|house|better|hold|place|it) /, / what (?:is|comes) next (?:to|for|on) (?:build|the &inside|my &inside|the list) /, / (?:improvement|improvements|upgrade|upgrades)(?: ideas| list| suggestions)?(?: please)? (?:\? )?$/, / what (?:should|shall|do|can) (?:i|we) (?:build|buy|upgrade|improve|add|install) /, / (?:worth building|worth buying|should i build|build next|buy next|upgrade next|do to the &inside|=\d+ to spend|to spend) /,
  ] },
  { kind: 'record', said: [/ how far (?:off|out) (?:were|are|was|is|have) (?:you|your) /, / how (?:right|accurate|sure|confident|certain|reliable|trustworthy|good|close|precise|often|well|wrong|far off|many times|has your)(?: \w+){0,3}? (?:you|your|forecasts?|predictions?|guess(?:es)?|advice|right|wrong|track|did)(?: |$)/, / (?:track record|your record|your score|score card|scorecard|accuracy|success rate|hit rate|batting average|how did you do|how are you doing|how have you done|how good a job) /, /^ (?:the |my |your )?(?:record|score|scores|accuracy)(?: please)? (?:\? )?$/, / (?:were|are|have) you (?:been |ever |usually |always |often )*(?:right|wrong|accurate|correct|close|off|reliable)(?: |$)/, / (?:can|should|do) i (?:trust|rely on|believe) (?:you|this|it|that|your) /, / you (?:get|got|been|were) (?:it )?(?:right|wrong) /, / (?:your|the) (?:forecast|forecasts|prediction|predictions) (?:right|wrong|accurate|correct|good|been|off) /] },
  { kind: 'history', said: [/^ (?:the )?last =\d+ $/, / (?:history|graph|graphs|chart|charts|plot|diagram|picture|trend|log|logbook) /, / (?:past|previous|last|recent) (?:few |couple of |=\d+ |several )?(?:weeks?|months?|winters?|seasons?|nights?|days|years?|readings?|lows?|temperature|numbers)(?: |$)/, / (?:what|how) (?:was|were|did|cold was|low was|warm was|cold did|low did|cold has)(?: |$)/, / (?:coldest|lowest|warmest) (?:night|reading|low|it has been|temperature|one)? ?(?:so far|this winter|this season|this year|this month|ever|yet|i have had|we have had|was)(?: |$)/, / (?:my|all|the) (?:\w+ )?(?:readings|low so far|temperatures so far|nights so far)(?: |$)/, / (?:what|which) readings /, / my (?:lows?|highs?|temperatures?) (?:for|this|last|in|from|over|so) /, / (?:show|list|see) (?:me )?(?:my |the |all )*(?:readings|reading|low|lows|nights|temperature) /] },
];

const CHAT = /^ (?:(?:thanks|thank|you|hi|hello|hey|good|morning|evening|afternoon|night|ok|cool|great|nice|awesome|perfect|cheers|ta|bye|goodbye|lol|haha|ha|wow|hm|hmm|sure|right|got|it|will|do|very|much|so|a|lot|many|ever|there|fine|brilliant|lovely|excellent|see|sounds|understood|noted|roger|appreciate|appreciated|sorry|no|problem|worries|well|done|job|bot|mate|friend|duskward|how|are|today|i|am|is|that|this|good|helpful|useful|love|oh|yay|phew|yep|yup|yeah|k|that's|sleep|tight|all|the|best|merry|christmas|happy|new|year|!|smart|funny|bless|amazing|super|for|your|help|later|talk|again|to|too|really|man|neat|welcome|back|as|always|please|what|who|made|joke|tell|me|star|legend|bud|dude|bro|hero|champ|genius|fantastic|wonderful|pal|buddy|boss|x|xx|xxx|hugs|gorgeous|bye|one|lad|lass|handy|going|robot|human|name|real|person|machine|brill|grand|ace|sound|your|not|bad|everyone|folks|everybody|lovely|night) )+(?:\? )?$|^ (?:god |gosh |man |wow |oh |my )*it is (?:so |really |bloody |very |damn |absolutely |right |proper |a bit )*(?:cold|freezing|baltic|bitter|bitterly cold|chilly|nippy|perishing|grim|miserable) (?:&outside |tonight |today |here |out |now |this morning |again |for &outside )*$/;
const CHAT_HEART = / (?:thanks|thank|hi|hello|hey|morning|evening|afternoon|night|cool|great|nice|awesome|perfect|cheers|ta|bye|goodbye|lol|haha|ha|wow|ok|brilliant|lovely|excellent|understood|noted|roger|appreciated?|sorry|got it|will do|good job|well done|sounds good|love|yay|phew|sleep tight|merry|happy|joke|how are you|amazing|helpful|bless|no problem|no worries|neat|sure|right|i see|good|fine|useful|smart|funny|star|legend|hero|champ|genius|fantastic|wonderful|it is|robot|human|handy|how is it going|your name|nice one|who made|lad|grand|brill|ace) /;

const first = (asks: readonly PlainAsk[], message: Message): Intent | null => {
  const found = asks.find(({ said }) => said.some((pattern) => pattern.test(message.said) || (message.form.includes('?') && pattern.test(message.form))));
  return found === undefined ? null : { kind: found.kind };
};

/** Stop, help, start, erase, export. */
export const firstWords = (message: Message): Intent | null => first(FIRST, message);

/** One of settings, why, next, record, history. */
export const plainAsk = (kind: PlainKind, message: Message): Intent | null => first(LATER.filter((ask) => ask.kind === kind), message);

/** Thanks, greetings and the like. */
export const chat = (message: Message): Intent | null => (CHAT.test(message.form.replace(/ [;,*:-] /g, ' ').replace(/ ; /g, ' ')) && CHAT_HEART.test(message.said) ? { kind: 'chat' } : null);
