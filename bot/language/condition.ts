import type { ConditionItem, Intent } from './intent.js';
import type { Message } from './message.js';
import { listed, wordings } from './wordings.js';

interface Sign {
  readonly item: ConditionItem;
  readonly on: RegExp;
  readonly off: RegExp;
}

const LACKS = `(?:${listed(`
  out|off|down|dead|gone|died|failed|cut|lost|quit|stopped|broken|went|broke|burnt out|burned out|seized|not working|not running|not turning
  not spinning|tripped|no|empty|low|shut off|shut down|gave up|gave out|given up|packed in|packed it in|packed up|carked|carked it|copped it
  conked out|conked|kaput|knackered|fried|flat|silent|bust|busted|blown
`).join('|')})`;
const BACK = `(?:${listed(`
  back|on again|restored|returned|fixed|working|running|going|repaired|replaced|on|up|up and running|up again|alive|sorted
`).join('|')})`;

const SIGNS: readonly Sign[] = [
  { item: 'snow', on: wordings`
    snow(?! days? )|snowing|snowed|snowfall|snowy|drifts?|snowdrifts?|blizzard|foot of white|white stuff
    (?:=\d+|inches|a foot|half a foot|load|ton) (?:\w+ ){0,6}?(?:sitting|lying|piled|heaped|stuck|all) (?:up )?on (?:top of )?(?:the |my )?(?:roof|@film|&inside)
  `, off: wordings`
    (?:cleared|swept|brushed|broomed|pushed|pulled|dug|knocked|shoveled|shovelled|removed|raked|scraped|melted) (?:\w+ |@\w+ |&\w+ ){0,4}?snow
    (?:no more|no) snow
    snow (?:\w+ |@\w+ |&\w+ ){0,3}?(?:cleared|gone|melted|slid off|slid|off|swept|removed|fell off|came off|stopped)
    (?:stopped|quit|done|no longer|not) snowing|snowing (?:has )?stopped|(?:clear|free|rid) of (?:the |all )?snow|no snow (?:left|now|any ?more)
    snow (?:is |has )?(?:all )?(?:off|gone|melting off|thawed|shed|shifted)
  ` },
  { item: 'power-out', on: wordings`
    (?:power|electricity|electric|grid|mains|juice) (?:\w+ ){0,3}?(?:${LACKS}|&outside)
    (?:lights|current) (?:are |is |has |have |just |all |went |now )*(?:out|gone|cut off|failed|away|off)
    (?:no|lost|without|they cut|company cut) (?:the |our )?(?:power|electricity|electric|mains|juice|grid)
    power cut|outage|power failure|blackout|brownout|power outage|breaker (?:has |is |just )?tripped|breaker popped
    fuse (?:has |is |just )?(?:blew|blown|gone)|blew a fuse|tripped the breaker|whole (?:road|street|valley|town|village) is (?:dark|out)
  `, off: wordings`
    (?<!(?:no|without|lost) )(?:power|electricity|electric|grid|mains|juice) (?:(?!out |off |down |cut |gone |not |lost )\w+ ){0,3}?${BACK}
    (?:lights|current) (?:are |is |has |have |just |came |come )*(?:back|restored)
    (?:have|got|has) (?:the |our )?(?:power|electricity|mains|juice|current|lights) (?:back|again)(?: on)?
    back on (?:the )?(?:grid|mains)|(?:reset|fixed) the (?:breaker|fuse)|outage (?:is |has )?(?:over|ended)
  ` },
  { item: 'blower-off', on: wordings`
    (?:blower|inflation|inflation @fan|inflator) (?:(?:that|which|between) (?:[^ ]+ ){1,9}?)?(?:\w+ ){0,3}?${LACKS}
    (?:inflation|air) (?:between|gone|lost)|deflated
    (?:@film|@layer|layers|skins|air gap|bubble) (?:\w+ ){0,4}?(?:gone flat|went flat|sagging|collapsed together|touching|deflated)
  `, off: wordings`(?:blower|inflation|inflation @fan|inflator) (?:(?!that |which |puffs |blows )\w+ ){0,3}?${BACK}` },
  { item: 'torn-film', on: wordings`
    (?:@film|@layer|roof|skin|poly|cover|end wall|panel|@wall) (?:&?\w+ ){0,6}?(?:tore|torn|ripped|split|rip|ripping|tear|punctured|shredded|flapping|
    blown|came off|came loose|come loose|slit|hole|gash|in ribbons|peeled back|gave way|burst)
    (?:tear|rip|hole|slit|gash|holes|rips|tears|split) (?:\w+ ){0,3}?(?:@film|@layer|roof|skin|poly|@wall|&inside)
    (?:big|small|new|long|huge|little) (?:tear|rip|split|gash)
    (?:tore|torn|ripped|punctured|shredded|slashed|split|burst|(?:fell|gone|went|came|got|poked|put|cut) (?:right )?through) (?:\w+ ){0,3}?(?:@film|@layer|
    roof|skin)
  `, off: wordings`
    (?:patched|taped|fixed|mended|repaired|sealed) (?:\w+ |@\w+ |&\w+ ){0,5}?(?:hole|tear|rip|@film|@layer|roof|slit|split|holes|rips|tears)
    (?:hole|tear|rip|@film|roof) (?:\w+ |@\w+ ){0,3}?(?:patched|taped|fixed|mended|repaired)
  ` },
  { item: 'door-open', on: wordings`
    doors? (?:\w+ |&\w+ ){0,7}?(?:open|ajar|blew open|blown open|wide open|off|will not (?:close|shut|latch)|not (?:close|closing|shut|shutting|latch)|
    stuck open|unlatched|swinging|banging|flung open|off its hinges|hanging off)|(?:left|forgot) (?:\w+ |&\w+ ){0,3}?doors?(?: open)?
  `, off: / (?:closed|shut|latched|locked|rehung) (?:\w+ |&\w+ ){0,3}?doors? | doors? (?:\w+ |&\w+ ){0,3}?(?:closed|shut|latched) / },
  { item: 'fuel-out', on: wordings`
    (?:out of|ran out of|run out of|no|low on|no more|used up (?:all )?the|burnt through the|burned through the|last of the) (?:propane|gas|fuel|oil|
    kerosene|paraffin|diesel|wood|pellets|firewood|petrol|lpg|butane|logs|heating oil)
    (?:propane|gas|fuel|oil|kerosene|paraffin|diesel|wood|pellets|firewood|petrol|lpg|butane|logs|heating oil|tanks?|bottles?|cylinders?|canister) (?:tanks? |
    bottles? |cylinders? |canisters? |cans? )?(?:(?:for|in|of) (?:the |my |our )?(?:@heater|&\w+|tank|burner|stove) )?(?:is |are |has |have |all |bone |just |
    nearly |almost |about |completely |now |totally )*(?:empty|out|ran out|gone|finished|run out|ran dry|dry|used up|running out|spent|low)
    @heater (?:\w+ ){0,3}?(?:ran out|run out|out of (?:fuel|gas|propane)|nothing (?:left )?to burn|no (?:fuel|gas|propane|oil)|starved|dry)
    nothing (?:left )?to burn
  `, off: wordings`
    (?:refilled|filled|refueled|refuelled|swapped|new|got|replaced|topped up|bought|more) (?:\w+ |@\w+ ){0,3}?(?:propane|gas|fuel|oil|kerosene|paraffin|
    diesel|tank|bottle|cylinder|pellets)
  ` },
  { item: 'fan-dead', on: wordings`
    (?:@fan|@tube|fan motor|motor) (?:&?\w+ ){0,4}?(?:dead|died|broken|broke|failed|quit|seized|not working|not running|not turning|not spinning|burnt out|burned out|kaput|fried|stuck|stopped|
    stopped working|will not start|packed up|gave up|gave out|given up|conked out|packed in|not spinning up|carked it|carked|copped it|conked|
    packed it in|given out|gone|burnt|burned|bust|busted|knackered|jammed|smoking|will not turn|will not spin|not turn|not spin|toast|not move|
    stopped dead|stalled|not start|not work|not run)
    (?:dead|broken) @fan
  `, off: wordings`
    @fan (?:in the @tube )?(?:\w+ ){0,3}?(?:fixed|repaired|replaced|spinning again|turning again|sorted|working|running again|works|going again|back)
    (?:fixed|repaired|replaced) (?:the |my |our )?@fan
  ` },
];

