import type { Clause } from './clause.js';
import type { ThermometerFact } from './house-fact.js';

const SPOT = /(?: (?:at|in|on|by|near|beside|to|toward|under|over|above|behind|along|next))+(?: (?:to|the|my|our|a|of))* ((?:north|south|east|west|middle|center|centre|left|right|front|back|far|near|end|ridge|peak|corner|door|@bed|@wall|@side|@anywall|@vent|window|post|string|shelf|table|bench|hoop|@hoops|top|%\d+)(?: (?:of the |of )?(?:north|south|east|west|middle|end|wall|side|@bed|@wall|@side|@anywall|door|corner|post|@house|@hoops))*) /;

/** Words before "thermometer" that say what kind it is, and not what it is called. */
const KIND = 'a|an|the|my|our|one|another|other|second|third|first|new|old|cheap|good|digital|wireless|remote|minimum|maximum|min|max|and|of|is|have|got|added|add|moved|put|hung|hang|with|no|this|that|plain|simple|glass|bulb|alcohol|bluetooth|wifi|smart|garden|outdoor|indoor|air|single|two|three|each|every|also|there|has|use|using|bought|buy|analog|analogue|dial|tiny|little|small|big|spare|same|temperature';
const CALLED = / @thermometer (?:is )?(?:called|named) (?:the )?([a-z]+(?: (?!@)(?:end|wall|corner|side|house))?) /;
const NAMED = new RegExp(` (?!(?:${KIND}) )([a-z]+|@bed) @thermometer `);

/** What the grower calls it: "the shed thermometer", "a thermometer called shed". */
function nameIn(clause: Clause): string | null {
  const symbols = (clause.take(CALLED) ?? clause.take(NAMED))?.[1]?.split(' ');
  return symbols === undefined ? null : symbols.map((symbol) => clause.pieces.find((piece) => piece.symbol === symbol)!.written.toLowerCase()).join(' ');
}

/** Where a thermometer hangs, how high, in sun or shade. */
export function thermometerFact(clause: Clause): ThermometerFact {
  const name = nameIn(clause);
  const height = clause.quantity((clause.take(/ (#L\d+)(?: (?:high|up|tall|off|above|from))?(?: (?:the )?(?:@soil|floor))? /) ?? clause.take(/ (#N\d+) (?:high|up|off|above)(?: (?:the )?(?:@soil|floor))? /) ?? clause.take(/ (?:height|high|up)(?: of| is)? (#[LN]\d+) /))?.[1]);
  const shade = clause.takes(/ (?:@shade|(?:no|not in|without|never)(?: \S+){0,2} @sun) /);
  const sun = !shade && clause.takes(/ @sun /);
  const where = clause.takes(/ (?:under|beneath|below)(?: \S+)? (?:@cover|@lowtunnel|cover|covers) /)
    ? 'cover'
    : clause.takes(/ @outside /)
      ? 'outside'
      : clause.takes(/ (?:in|into|under)(?: the)? @soil | @soil (?:probe|@thermometer) /)
        ? 'soil'
        : clause.takes(/ (?:inside|@house|@hoops) /)
          ? 'inside'
          : null;
  const spot = clause.take(SPOT);
  const pieces = spot === null ? [] : clause.pieces.filter(({ symbol }) => spot[1]!.split(' ').includes(symbol));
  clause.takeAll(/ @thermometer /);
  clause.takeAll(/ #N\d+ /);
  return {
    about: 'thermometer',
    ...(name === null ? {} : { name }),
    ...(where === null ? {} : { where }),
    ...(spot === null ? {} : { spot: pieces.map(({ written }) => written.toLowerCase()).join(' ') }),
    ...(height === null ? {} : { height }),
    ...(shade || sun ? { sun } : {}),
  };
}
