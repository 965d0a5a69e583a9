import { isEverydayWord } from './everyday-words.js';
import { anyLine } from './wordings.js';

/**
 * Ways of speech that mean what plain words mean. They become those words before anything else is looked for, so that every
 * rule, and the grammar of numbers and days, speaks of one form only. To teach one: a line here.
 */

/** Words of dialects; numbers are never among them. */
const WORDS: Readonly<Record<string, string>> = {
  // Scots and Ulster.
  oot: 'out', ootside: 'outside', oota: 'out of', aboot: 'about', noo: 'now', snaw: 'snow', snawin: 'snowing', snawing: 'snowing', snawed: 'snowed',
  aff: 'off', dae: 'do', daes: 'does', daein: 'doing', daeing: 'doing', wi: 'with', tae: 'to', frae: 'from', fae: 'from', ma: 'my', ye: 'you',
  yous: 'you', youse: 'you', yer: 'your',
  wid: 'would', whit: 'what', whits: 'what is', "whit's": 'what is', wis: 'was', wur: 'were', wir: 'our', oor: 'our', hae: 'have', hiv: 'have',
  gonnae: 'going to', gaun: 'going', gie: 'give', gies: 'give us', nae: 'no', naw: 'no', ken: 'know', guid: 'good', gid: 'good', deid: 'dead',
  hoose: 'house', roond: 'round', roon: 'round', doon: 'down', toon: 'town',
  mair: 'more', cauld: 'cold', caul: 'cold', telt: 'told', tellt: 'told', whaur: 'where', hoo: 'how', nicht: 'night', richt: 'right',
  awright: 'alright', "a'right": 'alright', awrite: 'alright', jist: 'just', pit: 'put', pitten: 'put', steek: 'shut', steekit: 'shut',
  happit: 'covered', braw: 'fine', bonnie: 'bonny', kail: 'kale', thon: 'that', thae: 'those', tattie: 'potato', tatties: 'potatoes',
  wheesht: 'quiet', ower: 'over', aw: 'all', hing: 'thing', somethin: 'something',
  didnae: 'did not', dinnae: 'do not', dinna: 'do not', disnae: 'does not', doesnae: 'does not', cannae: 'can not', canna: 'can not',
  couldnae: 'could not', couldna: 'could not', wouldnae: 'would not', widnae: 'would not', wasnae: 'was not', isnae: 'is not', hasnae: 'has not',
  hidnae: 'had not', hadnae: 'had not', havenae: 'have not', hivnae: 'have not', willnae: 'will not', winnae: 'will not', shouldnae: 'should not',
  werenae: 'were not', arenae: 'are not',
  // Ireland, the American South, the far South.
  "y'all": 'you', "ya'll": 'you', "y'alls": 'your', yalls: 'your', youz: 'you', yiz: 'you', aul: 'old', ould: 'old', yonder: 'there',
  shoulda: 'should have', fixin: 'fixing', oughta: 'ought to', gonny: 'going to', tryna: 'trying to', needa: 'need to', arvo: 'afternoon',
  sarvo: 'this afternoon', dis: 'this', dem: 'them',
  ow: 'how', "d'you": 'do you', dyou: 'do you', "g'house": 'greenhouse', "g'hse": 'greenhouse', lastnite: 'last night', lst: 'last',
  powercut: 'power cut', whatif: 'what if', las: 'last', wot: 'what', wots: 'what is', "wot's": 'what is', twas: 'it was', "'twas": 'it was',
  tn: 'tonight', tnite: 'tonight', hes: 'he is', shes: 'she is', strawbs: 'strawberries', toms: 'tomatoes', caulis: 'cauliflowers',
  cukes: 'cucumbers', lastnight: 'last night', nxt: 'next',
  tues: 'tuesday', weds: 'wednesday', thur: 'thursday', thurs: 'thursday',
  // What thumbs and other languages make of it.
  nite: 'night', nites: 'nights', mornin: 'morning', evenin: 'evening', eve: 'evening', tonite: 'tonight', yest: 'yesterday', grades: 'degrees',
  minimal: 'minimum', maximal: 'maximum', msg: 'message', nvm: 'never mind', nm: 'never mind', electrics: 'electricity', leccys: 'electricity is',
  msgs: 'messages', mesg: 'message', temprature: 'temperature', outdoors: 'outside',
  indoors: 'inside', tho: 'though', ony: 'any', howya: 'how are you', datas: 'data', fcst: 'forecast', hydro: 'electricity', hydros: 'electricity is',
  esb: 'electricity', eskom: 'electricity', loadshedding: 'power cut', aint: 'is not', "ain't": 'is not',
};