const STILL = wordings`
  (?:forgot|forgotten|did not|never|not|unable|can not|could not|failed|neglected) (?:to |i |we |got |get |round |around |been )*(?:closed?|shut|
  latch(?:ed)?|locked?|fix(?:ed)?|patch(?:ed)?|clear(?:ed)?|mend(?:ed)?|repair(?:ed)?|brush(?:ed)?|sweep|swept|refill(?:ed)?|replaced?)
  (?:not|no longer|still not|isn't|never|stopped|quit) (?:back|on|working|running|spinning|turning|closed|shut|fixed|cleared)
  still (?:out|off|open|down)
`;

/** Something that is wrong with the house or its weather, or is right again. */
export function condition(message: Message): Intent | null {
  // "Next door's pipes have gone" is of no house of ours.
  const said = message.said.replace(/ (?:next door|neighbou?rs?|his|her|their) (?:is )?(?:@\w+ |[a-z]+ )/g, ' somebody ').replace(/ (?:i|we) (?:did|have|do|will) not (?:start|run|use|turn|put) /g, ' ').replace(/ froze(?:n)? shut /g, ' ');
  if (message.asks || message.temps.length > 0 || / (?:if|forecast|will (?!not )|going to|might|may|expect|expecting|tomorrow) /.test(said)) return null;
  const off = SIGNS.filter((sign) => sign.off.test(said) && !STILL.test(said)).map(({ item }) => item);
  if (off.length > 0) return { kind: 'condition', items: off, on: false };
  const on = SIGNS.filter((sign) => sign.on.test(said)).map(({ item }) => item);
  // "The blower fan is dead" is of the blower, not of the fan that moves the air.
  const items = on.includes('blower-off') ? on.filter((item) => item !== 'fan-dead') : on;
  return items.length === 0 ? null : { kind: 'condition', items, on: true };
}
