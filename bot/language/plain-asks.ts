import type { Intent, PlainKind } from './intent.js';
import type { Message } from './message.js';
import { listed, wordings } from './wordings.js';

interface PlainAsk {
  readonly kind: PlainKind;
  readonly said: RegExp;
}

const END = listed(`
  please|now|it|me|all|this|these|those|my|messages?|texts?|texting|messaging|sending|alerts?|msgs?|everything|for|good|the|and|anymore|any
  more|stuff|notifications?|contacting|bothering|them|thanks|daily|nightly|to|here|duskward|again
`).join('|');

/** Heard before everything else: carriers act on some of these words themselves, and the rest must never be taken for talk. */
const FIRST: readonly PlainAsk[] = [
  { kind: 'stop', said: wordings`
    ^ (?:please |just )*(?:stop|stopall|stop all|unsubscribe|optout|opt out|opt-out|revoke)(?: (?:${END}))* $
    (?:take|remove) (?:me|my number) (?:off|from)
    (?:pause|mute|halt|end) (?:the |your |my |all |these )*(?:messages?|texts?|alerts?|advice)(?= )(?! .*(?:for|until|till|this) )
    (?:do not|no more|stop|quit|cease) (?:text|texts|message|messages|contact|texting|messaging|contacting|sending|send|bother|
    bothering)(?: me)?(?: (?:any|more|anymore|again|ever|please|these|texts|messages|at all|all))* $
    (?:do not|no longer) (?:want|need|wish for) (?:\w+ ){0,3}?(?:messages|texts|alerts|messaging|texting|hear from you)(?! .*(?:for|until|till|this|
    before|after|unless|at|on) )
    (?:please stop|stop please|stop now|stop it|stop this|stop bothering me|(?:i have|had) had enough|no more,? (?:please|thanks|
    thank you))(?: please| now| thanks| thank you)* $
    (?:no|never|not) (?:any )?(?:more )?(?:messages|texts|message me|text me|messaging|
    texting)(?: please| thanks| from you| any| again| ever| more| anymore)* $
    ^ (?:please |just )*leave me (?:be|in peace)(?: \S+)* $
    (?:i am )?done with (?:this|you|these|the texts|the messages)
    cancel (?:my|the|this) (?:subscription|service|account|texts|messages)|take me off|get me off|stop contacting
    (?:never|do not) (?:contact|text|message|write to|write) me (?:again|any ?more|ever)(?! (?:until|till|before|for|unless) )
    leave me alone|want to unsubscribe|unsubscribe me|want out|want to stop|opt me out|sign me off|lose my number|cut it out with the (?:texts|messages)
  ` },
  { kind: 'help', said: wordings`
    how (?:do|does|can|should|would|am i to|is one to) (?:i|you|we|one|it|this|anyone) (?:\w+ ){0,2}?(?:use|work|operate|drive|start with|talk to|
    go about) (?:this|it|that|you|with|the (?:bot|app|thing|service))(?: \w+)* $
    (?:do not|can not|did not|i not) (?:understand|get|follow|know|see|figure out|work out) (?:how|what) (?:this|to (?:use|do|send|say|type|write)|it|
    i (?:can|should|am)|you (?:want|need|can|do))(?: \w+){0,5} $
    how to use|user guide|user manual|instructions for|getting started|tutorial|walk me through (?:this|it|how)
    talk me through (?:this|it|how (?:this|it|you))|show me how (?:this|it|you)|teach me|show me the (?:commands|ropes)|give me the commands
    list (?:of |the |your )*commands|what is this (?:for|about|thing|number|bot)
    what (?:\w+ ){0,4}?can (?:i|we|one) (?:actually |even )?(?:ask|do with you|say|tell|send|text)
    what am i (?:able to|allowed to|supposed to (?:send|text|type|say|write|tell))
    what (?:should|do|must|can) i (?:send|text|type|write|tell|report|message) (?:you|to you|in|here)
    what (?:do you|information do you|info do you) (?:need|want) from me|what (?:are you|do you) (?:for|able to)|what is it (?:that )?you (?:can )?do|what things can you
    ^ (?:help|info|commands?|menu|instructions|usage|how to|manual)(?: (?:please|me|with|this))* (?:\? )?$
    ^ (?:\? )+$
    how (?:do|can) i (?:tell|give|send|report|say|enter|log)
    how (?:do|does|can|should) (?:i|this|this thing|this bot|it|you|one|we) (?:use|work|talk to|operate)(?: \w+){0,3} $
    what is this(?: \w+){0,2} $
    what can (?:you|i) (?:actually |even |really |all )?(?:do|ask|say|send|text|type)|what (?:are|do) (?:the |you )?(?:commands|understand)
    what do (?:i|you) do here|need help
    how (?:does|do) (?:this|that|it|you|these)(?: thing| things| bot| app)? works?|^ help me |can you help me|explain how (?:this|you) work
    give me (?:some )?help|what (?:should|do) i (?:type|send|write|text)|who are you|what are you
    remind me (?:what|how) (?:you(?! said)|i(?! (?:told|did|said|sent|have|had|reported|logged|gave|put|wrote))|this)|how do you work
    what (?:else )?can you do
  ` },
  { kind: 'start', said: wordings`
    ^ (?:please |you can |can you )?(?:start|begin|resume) (?:sending|texting|messaging|telling|with)
    (?:would like to|want to|like to|ready to|can i|can we|let me|let us|how (?:do|can) (?:i|we)) get started (?:\w+ ){0,3}$
    (?:sign up|sign me up|get me started|how do (?:i|we) (?:start|begin|join)) (?:\w+ ){0,6}$
    ^ (?:start|unstop|resume|begin|restart|subscribe|sign me up|get started|let us start|let us go|start again|start over|(?:turn|switch) (?:(?:it|
    them) back|(?:the |your |my )?(?:messages|texts|alerts|service)(?: back)?) on(?: again)?|sign me back up|(?:i )?(?:want|
    would like) (?:the )?(?:messages|texts|to hear from you) (?:back|again)|wake up(?: bot)?|resubscribe)(?: (?:please|the|my|your|up|now|again|messages|texts|winter|is|
    here|\w{6,}))* $
  ` },
  { kind: 'erase', said: wordings`
    (?:delete|erase|remove|wipe|destroy|forget|clear) (?:\w+ ){0,3}?(?:data|account|everything|me|information|info|details|records|profile)
    ^ erase(?: (?:it|all|please|everything))* $
  ` },
  { kind: 'export', said: wordings`
    spreadsheet|csv|excel|xls|xlsx|google sheet|google sheets
    (?:copy|printout|print out|dump|archive|file) (?:of|with) (?:everything|all|my|the|what|whatever)(?! .*(?:plan|advice|message))
    (?:everything|all|whatever) (?:that )?(?:i|we) (?:have |had |ever |all )*(?:recorded|sent|logged|entered|told|given|reported|noted|typed|submitted|
    put in)(?! .*(?:wrong|last))
    (?:all )?(?:my|our|the) (?:data|readings|numbers|records|temperatures|information|measurements) (?:\w+ )?(?:as|in|into|to) (?:a |an |one |
    my )?(?:file|email|document|table|download|paper|disk|laptop|computer|pdf)
    (?:get|have|take|want|need) (?:\w+ ){0,3}?(?:my|our) (?:data|records|information)(?: out| back)?
    export|download|backup|back up (?:my|the|our|all|everything)
    (?:send|give|email|mail|show|get) (?:me |us )?(?:a copy of |all |everything |the |my |of )*(?:data|everything you have|what you have|data file|csv|
    records you have)
    copy of my data|all my data|data you (?:have|hold|keep)
  ` },
];

