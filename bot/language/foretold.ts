import type { Message } from './message.js';
import { everyWording, wordings } from './wordings.js';

/** Someone else's number, or one that may come: a forecast that is told is no thermometer that was read. */
const FORETOLD = wordings`
  forecast|forecasts
  (?:you|duskward|bot|they|app|tv|news|radio) (?:just |had |have )?(?:said|say|told|tell|thought|guessed|reckoned|gave)|calling for|predicted|predicting|predicts
  (?:dad|mum|mom|father|mother|brother|sister|son|daughter|wife|husband|hubby|missus|uncle|aunt|grandad|grandpa|granny|neighbou?r|friend|mate|buddy|
  boss|colleague|everyone|everybody|people|somebody|someone|books?|packet|seed packet|internet|label) (?:\w+ ){0,2}?(?:reckons|reckoned|bets|guesses|
  thinks|believes|says it can|said it can)
  (?<! (?:i|we|it|thermometer|gauge|probe|sensor|\$\d+) )(?:swears|swore|claims|claimed|insists|insisted)(?! (?:by|that|in) @)
  (?:people|books|everybody|everyone|internet|packet|label|seed packet) (?:says?|said|claims?)|they are (?:giving|saying|talking|showing)
  (?:guy|man|lad|fella|fellow|bloke|woman|lady|girl|folks?) (?:at|from|in|on|down) (?:\S+ ){1,4}?(?:says?|said|reckons|reckoned|thinks|claims|told)
  are forecasting|is forecasting|giving out|are warning|warning of|the record (?:\w+ ){0,2}(?:is|was|stands)|should be|should hit|should get|weather app
  radio|you (?:were|are|was) (?:\w+ )*#\d+
  (?:supposed to|expected|expecting|going to|will|might|may|could(?! not)) (?:\S+ )*?#\d+|#\d+ (?:is |was )?(?:expected|predicted)
  (?:when|whenever|once|if|unless|until|as soon as) (?:(?:it|the|my|temperature|&\w+|is|ever|that) )*(?:gets|hits|goes|drops|reaches|falls|dips|is|
  climbs|below|under|down|at|#\d+)
  ^ (?:(?:low|high|of|is|was|around|about|a) )*#\d+ (?:for )?tonight $|^ tonight (?:(?:low|high|of|is|around|about|a) )*#\d+ $
`;

/** "Like you said", "colder than you said": the number beside it is no forecast. */
const AS_YOU_SAID = everyWording`
  (?:like|as|just as|exactly as|than|what|where|that|way|how) (?:you|duskward|the app) (?:had |have |just )?(?:said|told me|told|asked|suggested|wanted|
  thought|predicted|advised|say|recommended|mentioned|showed me|taught me)
`;
/** What was seen after all that may come: "the dog will be fine and the low was 18". */
const BEFORE_SEEN = /^.* (?:and|but|so|anyway|well) (?=(?:(?!(?:will|might|may|could|going to|said|forecast|predicted|if) )[^#])*(?:was|were|got|hit|went|dropped|fell|read|reads|showed|dipped|bottomed) [^#]*#)/;
const BY_NAME = / (?:forecast|radio|app|tv|news|predicted|expected|they (?:say|said)|calling for|you said|you told) /;
/** Whether a number is foretold or hearsay; what is foretold ends with its sentence. */
export const isForetold = ({ form }: Pick<Message, 'form'>): boolean =>
  form.split(/ ; | \? /).some((sentence) => {
    const told = ` ${sentence.trim()} `.replace(AS_YOU_SAID, ' ').replace(BEFORE_SEEN, ' ').replace(/ [,:/\-<>](?= )/g, '');
    return FORETOLD.test(told) && (sentence.includes('#') || BY_NAME.test(` ${sentence} `));
  });
