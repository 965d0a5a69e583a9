import { namedCrops } from './crop-question.js';
import { dayPhrases } from './day-phrases.js';
import { unclear, type Intent, type Meaning, type OutcomeState } from './intent.js';
import { localNow } from './local-now.js';
import type { Message } from './message.js';
import { nightMeant } from './night.js';
import { everyWording, wordings } from './wordings.js';

const STATES: Readonly<Record<OutcomeState, RegExp>> = {
  dead: wordings`
    like (?:wet |soggy |boiled |cooked |limp )?(?:tissue|tissue paper|paper|rags?|dishcloth|dishrag|cooked spinach|boiled spinach|seaweed)
    (?:frozen|froze|freezing) to death|dead|died|killed|kill|toast|gone|mush|mushy|black|blackened|goner|goners|kaput|finished|rotted|perished|wiped out|done for|did not survive
    did not make it|not make it|did not come through|a loss|lost|cooked|history|slime|collapsed|had it|write off|write-off|kicked the bucket
    popped its clogs|finito|slimy|slime|zapped|rip
    (?:to|into|like|is|are|just|all) (?:jelly|soup|goo|pulp|paste)|croaked|snuffed|ruined|destroyed|(?:is|are|got|all) fried|wrecked|hopeless|stone dead
    nuked|not come back|gave up the ghost|past saving|beyond saving|not pull through|curtains|carked it|copped it|goosed|banjaxed|knackered|kaputt
    buggered|stuffed|munted|shafted|scuppered|kicked it|given up|gave up|pushing up daisies|(?:is|are) no more|pure mush|deceased|compost now|zonked
  `,
  marked: wordings`
    burn|burned|burnt|nipped|damage|damages|damaged|wilted|wilting|wilty|limp|droopy|drooping|drooped|spots|spotted|spotty|hammered|battered|clobbered
    browned|brown|discolored|discoloured|yellow|singed|hit|hurt|marked|bitten|frost bit|got bit|scorched|bleached|translucent|floppy|crispy|edges|tips
    suffered|rough|stressed|scarred|knocked back|set back|sad|ragged|frostbitten|curled|beating|beat up|beaten up|beaten|took a knock|took a hit|flopped
    flopping|flopped over|purpled|pale|glassy|water soaked|blistered|peaky|poorly|sorry for itself|sorry for themselves|worse for wear|sulking|sulky
    frazzled|curling|tatty|patches|white spots|blotches|blotchy|patchy|shrivelled|shriveled|withered|bruised|unhappy|scalded|bronzed|crook|ropey|manky
    scabby|hiding|hammering|pasting|knock|shabby|hung over|seen better days|struggling|suffering|speckled|drooped over|lying flat|flattened
    collapsed a bit|marks|frost marks|toasted|singe|tinged|scorch|scorching|nip|browning|yellowing|blackening|bruising|burns|tinge|frost burn
  `,
  fine: wordings`
    fine|ok|good|great|perfect|happy|alive|survived|made it|unharmed|untouched|no damage|well|healthy|came through|pulled through|undamaged|all right
    standing|thriving|beautiful|lovely|unhurt|no problem|no problems|no harm|not damaged|not hurt|not dead|unfazed|not mind|not bothered|not care
    excellent|sailed through|made it through|perked up|recovered|looking good|green|strong|unscathed|loving it|dandy|grand|laughing|champion|bonny|flying
    happy as larry|bounced back|bounced right back|none the worse|not a scratch|not a mark|weathered|shrugged|shrugged it off|not fazed
    like nothing happened|hanging in|hanging on|doing well|intact|peachy|rosy|right as rain|laughed it off|laughed at it|breezed through|cruised through
    walked it|not flinch|not blink|not notice|not feel (?:it|a thing)|pristine|tip top|batted? an eye|batted? an eyelid|blinked|flinched
    (?:never|barely|hardly) noticed|no bother|sweet as|right as|mint|beaut|smiling|happy out|cheerful|in fine fettle|fit as a fiddle|hale|hardy as
    doing grand|going strong|top notch|alive and well|alive and kicking|kicking|still going|still going strong|still here|safe|safe and sound
    fresh as a daisy|rode it out|got through|came out of it|held up|held on|stood up to it|spot on|in good shape|good as new|zero damage|none of it hurt
  `,
};
const DENIED = everyWording`
  (?:no|not any|without|not) (?:(?:frost|cold|any|real|sign of|a|visible|much) )?(?:damage|damaged|hurt|harm|burn|burnt|burned|dead|hit|nipped|wilted|
  marked|spots|losses|problem|problems|bad|too bad)
`;
const UNDENIED = / (?:not|no longer|hardly|barely) (?:so |very |too |looking |all |in )?(?:fine|ok|good|great|happy|well|alive|healthy) /;
const PARTS = / (?:tips|edges|margins|(?:outer|older|lower|top|a few|few|some|couple of|tip) leaves) /;
/** What the cold did not do must not be laid to it. */
const OTHER_CAUSE = wordings`
  deer|rabbits?|hares?|slugs?|snails?|mouse|mice|rats?|voles?|moles?|aphids?|greenfly|goats?|chickens?|hens|birds?|pigeons?|bugs?|beetles?|worms?
  caterpillars?|groundhogs?|squirrels?|mildew|blight|rust|mold|mould|fungus|drought|thirsty|unwatered|overwatered|bolted|hail
  my (?:back|shoulder|knee|legs?)
`;
const FROZEN = / (?:frozen|froze|frozen solid|stiff|iced|frosted|frosty) /;
const VERB = wordings`
  is|are|was|were|looks|look|looking|made|came|got|has|have|seems|seem|survived|all|still|did|went|turned|lost|this morning|last night|everything|not|no
  fine|weathered|laughed|breezed|cruised|walked|took|bounced|shrugged|sailed|hanging|doing|rode|held|stood|as|every|both
`;