/** Oaths and fillers leave a hole as long as they were. */
const SAYS_NOTHING = new RegExp(`\\b(?:${anyLine(String.raw`
  (?:would|can|could) you believe(?: it| that)?|(?:pet|duck|hun|hon|luv|sweetheart|sweetie|cariad|petal|bud|boyo|chuck)(?=\W*$)|uh|erm|uhm|uhh|umm|bloody|sodding|damn(?:ed)?|goddamn(?:ed)?|bleeding|bleedin|flipping|flippin|frigging|friggin|fricking|frickin|freaking|freakin|effing|effin
  fucking|fuckin|feckin|fecking|flaming|flamin|blasted|ruddy|bastarding|stinking|the hell|the heck|the devil|the fuck|the feck|on earth
  in heaven'?s name|eh|innit|lol|lmao|rofl|omg|tbh|ngl|imo|imho|smh|haha|hahaha|hehe|ha ha(?: ha)?|y'know|on the (?:dot|nose|button|money)
  give or take|by the way|btw|fyi|just saying|bore da|bonjour|guten (?:morgen|tag|abend)|buenos dias|buongiorno|god morgen|bom dia|dzien dobry
  i'?m afraid|to be (?:honest|fair)|apparently|believe it or not|i (?:must|have to) say|mind you|if i'?m honest|no (?:joke|kidding)
  (?<!do |did |if |when |what |how |as )you know(?= ?[,.!?]|$)|wee|like i said|as i said|if you want it|if you want to know
  if (?:it|that) helps|in case you (?:want|need|care|are wondering)(?: it| to know)?|for what it'?s worth|fwiw
  for (?:your|the) (?:records?|log|book|files),?|(?:just )?so you know
  (?:and |so )?you(?:'ll| will) be (?:glad|happy|pleased|relieved|delighted|sad|sorry) to (?:hear|know|learn)(?: that)?|since you asked
  as you asked|so it (?:is|was|did)$|so i (?:did|have|am)$|an'? all(?=[.!,]|$)
`)})(?![\\w'])`, 'g');

/** Small numbers as a voice is written down. */
const HEARD_AS: Readonly<Record<string, string>> = { for: 'four', to: 'two', too: 'two', ate: 'eight', won: 'one' };

const DEED_DONE: Readonly<Record<string, string>> = { pick: 'picked', cover: 'covered', close: 'closed', open: 'opened', light: 'lit', turn: 'turned', run: 'ran', harvest: 'harvested', shut: 'shut', put: 'put', cut: 'cut' };

/** Where a gerund tells a deed that is done: "I'm after closing the vents". */
const DONE_FORM: Readonly<Record<string, string>> = {
  closing: 'closed', shutting: 'shut', putting: 'put', covering: 'covered', turning: 'turned', lighting: 'lit', switching: 'switched',
  picking: 'picked', pulling: 'pulled', drawing: 'drawn', opening: 'opened', losing: 'lost', running: 'run', cutting: 'cut',
  harvesting: 'harvested', clearing: 'cleared', building: 'built', installing: 'installed', hanging: 'hung', fitting: 'fitted',
  taking: 'taken', checking: 'checked', laying: 'laid', getting: 'got',
};

const PHRASES: readonly (readonly [RegExp, string | ((...found: string[]) => string)])[] = [
  [/(?:'m| am|'re| are|'s| is) (?:just |only )*after ([a-z]+ing)\b/g, (whole = '', deed = '') => (DONE_FORM[deed] === undefined ? whole : ` have ${DONE_FORM[deed]}`)],
  [/\b(?:have|has|i|we|'ve) (?:gone and|went and|been and gone and|done gone and) (?=[a-z])/g, 'i have '],
  [/\b(?:i|we|i've|we've|have) done (?=(?:cover|clos|shut|put|turn|pull|pick|lit|open|switch|drawn|went|got|forgot|build|built|hung|harvest)[a-z]*\b)/g, 'i already '],
  [/\b(?:fixing|fitting|aiming|minded|bound) to\b/g, 'going to'],
  [/\bmight could\b/g, 'could'],
  [/^(\W*)(1[0-2]|[1-9]) (?=in the (?:morning|night|small hours)\b(?: and|,)[^\d]*$)/g, '$1$2:00 '],
  [/\b(\d+) ?(?:in|inch|")(?= (?:down|deep|below the surface|under the surface|into the (?:soil|ground)))/g, '$1 inches'],
  [/\bit(?:'s| is) (1[0-2]|[1-9]) (?=(?:in the (?:night|morning)|at night)\b)/g, 'it is $1:00 '],
  [/\bminus (for|to|too|ate|won)\b(?=(?: (?:degrees|inside|outside|in|at|overnight|last|this))|\W*$)/g, (_, heard = '') => `minus ${HEARD_AS[heard] ?? heard}`],
  [/^\s*\d{1,2}\/\d{1,2}(?:\/\d{2,4})?(?=[:,]? (?:min|low|max|high|lows|mins)\b)/g, ''],
  [/\b(?:happy (?:valentine'?s?(?: day)?|new year|easter|xmas|christmas|st\.? pat\w*(?: day)?|thanksgiving|friday|monday|sunday|weekend))\b(?:(?=.*\d)|(?<=\d.*))/g, ''],
  [/\bwhy do (?:we|i) (?:live|do this|do it|bother|garden)(?: here| to ourselves| to myself| at all)?(?=\W*$)/g, ''],
  [/\bfigure(?= (?:that )?i )/g, 'reading'],
  [/(?<=\b(?:is|are|'s|s) )no (?=[a-z]+ing\b)/g, 'not '],
  [/(?<=(?:plus |\+)\d.*)[.,;!]* ?(?:plus|positive),? not (?:minus|negative)\b/g, ''],
  [/(?<=^(?!.*\b(?:was|were|got|hit|last)\b).*\b(?:what|whats|what's|how|hows|how's|will|going to|is it)\b.*)\bthe night(?=\W*$)/g, 'tonight'],
  [/\b(?:my |the )?[a-z]+ (?:says|said|asked me|wants me|told me) to (?:tell|let) you (?:know )?(?:that )?(?=it\b|the\b|low\b|inside\b|outside\b|we\b)/g, ''],
  [/\b(\d+) ?(?:in|inch|inches|")(?: of)? (?=(?:\w+ )?(?:snow|ice|rain|slush|powder)\b)/g, '$1 inches of '],
  [/\bsub[ -]?zero\b/g, 'below freezing'],
  [/\b(twenty|thirty|forty|fifty) ate\b/g, '$1 eight'],
  [/\bkl\.? ?(\d{1,2})(?![.:\d])/g, 'at $1:00'],
  [/(?<!\d ?)\bw\/?(?= [a-z])/g, 'with'],
  [/\b(won|lost|beat (?:them|him|her|us)) by \d+\b/g, '$1'],
  [/\bat (\d{1,2}) (instead of|rather than|not|and not) (?:at )?(\d{1,2})(?! ?[°:.\d])/g, 'at $1:00 $2 $3:00'],
  [/ ?[-=]+> ?/g, ': '],
  [/\b(\d{1,2}) uhr\b/g, '$1:00'],
  // "In/out 30/16".
  [/\b(in|out)(?:side)? ?\/ ?(in|out)(?:side)?:? (-?\d+(?:\.\d+)?) ?\/ ?(-?\d+(?:\.\d+)?)(?![\d/])/g, '$1side $3, $2side $4'],
  [/\b(it(?:'s|s| is)) (1[0-2]|[1-9])\.([0-5]\d)(?= (?:and|now|in the|here)\b.*\d)/g, '$1 $2:$3'],
  [/(?<=^\W*|\b(?:i|we|and|but|yes|yep),? )did (pick|cover|close|open|light|turn|run|harvest|shut|put|cut)(?= (?:all|the|my|it|them|everything|every|both|up|on|off)\b)(?!.*(?:\?|\b(?:help|work|matter|make|do any|do much)\b))/g, (_, deed = '') => DEED_DONE[deed] ?? deed],
  [/\bventilators?\b(?=.*\b(?:switch|switched|running|runs|plug|plugged)\b)/g, 'fan'],
  [/\b((?:takes?|took|spent|spend|needs?|needed|waste[ds]?)(?: (?:me|us|him|her|about|around|only|just|another|the|a good))*) (\d+) min\b/g, '$1 $2 minutes'],
  // What a voice is written down as.
  [/\b(the|my|our) let us\b/g, '$1 lettuce'],
  [/\b(the|my|our|swiss) charred\b(?= (?:be|is|going|survive|make|ok|fine|come|all right|last|and|live))/g, '$1 chard'],
  [/\b(says|said|say|sends|send you a|wave[sd]?) hi\b/g, '$1 hello'],
  // "Snows all slid off", "electrics back on", "roofs clear now": a written-out "is" without its mark.
  [/\b(snow|power|roof|door|heater|fan|blower|stove|electric|generator|furnace)s(?= (?:all|back|off|out|gone|clear|on|down|dead|still|been|broke|empty|quit|stopped|finally|slid|melted|now)\b)/g, '$1 is'],
  [/\b(won|lost|drew|tied|beat (?:them|him|her|us)|score(?:d)?|finished)( (?:[a-z]+ ){0,3})\d+ ?- ?\d+/g, '$1$2'],
  [/\bat the mo\b/g, 'at the moment'],
  [/\b(\d+|a few|two|three|four|five|six) (days|weeks|months) back\b/g, '$1 $2 ago'],
  [/\b(minimum|low|lowest|min|max|maximum|high)s of (?=(?:the |last |this )?night\b)/g, '$1 of '],
  [/\b(?:sorry,? )?(?:now )?where was i\b,?/g, ''],
  [/\b(got|went|been|gone|came|come|get|getting) (?:back )?out (?:there|here)\b/g, '$1 over there'],
  [/\b(in|since|of|from|winter|summer|back) '(\d\d)\b/g, '$1 19$2'],
  // "One degree, positive, not negative".
  [/(?<=\d.*|degrees?),? (?:only [a-z]+, )?(?:positive|plus|above zero),? (?:and )?not (?:negative|minus|below(?: zero)?)\b/g, ' above zero'],
  [/\bwhat do you (?:say|think|reckon|figure),? (?=(?:will|does|do|is|are|can|should|would|any)\b)/g, ''],
  [/\b(?:the )?morra\b/g, 'tomorrow'],
  [/(?<=\b(?:then|tonight|tomorrow|alright|right)) butty?(?=\W*$)/g, ''],
  // "22, no wait, 23": what is taken back in the same breath was never said.
  [/(?<![\w.:-])(?:-|minus |negative )?\d+(?:\.\d+)?(?: ?(?:degrees|[cf]))?,? ?(?:\.\.\.? ?)?(?:no,? (?:wait|hang on|hold on|sorry|make that|scratch that|i mean)|wait,? no|er,? no|(?<=, ?)no(?=, ))(?:,| -|\.\.\.)? (?=(?:-|minus |negative )?\d)/g, ''],
  [/(?<![\w.:-])(?:-|minus |negative )?\d+(?:\.\d+)?((?: (?!and\b|but\b|or\b)[a-z]+){1,4}),? ?(?:no,? (?:wait|hang on|hold on|sorry|make that|scratch that|i mean)|wait,? no|er,? no|(?<=, ?)no(?=, ))(?:,| -|\.\.\.)? ((?:-|minus |negative )?\d+(?:\.\d+)?)(?= ?(?:$|[.,!;]))/g, '$2$1'],
  [/\b(it(?:'s| is) [^.?!]*\d[^.?!]*\balready)\?+/g, '$1.'],
  // "Naw, it was -5 no -15".
  [/(?<=^\W*(?:no|naw|nah|nope|sorry)\b.*\d) no (?=(?:-|minus )?\d)/g, ' not '],
  [/(?<![\w:.$-])(1[0-2]|[1-9])([0-5]\d) ?(?=[ap]\.?m\b)/g, '$1:$2 '],
  [/\b(?:on |in )?(?:the )?night (?:of|from|on) (?=(?:the |this |next )?(mon|tues|wednes|thurs|fri|satur|sun)day\b)(?:the |this |next )?\w+day\b/g, '$1day night'],
  [/\b(?:on |in )?(?:the )?night (?:of|to) the (\d{1,2}(?:st|nd|rd|th))\b/g, 'on the $1'],
  [/\bthis morn\b(?!ing)/g, 'this morning'],
  [/\b(?:right |at )?this (?:very )?(?:minute|second|instant)\b/g, 'right now'],
  [/\b(?:minimum|low|lowest|min) (?:of|for|in) (?:the |this )(?:past )?night\b(?! of| to)/g, 'overnight minimum'],
  [/\bthe now\b(?= *(?:[,.!?;]|$))/g, 'now'],
  [/\b(?:this|today|to) (?:night|nicht)\b(?!time)/g, 'tonight'],
  [/\b(?:today|this day) (?:evening|in the evening)\b/g, 'this evening'],
  [/\b(?:the )?(?:past night|passed night|night (?:that is )?(?:past|gone)|yesterday night|yesternight|last nights?(?= was| low| minimum))\b/g, 'last night'],
  [/\bin (?=night\b)/g, 'in the '],
  [/\b(?:tomorrow|next day) in the night\b/g, 'tomorrow night'],
  [/\bthe morn(?:'s)?\b(?! of)/g, 'tomorrow'],
  [/\bnae bother\b|\bno bother at all\b/g, 'no problem'],
  [/\b(?:give|gives|gave) (?=(?:one more|another|a second|an extra|more|a new) )/g, 'add '],
  [/(?<=[a-z] )o'? (?=(?:the|my|our|this|that|your|straw|hay|water|snow|film|plastic|fleece|stones?|bricks?|frost|ice)\b)/g, 'of '],
  [/(?<!\b(?:corn|winter|lambs?|spring) )\bsalads?\b(?! (?:lea|mix|green|bowl|burnet|rocket|onion|dress|crop|bar|stuff|veg))/g, 'lettuce'],
  [/\b(back|home|there|out|ready|up|done|along|over|down|leaving|off|round|around|go|again|later) in (\d+)(?! *(?:degrees?|°|[cf]\b|min|h|[.:]\d|\d))/g, '$1 in $2 minutes'],
  [/\b(\d+) min(?= (?:ago|later|away|from|drive|walk|before|past|job|ride|early|late)\b)/g, '$1 minutes'],
  [/\b(?:in|inside|under|within|beneath) (?:the |my |our )?(?:poly|plastic|polythene|film|foil)\b(?<!\b(?:hole|holes|tear|tears|rip|rips|split|gash|slit|torn|snow)\b[^.;]*)(?! (?:tunnel|house|green|sheet|bag|box|tub|tank|is|has|was|got|tore|tear|drum|barrel|bottle|pot|cloche))/g, 'in the greenhouse'],
  [/\b(moved to|located at|coordinates(?: are)?|location(?: is)?|gps(?: is)?) -?\d+\.\d+ ?, ?-?\d+\.\d+/g, '$1 a place'],
  [/\bdew points?\b/g, 'dewpoint'],
  [/\b(?:feels? like|feeling like|wind chill(?: of)?|real feel)(?= (?:of )?(?:minus |-)?\d)/g, 'windchill'],
  [/\b([io])\/s\b/g, (_, side = '') => (side === 'i' ? 'inside' : 'outside')],
  [/\b(?:the|my|our|a) (?:max[/ -]?min|min[/ -]?max|maximum[/ -]minimum|minimum[/ -]maximum)(?! ?[-+\d:])(?: thermometer| gauge)?\b/g, 'the thermometer'],
  [/(\d ?(?:cm|mm|inch|inches)) down\b/g, '$1 deep'],
  [/\b(in|for|about|another|after|every|within|back|only|last) (\d+|a few|few) min\b/g, '$1 $2 minutes'],
];

/** "Tomato died this night" is of the night that was. */
const PAST = /\b(?:died|was|were|had|survived|froze|killed|came through|lost|got down|went down|dropped|fell|made it)\b/;
const AHEAD = /\b(?:will|would|going to|gonna|should|shall|do i|can|covered|closed|shut|put|turned)\b|\?/;

function inPlainWord(word: string): string {
  const said = Object.hasOwn(WORDS, word) ? WORDS[word] : undefined;
  const stem = word.endsWith("'s") ? WORDS[word.slice(0, -2)] : undefined;
  if (said !== undefined) return said;
  // "Doin", "sittin".
  // "Bottomd", "coverd".
  if (/[^aeiou]d$/.test(word) && word.length > 4 && !isEverydayWord(word) && isEverydayWord(`${word.slice(0, -1)}ed`)) return `${word.slice(0, -1)}ed`;
  const isClipped = word.length > 3 && word.endsWith('in') && !isEverydayWord(word) && isEverydayWord(`${word}g`);
  return isClipped ? `${word}g` : stem === undefined ? word : `${stem}'s`;
}

/** The text in plain words. What is nothing but oaths and fillers stays as it is. */
export function plainlySaid(plain: string): string {
  const words = plain.replace(/(?<![\w'])[a-z]+(?:'[a-z]+)?(?![\w])/g, inPlainWord);
  const told = PAST.test(words) && !AHEAD.test(words) ? words.replace(/\bthis night\b/g, 'last night') : words;
  const bare = told.replace(SAYS_NOTHING, (said) => ' '.repeat(said.length));
  const kept = /[a-z0-9]/.test(bare) ? bare : told;
  return PHRASES.reduce((sofar, [found, instead]) => (typeof instead === 'string' ? sofar.replace(found, instead) : sofar.replace(found, instead)), kept);
}
