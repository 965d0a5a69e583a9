import type { Intent } from './intent.js';
import type { Message } from './message.js';
import { nightMeant } from './night.js';
import { placeOf } from './reading-marks.js';
import { wordings } from './wordings.js';

const ASKS = wordings`
  how (?:cold|low|warm|hot|bad|chilly|frosty|hard|much frost|far|mild)
  how (?:much|many) (?:degrees?|temperature|cold|frost)
  forecast|outlook|prognosis
  frost|frosts|frosty|freeze|freezing|freezes|freezer|cold snap|cold spell|cold front|cold wave|cold night|cold nights
  weather
  what (?:is|will|are|was) (?:the |tonight |tomorrow |my |your |a |it |be )*(?:\w+ ){0,3}?(?:low|minimum|temperature|temps|high|maximum|weather|night|
  expected|predicted|like|looking)
  what (?:low|minimum|temperature|temps)
  (?:will|going to|be|get) (?:\w+ ){0,3}?(?:worse|better|colder|warmer|milder|as cold|as bad) (?:than|as) (?:last|yesterday)
  what (?:it|we|things|(?:the |my )?(?:low|minimum|temperature|&\w+)) (?:will|is going to|would|might) (?:\w+ ){0,2}?(?:be|get|go|drop|fall|hit|reach|
  bottom|dip|sink|come)
  what (?:do|would|did) you (?:reckon|think|say|guess|expect|figure|predict|believe) (?:that )?(?:it|we|the low|things|the temperature|the minimum|
  (?:the |my )?&\w+) (?:will|is going to|would|might|shall|goes|gets|drops)
  what is the (?:lowest|coldest|worst) (?:\S+ ){0,5}?(?:will|going|get|gets|hit|hits|tonight|tomorrow|go|goes|could|might)
  what (?:is|are) (?:it|we|things|she|(?:the |my )?&\w+) (?:going to|likely to|meant to|supposed to|due to|about to)
  what (?:do )?you (?:say|reckon|think) for (?:the |my )?(?:&\w+|tonight|tomorrow|low)
  ^ (?:please |just )*(?:give|show|tell|send) (?:me|us) (?:the )?(?:next|coming|rest of|week|nights)(?: \S+)* $
  how much (?:lower|colder|further)|(?:lowest|coldest) (?:of|over|in) (?:the )?(?:next|coming)|what (?:do|have) you (?:have|got|make it|get)(?: for \S+)?(?= $| tonight| for| inside)
  what will (?:the |it |my |our )*(?:(?:&\w+|@\w+|\w+) ){0,2}?(?:be|get|go|drop|fall|hit|reach|bottom)
  what (?:about|of|does) (?:the |this |next )*(?:tonight|tomorrow|week|weekend|night|\w+day|rest|outside|inside|&outside|&inside|&soil|it look)
  (?:get|go|drop|dip|fall|be|stay|getting|going|dropping) (?:down )?(?:to |below |under |above )(?:zero|#\d+|freezing)
  (?:cold|warm|mild|chilly|bad|rough|clear|cloudy|windy) (?:tonight|tomorrow|night|this week|overnight|enough)
  (?:going to|will it|gonna|expect|expecting|is it) (?:be |get |it )*(?:cold|freeze|frosty|chilly|snow|below|warm|bad|clear|snowing|cloudy|windy|stormy|
  icy|mild)
  how much snow
  (?:will|shall|would|could|might) (?:i|we|it|there|they|the &inside|the &outside|&inside|&outside|the night|tonight) (?:\w+ ){0,2}?(?:see|have|get|hit|
  reach|go|drop|touch|stay|hold|keep|bottom) (?:\S+ ){0,3}?(?:#\d+|zero|frost|freezing|below|above|under|low|lower|down|cold)
  (?:snow|rain|wind|storm|gale|gales|ice|sleet|thaw|cloud) (?:\w+ )?(?:coming|due|on the way|forecast|tonight|tomorrow|ahead|about|expected)
  how (?:looks|goes|becomes) (?:the|it|this|tonight|tomorrow)
  in for (?:a|it|another|some)
  (?:hard|rough|big|sharp|killer|keen) one(?: tonight| tomorrow)?
  (?:what|how) is (?:the|this|it) (?:night|evening|week|weekend|doing|sky) (?:\w+ ){0,2}?(?:doing|like|tonight|tomorrow|looking|going|up to)
  (?:what|which) (?:sort|kind|type) of (?:a )?(?:night|weather|cold|low|temperature)(?:s)?
  (?:what|how) (?:are|am|is|will) (?:we|i|you|it) (?:in for|up against|facing|looking at|expecting|going to get|getting)
  what is (?:coming|on the way|ahead|in store|heading our way|the damage|brewing)
  (?:does|will|is|when will|when does) it (?:going to |get |getting |be |ever |start |any )*(?:warm|warming|warmer|colder|cooler|milder|thaw|thawing|
  improve|let up|ease|easing)
  (?:give|show|tell|send) (?:me |us )?(?:the |tonight |your )*(?:numbers|temperature|figures|low|lows|minimum|odds)
  (?:week|weekend|night|tomorrow|tonight|\w+day) (?:is |be |going to be )?(?:looking|look|shaping up) (?:\w+ )?(?:cold|bad|warm|ok|frosty|nasty|mild|
  safe|grim|rough|any better)
  (?:how|when) (?:much )?(?:does|will|do) (?:it|we|things|the &inside|the mercury|temperature)(?: \w+)? (?:go|get|drop|bottom|dip|fall|hit|reach|sink|
  bottom out)
  (?:how many|many) (?:\w+ ){0,2}?(?:nights|frosts|freezes)
  (?:chance|chances|odds|risk|danger|likelihood|probability) of (?:a )?(?:\w+ )?(?:frost|freeze|freezing|snow|ice)
  (?:lowest|coldest|minimum|low|temperature|temps) (?:\w+ ){0,3}?(?:tonight|tomorrow|inside|outside|this week|overnight|expected|&inside|&outside|under|
  in|at dawn|at midnight|by morning|at sunrise|at \w+|~\d+)
  how (?:is|does|are|will) (?:the |this |rest of the )*(?:tonight|tomorrow|week|weekend|night|next few nights|coming days|it|she|things|\w+day|
  \w+day night) (?:\w+ ){0,2}?(?:look|looking|shaping|like|be)
  what is (?:tonight|tomorrow|\w+day|\w+day night|it|the week|the weekend|next week|this week|tomorrow night|the rest of the week) (?:going to |
  looking |look |be |shaping )*(?:like|be|up|look|bring|doing)
  (?:anything|something) (?:nasty|bad|cold|scary|to worry about|to watch)(?: \w+){0,3} (?:coming|ahead|week|tonight|weekend)
  anything (?:nasty|bad|cold|scary) coming
  what time (?:\w+ ){0,4}?(?:coldest|lowest|cold|freeze)
  (?:be|is|it|another|a) (?:a |another |going to be a )?(?:cold|chilly|bitter|bad|nasty) one
  (?:cold|chilly|bitter|bad|nasty) one (?:tonight|tomorrow|coming|ahead)
  (?:expected|forecast|predicted|likely) (?:&\w+ )?(?:low|minimum|temperature)
  (?:see|show|tell) (?:me |us )?(?:tonight|the week ahead|the week|tomorrow)
  when (?:is|will|does|are|should) (?:\w+ ){0,5}?(?:frost|freeze|freezing|cold|thaw|coldest|warm up|low|minimum)
`;