const LATER: readonly PlainAsk[] = [
  { kind: 'settings', said: wordings`
    ^ (?:(?:please|just|in|make it|all in) )*(?:celsius|fahrenheit|centigrade)(?: (?:please|not f|not c|not fahrenheit|not celsius|instead|thanks|from now on|for me|now|always))* $
    ^ (?:what (?:are|is) |show (?:me )?|see |change |open |view |check |go to )?(?:my |the |your |our )*(?:settings?|preferences|options)(?: (?:are|
    please|now|right now))* (?:\? )?$
    ^ (?:(?:please|be|stay|keep|go) )*(?:settings?|preferences|options|units?|change settings|pause|mute|snooze|my settings|unpause|unmute|
    quiet)(?: (?:please|for|a|an|the|week|night|nights|tonight|until|me|messages|=\d+|weekend|month|my|few|days|\w+day|tomorrow))* $
    (?:use|switch|change|set|want|prefer|show|give|talk|speak|in|go|to) (?:\w+ ){0,4}?(?:celsius|fahrenheit|centigrade|metric|imperial)
    (?:switch|change|use|(?<! (?:is|was|are) )set) (?:\w+ ){0,3}?(?:to |units? )(?:c|f|degrees c|degrees f)
    (?:change|set|update|move|edit|fix) (?:my |the |our |your )*(?:time|units|location|place|zone|timezone|address|name|zip|postcode|zip code|
    greenhouse location|message time|evening message|alarm|reminder|coordinates|number|phone number|schedule|hour)
    (?:text|message|send|remind|wake|ping|tell|alert|call|write|notify|warn) (?:me|us|it|them|(?:the |my |your )?(?:\w+ )?(?:message|advice|plan|update|
    text|alert|reminder|report)s?|texts)(?: (?!what|how|if)[@\w]+){0,4} (?:at|earlier|later|before|every|by|sooner|only|instead|twice|once a)
    (?:do not|never|please|only|just|always|rather) (?:text|message|send|ping|call|buzz|wake|write)(?: (?:me|us|it|anything|one|messages|
    texts))? (?:before|after|until|till|past|later than|earlier than|at|by|from|between|around) (?:about )?[#~]\d+
    (?:make|have|get|want|move|put|set|do|change|shift|like) (?:the |my |it |this )*(?:\w+ )?(?:message|text|advice|plan|update|alert|
    reminder)s? (?:\w+ ){0,2}?(?:at|to|for|by|around|about) [~#]\d+
    (?:evening|morning|nightly|daily) (?:message|text|advice|plan|update|alert|report)s? (?:\w+ ){0,3}?(?:at|to|for|by) [~#]\d+
    ^ (?:messages?|texts?) (?:\w+ ){0,2}?(?:at|to|for|by) [~#]\d+(?: please)? $
    (?:bedtime|bed time) (?:\w+ ){0,3}?[~#]\d+
    (?:only|just) (?:text|message|send|wake|ping|tell|alert|call|write|notify|warn|buzz|bother) (?:me|us)(?: up)?(?: a text| a message)? (?:if|when|once|
    below|under)
    ^ (?:please )?(?:text|message|wake|ping|alert|call|notify|warn|buzz) (?:me|us)(?: up)? (?:if|when|once|whenever|as soon as|below|under)
    (?:no need to|do not) (?:text|message|wake|ping|alert|call|notify|warn|bother) (?:me|us) (?:unless|until|before|above|over|if)
    (?:earlier|later) (?:message|messages|text|texts)
    (?:messages?|texts?|advice|alerts?) (?:\w+ ){0,5}?(?:earlier|later|sooner)
    no (?:more )?(?:messages|texts|alerts) (?:this|for|until|till|tonight|today|on)
    (?:new|changed) (?:postcode|post code|zip|zip code|address|location|phone number)
    (?:pause|mute|snooze) (?:\w+ ){0,3}(?:messages|texts|for|until|me|it|alerts)
    (?:on holiday|on vacation|away) (?:until|for|next|this)
    (?:i|we) (?:have )?moved to
    i (?:use|prefer|want|need) (?:celsius|fahrenheit|c|f)
    (?:give|send|drop) (?:me|us|them) (?:a |no |nothing ?)?(?:shout|text|texts|message|messages|buzz|ring|call|nudge|ping)? ?(?:\S+ ){0,4}?(?:at|until|before|after|during|from) (?:half |about |around )?(?:~\d+|the|then|i|we|\d\w+|=\d+)
    ~\d+ (?:\S+ ){0,4}?from now on
    send (?:me |us )?(?:the |my |it )*(?:\w+ )?(?:thing|one|message|text|forecast|report|advice|plan)? ?(?:at|by) (?:~\d+|#\d+)
  ` },
  { kind: 'why', said: wordings`
    ^ (?:but |and |so )?(?:why|how come|what for|explain|reasons?|because|how so)
    what makes you (?:say|think)|how do you know
    how did you (?:get|work|come|figure|arrive|decide|calculate|know)|on what basis|explain (?:that|yourself|why|the|your)
    what is (?:that|this|it) based on|reason (?:for|behind)|tell me why|on what do you base|on which data|based on what|basing (?:that|this|it) on
    where (?:do|did) you (?:get|pull|take|find)|says who
    how do you (?:figure|work (?:that|it) out|come up|get|arrive|reckon|come to)|how did you (?:reckon|reach|come)|what is behind
    how (?:is|was) (?:that|this|it) (?:worked out|calculated|figured|computed|made)|what led you|why on earth|justify|your reasoning|reasoning behind
    the logic|what tells you
    where (?:did|does|do) (?:that|you|this|it) (?:\w+ )?(?:come|get)
    why (?:not|so|is|do|did|should|would|are|the|cover|was|that|cold)|what is (?:the|your) (?:reason|reasoning|thinking)
  ` },
  { kind: 'next', said: wordings`
    ^ (?:\w+ )*@(?:water|stones|layer|film|wall|tube|compost) or (?:\w+ )*@(?:water|stones|layer|film|wall|tube|compost) (?:\? )?$
    (?:which|what) is (?:better|best) .*@\w+ or .*@\w+
    (?:more|better) from .*@\w+ or .*@\w+
    (?:which|what) (?:\w+ )?(?:improvement|upgrade|investment)s?
    should (?:i|we) (?:get|buy|build|install|add)(?! \w+ on )
    what (?:\w+ ){0,3}?(?:build|buy|upgrade|improve|add|install|invest|improvement|upgrades|improvements|get) (?:\w+ ){0,3}?(?:next|first|now|gives?|
    helps?|most|best|is|would|money|this)
    (?:best|biggest|cheapest|next|most useful|better|good|worthwhile|smartest) (?:\w+ )?(?:upgrade|improvement|improvements|upgrades|investment|project|
    buy|bang|change|thing to (?:build|buy|add|improve|do for the &inside)|step)
    what (?:would|will|could|should|can|might) (?:\w+ ){0,4}?(?:help|improve|build|buy|upgrade|add|install|invest)(?: \w+){0,3} (?:most|next|best|first|
    the &inside|a difference)
    (?:where|how|what) (?:\w+ |=\d+ ){0,5}?(?:spend|spent|invest|money|budget)
    (?:best|cheapest|easiest|good|quickest|simplest) way to (?:gain|add|win|pick up|improve|raise|warm)
    (?:best|cheapest|easiest|good) way to (?:make|keep|get) (?:it|the &inside|my &inside|things) (?:warmer|warm|better)
    how (?:can|could|do|should|would) i (?:\w+ )?(?:improve|upgrade|better|make) (?:the |my |our |it )*(?:&inside|warmer|house|better|hold|place|it)
    what (?:is|comes) next (?:to|for|on) (?:build|the &inside|my &inside|the list)
    (?:improvement|improvements|upgrade|upgrades)(?: ideas| list| suggestions)?(?: please)? (?:\? )?$
    what (?:should|shall|do|can) (?:i|we) (?:build|buy|upgrade|improve|add|install)
    worth building|worth buying|should i build|build next|buy next|upgrade next|do to the &inside|=\d+ to spend|to spend
  ` },
  { kind: 'record', said: wordings`
    you (?:were|are|got it|had it) (?:so |very |quite |a |pretty |almost |nearly |bang |dead |well )*(?:spot on|bang on|dead on|right|wrong|accurate|
    miles off|miles out|way off|way out|far off|far out|off|nowhere near|not far off|close)
    how far (?:off|out) (?:were|are|was|is|have) (?:you|your)
    how (?:right|accurate|sure|confident|certain|reliable|trustworthy|good|close|precise|often|well|wrong|far off|many times|
    has your)(?: \w+){0,3}? (?:you|your|forecasts?|predictions?|guess(?:es)?|advice|right|wrong|track|did)
    track record|your record|your score|score card|scorecard|accuracy|success rate|hit rate|batting average|how did you do|how have you been doing
    how have you been|how did your|how has your|your aim|ever get (?:it|this|that) right|get it right|got it right|any good at this|past performance
    how many (?:\S+ ){0,5}?(?:were|was) (?:within|right|wrong|correct|off)|how often (?:do|have|were|are) you|how many (?:times )?(?:did|have) you|how well (?:do|did|have) you|how much (?:can|should) i trust|your report card
    report card|your error|average error|how far off|how are you doing|how have you done|how good a job
    ^ (?:the |my |your )?(?:record|score|scores|accuracy)(?: please)? (?:\? )?$
    (?:were|are|have) you (?:been |ever |usually |always |often )*(?:right|wrong|accurate|correct|close|off|reliable)
    (?:can|should|do) i (?:trust|rely on|believe) (?:you|this|it|that|your)
    you (?:get|got|been|were) (?:it )?(?:right|wrong)
    (?:your|the) (?:forecast|forecasts|prediction|predictions) (?:right|wrong|accurate|correct|good|been|off)
  ` },
  { kind: 'history', said: wordings`
    ^ (?:my |the )?(?:log|logs|logbook|diary|journal|recap|rundown|summary)(?: (?:please|for|of|from|the|last|past|this|;|,|week|month|winter|so|far|=\d+|
    nights|days|night|yesterday|weekend))* (?:\? )?$
    (?:rundown|run down|recap|summary|review|overview|list|record|account|look back|run through|roundup|round up|breakdown|report) (?:of |on |for |over |
    at )?(?:\w+ )*?(?:last|past|previous|yesterday|i did|we did|i have done|what i|what we|so far|this winter|this month|recent)
    (?:what|which) (?:was it|is it|all|else|things|jobs|actions)? ?(?:that )?(?:did|have|had) (?:i|we) (?:\w+ )?(?:do|done|did|cover|covered|report|send|
    log|write|tell)
    (?:what|which)(?: was it| is it| all| it was)? (?:that )?(?:i|we) (?:did|have done|had done|covered|sent|told you|reported) (?:on|last|the|in|that|so|
    over|during|this|yesterday)
    what (?:all )?happened (?:\w+ ){0,2}?(?:last|on|yesterday|over|in|the night|night|monday|tuesday|this week)
    (?:go|look|scroll|see) back (?:over|at|on|through)
    ^ (?:the |my )?(?:last|past) =\d+ $
    (?:show|list|give|send|tell|see) (?:me |us )?(?:the |my |our )*(?:last|past|previous|recent) (?:=\d+|fortnight|few|\w+ nights)
    (?:last|past) (?:fortnight|=\d+)(?: for me| please| \?)? $
    history|graph|graphs|chart|charts|plot|diagram|picture|trend|log|logbook
    (?:lows?|highs?|readings?|numbers|temperature|temps|minimums?) (?:from|for|of|over|in) (?:the |my |our )?(?:past|last|previous)
    how (?:did |have |were )?(?:the |my |our )?(?:last|past|previous) (?:few |couple of |=\d+ )?(?:weeks?|nights?|days?)?(?: ?)(?:went|go|gone|been)
    how (?:did |have |were )?(?:the |my |our )?(?:last|past|previous) (?:few |couple of |=\d+ )?(?:weeks?|nights?|days?) (?:went|go|gone|been)
    (?:past|previous|last|recent) (?:few |couple of |=\d+ |several )?(?:weeks?|months?|winters?|seasons?|nights?|days|years?|readings?|lows?|temperature|
    numbers)
    (?:what|how) (?:was|were|did|cold was|low was|warm was|cold did|low did|cold has)
    (?:coldest|lowest|warmest) (?:that )?(?:it|we|i|you) (?:has|have|had|ever|is)(?: ever)? (?:been|got|gone|had|seen|dropped)
    (?:coldest|lowest|warmest) (?:night|reading|low|it has been|temperature|one)? ?(?:so far|this winter|this season|this year|this month|ever|yet|
    i have had|we have had|was)
    (?:my|all|the) (?:\w+ )?(?:readings|low so far|temperatures so far|nights so far)
    (?:what|which) readings
    my (?:lows?|highs?|temperatures?) (?:for|this|last|in|from|over|so)
    (?:show|list|see) (?:me )?(?:my |the |all )*(?:readings|reading|low|lows|nights|temperature)
  ` },
];

