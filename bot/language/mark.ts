import { DateTime } from 'luxon';
import { amountsSaid } from './amounts.js';
import { dayPhrases } from './day-phrases.js';
import { unclear, type Intent, type Item } from './intent.js';
import { itemsSaid } from './items-said.js';
import { localNow } from './local-now.js';
import type { Message } from './message.js';
import { localTime } from './reading-time.js';
import { spotsOfValues } from './reading.js';
import { wordings } from './wordings.js';

const LASTING = wordings`
  (?:finished|done|just) (?:installing|building|fitting|putting|hanging|mounting|burying|digging|laying)|installed|install|built|mounted|replaced
  upgraded|painted|insulated|buried|stacked|added|fitted|hung|bought|constructed|set up|put in|putting in|made|dug|strung|stretched|glued|stapled|attached|moved|shifted|relocated|doubled
  swapped|extended|removed the old|finished building|finished installing|finished putting|put up|hooked up|wired|blackened|wrapped|sealed|caulked|lined
  banked|plumbed|screwed|bolted|nailed|welded|trenched|framed|assembled|erected|reskinned|re skinned|reglazed|skinned|double skinned|wiggle wired|clad
  cladded|plugged the gaps|weatherstripped|weather stripped
`;
const PLACED = / (?:put|set|chucked|dumped|tipped|shoved|poured|placed|laid|brought|got|rolled|piled|hauled|stuck|stood|lugged|carried|parked|lined (?:them )?up|dragged|wheeled|shoveled|shovelled) /;
/** Things can go for good, too. */
const GONE = / (?:removed|took out|took down|taken out|taken down|sold|got rid of|pulled out|threw out|tore out|dismantled|(?:took|taken) (?:\w+ |@\w+ ){1,4}(?:out|down|away)) /;
const NEW = / (?:new|second|third|another|extra|additional|more|permanent|permanently|=\d+|inner|insulated) /;
const FOR_GOOD = / (?:permanent(?:ly)?|for good|for the (?:season|winter)|from now on) /;
/** Things that stay where they are put; what is done with the rest changes every night. */
const LASTING_ITEMS: ReadonlySet<Item> = new Set(['water', 'stones', 'layer', 'film', 'wall', 'tube', 'compost']);

const PARTS_OF_HOUSE = / (?:gaps|cracks|edge|edges|foundation|greenhouse|&inside|end walls|door|door seal|skirt|thermometer|sensor|probe|gauge|\$\d+) /;
/** Who puts a thermometer or a hand into the water changes nothing. */
const MEASURES = / (?:thermometer|probe|sensor|hand|hands|finger) (?:\w+ ){0,3}?(?:in|into|on|against) /;
/** Said so, each of them lasts. */
const STAYS = wordings`
  filled (?:\S+ ){0,4}?@stones
  (?:hung|fitted|put up) (?:up )?(?:a|an|another|the|my|our) @curtain
  changed (?:\S+ ){0,3}?@(?:film|layer)|@tube (?:is|are) (?:in|laid|buried|down)
  thermometer (?:\S+ )*?used to be
  thermometer (?:\S+ ){0,4}?(?:hangs|sits|stands|is) (?:now |a bit )?(?:lower|higher|elsewhere|in another|at the other)
  double skinned|reskinned|re skinned|reglazed
`;
const NOTED = /^ (?:mark|note|log) :? ?(?!;|last|past|for|please|of|this week)/;

/** A lasting change to the greenhouse, from which on nights are compared. */
export function mark(message: Message): Intent | null {
  const { said } = message;
  if (message.asks || message.temps.length > 0 || / (?:not|will|going to|want to|thinking|planning|should|might|would|if|imagine|suppose|supposing|pretend) /.test(said)) return null;
  const items = itemsSaid(said);
  const lasts = items.some((item) => LASTING_ITEMS.has(item));
  const verb = LASTING.test(said);
  const isKept =
    (verb && (items.length > 0 || PARTS_OF_HOUSE.test(said))) ||
    (PLACED.test(said) && lasts && !MEASURES.test(said)) ||
    (/\bnew\b/.test(message.plain) && items.length > 0 && / (?:got|have|put) |^ [@a] /.test(said)) ||
    (/^(?:a )?(?:new|second|third) /.test(message.plain.trimStart()) && lasts) ||
    (GONE.test(said) && (lasts || / sold | got rid /.test(said)) && items.length > 0) ||
    (/ finished /.test(said) && lasts) ||
    (FOR_GOOD.test(said) && items.length > 0) ||
    STAYS.test(said) ||
    NOTED.test(message.form);
  if (!isKept) return null;
  // "Added a cover" may be tonight's or for good.
  const nightly = items.length > 0 && !lasts && !NEW.test(said) && !/\bnew\b/.test(message.plain) && !/ (?:hung|fitted|put up) (?:up )?(?:a|an|another|the|my|our) @curtain /.test(said) && !/ (?:sold|got|installed|built|bought|mounted|fitted|replaced|upgraded|constructed|put in (?:a|an|another|two)) /.test(said) && !FOR_GOOD.test(said) && changedAt(message) === localTime(message);
  if (nightly) return / added /.test(said) ? unclear('which-meaning', { choices: ['did', 'mark'] }) : null;
  const amounts = amountsSaid(message);
  return { kind: 'mark', text: message.text.trim(), ...(items.length === 0 ? {} : { items }), ...(amounts === undefined ? {} : { amounts }), at: changedAt(message) };
}

/** The day that was said, at its hour or at noon; else now. */
function changedAt(message: Message): string {
  const [day] = dayPhrases(message.plain, { atS: message.atS, zone: message.zone, direction: 'past' }, spotsOfValues(message));
  const now = localNow(message);
  const date = day?.date ?? (/ today /.test(message.said) && message.clocks.length > 0 ? now.toISODate() : null);
  const [clock, ...more] = message.clocks;
  const said = clock === undefined || more.length > 0 ? { hour: NOON } : { hour: clock.hour, minute: clock.minute };
  if (date === null) return localTime(message);
  const then = DateTime.fromISO(date, { zone: message.zone }).set(said);
  const isKnown = then.toSeconds() <= message.atS && (clock !== undefined || !then.hasSame(now, 'day'));
  return isKnown ? localTime({ atS: then.toSeconds(), zone: message.zone }) : localTime(message);
}

const NOON = 12;