const ONLY_NIGHT = wordings`
  ^ (?:(?:,|=\d+|and|after|one|that|in|at|the|for|what|about|how|on|tonight|tomorrow|night|nights|days|few|couple|rest|of|coming|week|weekend|this|next|
  overnight|low|temperature|minimum|frost|inside|outside|\w+day|&\w+|under the @cover|under @cover) )+\? $
  ^ (?:and |so )?(?:what|how) about (?:tonight|tomorrow|tomorrow night|(?:the |this )?weekend|(?:this |next |the )?week|\w+day|\w+day night) $
`;
const ALONE = wordings`
  ^ (?:(?:the )?&\w+ |under the @cover )(?:low|minimum|temperature|forecast)(?: (?:tonight|tomorrow|night|overnight|for|please|this|week|\w+day))+ $
  ^ (?:tonight|tomorrow|tomorrow night|(?:the |this |next |rest of the |the rest of the )?week|this weekend|(?:the )?(?:next|coming) (?:few |
  couple of )?(?:nights|days|=\d+)(?: please)?|\w+day night) $
  ^ (?:the |tonight |tomorrow |tonights |night |week |for |my |local )*(?:expected |likely |predicted |forecast |projected |estimated |temperature |
  current |latest )*(?:latest|update|updates|status|news|forecast|outlook|weather|low|minimum|frost|temperature)(?: (?:for|tonight|tomorrow|night|
  please|this|week|weekend|the|now|next|few|nights|days|ahead|\w+day|inside|outside|in|under|&\w+|@cover|=\d+))* (?:\? |; )*$
`;

/** How cold it will be, tonight or over some nights. */
export function outlook(message: Message): Intent | null {
  const { said, form } = message;
  const alone = ALONE.test(form) && message.temps.length === 0;
  if (!alone && !(message.asks && (ASKS.test(said) || ONLY_NIGHT.test(form)))) return null;
  return outlookMeant(message);
}

/** The nights and the place that a question about the cold speaks of. */
export function outlookMeant(message: Message): Intent {
  // "Worse than last night" asks of the night to come.
  const meant = nightMeant({ ...message, said: message.said.replace(/ (?:than|as|like) (?:it was )?(?:last night|yesterday)(?= )/g, '') });
  if ('kind' in meant) return meant;
  const places = [...new Set(message.pieces.flatMap(({ symbol }) => placeOf(symbol, message.names) ?? []))];
  const [place] = places;
  return {
    kind: 'outlook',
    ...(places.length === 1 && place !== undefined ? { place } : {}),
    ...(meant.said ? { night: meant.night } : {}),
    ...(meant.nights === undefined ? {} : { span: { nights: meant.nights } }),
  };
}