const CHAT = wordings`
  ^ (?:(?:thanks|thank|you|hi|hello|hey|good|morning|evening|afternoon|night|ok|cool|great|nice|awesome|perfect|cheers|ta|bye|goodbye|lol|haha|ha|wow|
  hm|hmm|sure|right|got|it|will|do|very|much|so|a|lot|many|ever|there|fine|brilliant|lovely|excellent|see|sounds|understood|noted|roger|appreciate|
  appreciated|sorry|no|problem|worries|well|done|job|bot|mate|friend|duskward|how|are|today|i|am|is|that|this|good|helpful|useful|love|oh|yay|phew|yep|
  yup|yeah|k|that's|sleep|tight|all|the|best|merry|christmas|happy|new|year|!|smart|funny|bless|amazing|super|for|your|help|later|talk|again|to|too|
  really|man|neat|welcome|back|as|always|please|what|who|made|joke|tell|me|star|legend|bud|dude|bro|hero|champ|genius|fantastic|wonderful|pal|buddy|
  boss|x|xx|xxx|hugs|gorgeous|bye|one|lad|lass|handy|going|robot|human|name|real|person|machine|brill|grand|ace|sound|your|not|bad|everyone|folks|
  everybody|lovely|night|ya|kindly|rock|rocks|rocking|grateful|yer|wee|gem|diamond|treat|goodnight|evenin|safe|warm|stay|take|care|have|day|weekend|
  alrighty|righto|right|on|ha|hahaha|hehe|smashing|champion|cracking|beauty|goodo|aye|fantastic|gracias|merci|danke|muchas|obliged|saved|bacon|butt|
  life|day|made|my|these|texts|messages|much|obliged|truly|we|us|both|nifty|sweet|dope|sick|super|duper|lifesaver|saver|helps|helped|lots|was|were|
  million|bunch|ton|tons|heap|heaps|load|loads|kind) )+(?:\? )?$
  ^ (?:god |gosh |man |wow |oh |my )*it is (?:so |really |bloody |very |damn |absolutely |right |proper |a bit )*(?:cold|freezing|baltic|bitter|
  bitterly cold|chilly|nippy|perishing|grim|miserable) (?:&outside |tonight |today |here |out |now |this morning |again |for &outside )*$
  ^ (?:it is )?(?:too|so|bloody|damn) (?:cold|early|late) (?:for (?:this|me|words|anything)|to (?:think|type))(?: [a-z]+)* $
`;
const CHAT_HEART = wordings`
  thanks|thank|hi|hello|hey|morning|evening|afternoon|night|cool|great|nice|awesome|perfect|cheers|ta|bye|goodbye|lol|haha|ha|wow|ok|brilliant|lovely
  excellent|understood|noted|roger|appreciated?|sorry|got it|will do|good job|well done|sounds good|love|yay|phew|sleep tight|merry|happy|joke
  how are you|amazing|helpful|bless|no problem|no worries|neat|sure|right|i see|good|fine|useful|smart|funny|star|legend|hero|champ|genius|fantastic
  wonderful|it is|robot|human|handy|how is it going|your name|nice one|who made|lad|grand|brill|ace|rock|rocks|grateful|gem|diamond|goodnight|alrighty
  righto|smashing|cracking|gracias|merci|danke|obliged|lifesaver|nifty|sweet|dope|take care|too cold|so cold|too early|too late
  saved my (?:bacon|butt|life)
`;

const first = (asks: readonly PlainAsk[], message: Message): Intent | null => {
  const found = asks.find(({ said }) => said.test(message.said) || (message.form.includes('?') && said.test(message.form)));
  return found === undefined ? null : { kind: found.kind };
};

/** Stop, help, start, erase, export. */
export const firstWords = (message: Message): Intent | null => first(FIRST, message);

/** One of settings, why, next, record, history. */
export const plainAsk = (kind: PlainKind, message: Message): Intent | null => first(LATER.filter((ask) => ask.kind === kind), message);

const PRAISE = /^\W*(?:you|u) (?:guys )?(?:rock|rule)\W*$/;

/** Thanks, greetings and the like. */
export const chat = (message: Message): Intent | null => (PRAISE.test(message.plain) || (CHAT.test(message.form.replace(/ [;,*:-] /g, ' ').replace(/ ; /g, ' ')) && CHAT_HEART.test(message.said)) ? { kind: 'chat' } : null);