function stateOf(said: string): OutcomeState | Unknown {
  const denied = said.replace(/ bit the dust /g, ' died ').replace(/ gone (?=(?:a bit |all |very |slightly )?(?:brown|yellow|limp|floppy|soft|pale|crispy|spotty|wilty|purple|white|translucent|droopy) )/g, ' turned ').replace(/ (?:would|could|might|may) (?:not|never) (?:make it|survive|come through|pull through|last) /g, ' ').replace(DENIED, ' unharmed ');
  if (UNDENIED.test(denied) && !/ (?:dead|died|lost) /.test(denied)) return 'marked';
  const found = (Object.keys(STATES) as OutcomeState[]).filter((state) => STATES[state].test(denied));
  if (/ (?<!(?:would|could|might|may) )(?:did not|not|never) (?:survive|make it|come through|pull through|last the night) /.test(said)) return 'dead';
  // "The tips went black": a part of the plant is hurt, and the plant lives.
  if (PARTS.test(said) && !/ (?:dead|died|killed|lost|mush|gone) /.test(denied) && !found.includes('fine') && found.length > 0) return 'marked';
  const [only] = found;
  if (found.length === 1 && only !== undefined) return only;
  // "Alive but burnt at the tips" is marked; "half are dead, the rest fine" is not for us to choose.
  if (found.length === 2 && found.includes('marked') && found.includes('fine') && / (?:but|just|only|little|few|some|slight|bit|apart|except) /.test(said)) return 'marked';
  if (found.length > 1) return 'several';
  return FROZEN.test(said) ? 'several' : 'none';
}

type Unknown = 'several' | 'none';

