const SAID_AS: Readonly<Record<string, string>> = {
  "it's": 'it is', its: 'it is', "what's": 'what is', whats: 'what is', "how's": 'how is', hows: 'how is', "that's": 'that is', thats: 'that is',
  "there's": 'there is', theres: 'there is', "where's": 'where is', "when's": 'when is', whens: 'when is', "who's": 'who is', "here's": 'here is',
  "let's": 'let us', lets: 'let us',
  "i'm": 'i am', im: 'i am', "i've": 'i have', ive: 'i have', "i'll": 'i will', "i'd": 'i would', "we've": 'we have', weve: 'we have',
  "we're": 'we are', "we'll": 'we will', "we'd": 'we would',
  "you're": 'you are', youre: 'you are', "you've": 'you have', "they're": 'they are', theyre: 'they are', "they've": 'they have',
  "they'll": 'they will', "it'll": 'it will', "that'll": 'that will', itll: 'it will',
  "won't": 'will not', wont: 'will not', "can't": 'can not', cant: 'can not', cannot: 'can not', "shan't": 'shall not', "ain't": 'is not', aint: 'is not',
  didnt: 'did not', dont: 'do not', doesnt: 'does not', isnt: 'is not', arent: 'are not', wasnt: 'was not', werent: 'were not', havent: 'have not',
  hasnt: 'has not', hadnt: 'had not',
  couldnt: 'could not', shouldnt: 'should not', wouldnt: 'would not', gonna: 'going to', gotta: 'got to', wanna: 'want to', hafta: 'have to',
  woulda: 'would have', shoulda: 'should have',
  tonite: 'tonight', '2nite': 'tonight', '2night': 'tonight', tnight: 'tonight', tmrw: 'tomorrow', tmr: 'tomorrow', tomorow: 'tomorrow',
  tommorow: 'tomorrow', tommorrow: 'tomorrow', tomoz: 'tomorrow', '2moro': 'tomorrow', '2morrow': 'tomorrow', tmro: 'tomorrow',
  suns: 'sun is', outta: 'out of', undr: 'under', n: 'and', gimme: 'give me', lemme: 'let me', "how've": 'how have', "what've": 'what have',
  "what'll": 'what will', "how'd": 'how did', "what're": 'what are', ya: 'you', yall: 'you', wouldya: 'would you', wouldja: 'would you',
  dya: 'do you', nuthin: 'nothing', nothin: 'nothing', gimmie: 'give me', tunnal: 'tunnel', frezing: 'freezing', freezin: 'freezing',
  mornings: 'morning', survivin: 'surviving', leccy: 'electricity', lecky: 'electricity', fleeced: 'covered', fleecing: 'covering', tmin: 'minimum',
  tmax: 'maximum', grnhse: 'greenhouse', grnhouse: 'greenhouse', ghouse: 'greenhouse', powers: 'power is', txt: 'text', txts: 'texts',
  txting: 'texting', wat: 'what', wut: 'what', hw: 'how', shud: 'should', cud: 'could', wud: 'would', coverd: 'covered', coverred: 'covered',
  closd: 'closed', dnt: 'do not', tmw: 'tomorrow', tomoro: 'tomorrow', tmrrw: 'tomorrow', morn: 'morning', deg: 'degrees', bout: 'about',
  whent: 'went', plese: 'please', ty: 'thanks', rn: 'right now', tho: 'though', atm: 'at the moment', srry: 'sorry', sory: 'sorry', sry: 'sorry',
  freze: 'freeze', freez: 'freeze', opn: 'open', opend: 'opened', alrite: 'ok', alryt: 'ok', rite: 'right', powr: 'power', pwr: 'power', sez: 'says',
  ded: 'dead', mah: 'my', slided: 'slid', tha: 'the', da: 'the', dat: 'that', dis: 'this', iz: 'is', wuz: 'was', wus: 'was', frm: 'from',
  gunna: 'going to', werk: 'work', wrk: 'work', wrks: 'works', werks: 'works', stil: 'still', stoped: 'stopped', brok: 'broke', brokn: 'broken',
  wich: 'which', becuz: 'because', cuz: 'because', coz: 'because', lite: 'light', lites: 'lights', hevy: 'heavy', survivd: 'survived',
  lotta: 'lot of', kinda: 'kind of', dunno: 'do not know', lemmie: 'let me', yu: 'you', thay: 'they', wether: 'weather', wheather: 'weather',
  wil: 'will', cvrd: 'covered', tis: 'it is', "'tis": 'it is', lowst: 'lowest', hghst: 'highest', ovrnite: 'overnight', ovrnight: 'overnight',
  overnite: 'overnight', ther: 'there', burried: 'buried', parafin: 'paraffin', parrafin: 'paraffin', kerosine: 'kerosene', proprane: 'propane',
  til: 'until', "'til": 'until', shd: 'should', degr: 'degrees', shady: 'shade', cvr: 'cover', cvrs: 'covers', cvring: 'covering', em: 'them',
  teh: 'the', waht: 'what', wht: 'what', shoud: 'should', shoudl: 'should', shold: 'should', thru: 'through', u: 'you', ur: 'your',
  r: 'are', pls: 'please', plz: 'please', thx: 'thanks', shld: 'should', cld: 'could', wld: 'would', wk: 'week', b4: 'before', abt: 'about',
  min: 'minimum', mins: 'minimum', max: 'maximum', mx: 'maximum', mn: 'minimum', lo: 'low', gh: 'greenhouse',
  temps: 'temperature', temp: 'temperature', temperatures: 'temperature', thermo: 'thermometer', outdoors: 'outside', indoors: 'inside',
  outdoor: 'outside', indoor: 'inside', ok: 'ok', okay: 'ok', okey: 'ok', k: 'ok', alright: 'ok', yest: 'yesterday', nite: 'night', lows: 'low',
  highs: 'high', mornin: 'morning',
};

const NOT_IS = new Set(['night', 'tonight', 'today', 'tomorrow', 'yesterday', 'week', 'morning', 'winter', 'year', 'season', 'month', 'evening', "lamb", 'miner', 'one']);

/** Whether a word is written so on purpose. */
export const isShortForm = (word: string): boolean => Object.hasOwn(SAID_AS, word);

/** The plain words that a written word stands for: "didn't" is two, "2nite" is one, "kale's" is two and "night's" one. */
export function plainWords(word: string): readonly string[] {
  const said = SAID_AS[word];
  if (said !== undefined) return said.split(' ');
  if (word.endsWith("'ll")) return [word.slice(0, -3), 'will'];
  if (word.endsWith("'ve")) return [word.slice(0, -3), 'have'];
  if (word.endsWith("n't")) return [word.slice(0, -3), 'not'];
  if (word.endsWith("'s")) {
    const stem = word.slice(0, -2);
    return NOT_IS.has(stem) ? [stem] : [...(SAID_AS[stem]?.split(' ') ?? [stem]), 'is'];
  }
  return [word.replaceAll("'", '')];
}

/** One form for the singular and plural of a name, so that lists of names need one of them only. */
export function singular(word: string): string {
  if (word.length <= 3 || word.endsWith('ss') || word.endsWith('us')) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(?:o|sh|ch|x|ss)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
}
