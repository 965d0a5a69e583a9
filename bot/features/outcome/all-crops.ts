import type { Greenhouse } from '../../../engine/index.js';
import { meanings, type Meaning } from '../../language/intent.js';
import type { Heard } from '../../language/message.js';
import { understand } from '../../language/understand.js';

type Outcome = Extract<Meaning, { kind: 'outcome' }>;

/** "Everything", "they all", "all my plants". */
const ALL = /\b(?:everything|everybody|all (?:of )?(?:it|them|the (?:crops|plants)|my (?:crops|plants))|(?:the |my )?(?:crops|plants)|they all|they|all)\b/iu;

/** "Everything survived": how each crop of the house came through; none where the words do not say it of every one. */
export function allCropsMeant({ beds }: Greenhouse, heard: Heard): readonly Outcome[] {
  if (!ALL.test(heard.text)) return [];
  const crops = [...new Set(beds.flatMap(({ crops: grown }) => grown.map((crop) => (typeof crop === 'string' ? crop : crop.crop))))];
  const meant = crops.map((crop) => [`the ${crop}`, `the ${crop} is`].flatMap((instead) => meanings(understand({ ...heard, text: heard.text.replace(ALL, instead) })).filter((one) => one.kind === 'outcome'))[0]);
  return meant.every((one) => one !== undefined) ? meant : [];
}