/** How a crop came through. */
export function outcome(message: Message): Intent | null {
  const { said, form } = message;
  if (message.asks || message.temps.length > 0) return null;
  if (/ (?:going to|will|should|hope|hoping|hopefully|wish|better be|pray|praying|dinner|lunch|supper|ate|eat|eating|tasty|taste|tastes|to eat) /.test(said)) return null;
  if (OTHER_CAUSE.test(said)) return null;
  const state = stateOf(said);
  if (state === 'none') return null;
  // "Everything survived except the basil": what became of the basil is not said.
  if (message.hits.length > 0 && / (?:except|except for|apart from|bar|other than|save for|but for|but not|all but) (?:for |the |my |our |all )*%\d/.test(said)) return unclear('which-state', { choices: ['fine', 'marked', 'dead'] });
  if (message.hits.length === 0 && wordings`
    (?:everything|all|all of it|all of them|the crops|the plants|my plants|my crops|nothing|they) (?:is |are |was |were |looks? |all |has |have |
    got )*(?:survived|died|dead|fine|ok|gone|made|came through|come through|froze|frozen|burnt|burned|killed|alive|good|great|perfect|lost|toast)
  `.test(said)) return unclear('which-crop');
  if (message.hits.length === 0 && / (?:lost|killed) (?:one|some|a few|several|most|half|all) of (?:my |the |our )?(?:crops|plants) /.test(said)) return unclear('which-crop');
  if (message.hits.length === 0 && / (?:no losses|no casualties|no damage anywhere|not a mark on (?:anything|them|any)|lost nothing|lost everything) /.test(said)) return unclear('which-crop');
  if (message.hits.length === 0) {
    const strange = /^ (?:the |my |our |all the |all my |lost (?:the |my |all the )?)([a-z]+) (?:is |are |was |were |all |got |has |have |look |looks |did |died|survived|made|$)/.exec(form)?.[1];
    const isHouse = strange === undefined || wordings`
      ^(?:power|house|night|forecast|plastic|door|weather|thermometer|advice|plan|temperature|low|snow|grid|electricity|prediction|message|app|text|blower|
      fan|generator|fuel|fingers|hands|toes|feet|ears|nose|hose|hosepipe|pipes?|tap|lock|gas|propane|battery|batteries|phone|heater|probe|sensor)$
    `.test(strange);
    return isHouse ? null : unclear('which-crop', { word: strange });
  }
  if (/ (?:tonight|tomorrow) /.test(said)) return null;
  const each = outcomesByClause(message);
  if (each !== null) return each;
  const crops = namedCrops(message);
  if ('kind' in crops) return crops;
  const [crop, ...more] = crops;
  if (crop === undefined) return null;
  if (state === 'fine' && !VERB.test(said) && !/ (?:survived|came through|made it|pulled through|got through|came out of it) /.test(said)) return unclear('which-meaning', { choices: ['outcome', 'crop'] });
  if (state === 'several' || (state === 'dead' && / (?:half|some|most|few|part|third|quarter|partly|one of|several|couple|bit(?! the dust)) /.test(said))) return unclear('which-state', { choices: ['fine', 'marked', 'dead'] });
  const bed = message.pieces.findIndex(({ symbol }) => symbol === '*label');
  const beds = bed > 0 ? message.pieces.slice(bed - 1, bed + 1).map(({ written }) => written).join(' ') : / (?:in|on) (?:the )?(\w+ bed) /.exec(said)?.[1];
  const dated = / last night | this morning | overnight /.test(said);
  const { hour } = localNow(message);
  const night = dated ? lastNight(message, hour) : namedNight(message);
  const came = (one: string): Extract<Meaning, { kind: 'outcome' }> => ({ kind: 'outcome', crop: one, ...(beds === undefined ? {} : { bed: beds }), state, ...(night === null ? {} : { night }) });
  return more.length === 0 ? came(crop) : { ...came(crop), also: more.map(came) };
}

/** "Kale good, chard a bit sulky": each crop with what is said of it; null where it is one thing that is said, or not each has its own. */
function outcomesByClause(message: Message): Intent | null {
  const clauses = message.form.split(/ (?:[,;]|and|but) /).map((part) => ` ${part.trim()} `).filter((clause) => /%\d/.test(clause));
  const told = clauses.map((clause) => ({ state: stateOf(clause), hits: [...clause.matchAll(/%(\d+)/g)].map(([, at]) => Number(at)) }));
  if (told.length < 2 || new Set(told.map(({ state }) => state)).size < 2) return null;
  const all = told.flatMap(({ state, hits }): readonly Extract<Meaning, { kind: 'outcome' }>[] => {
    const crops = namedCrops({ ...message, hits: message.hits.filter((_, at) => hits.includes(at)) });
    return 'kind' in crops || state === 'none' || state === 'several' ? [] : crops.map((crop) => ({ kind: 'outcome', crop, state }));
  });
  const [first, ...more] = all;
  return first === undefined || all.length < clauses.length ? null : { ...first, also: more };
}

/** "On Thursday night": the last one that is over. */
function namedNight(message: Message): string | null {
  const past = dayPhrases(message.plain, { atS: message.atS, zone: message.zone, direction: 'past' }, message.temps).find(({ date, part }) => date !== null && part === 'night');
  return past?.date ?? null;
}

/** The night that ended this morning. */
function lastNight(message: Message, hour: number): string | null {
  const meant = nightMeant({ ...message, said: ' last night ' });
  return 'kind' in meant || hour < 4 ? null : meant.night;
}
