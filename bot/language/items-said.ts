import { ITEMS, type Item } from './intent.js';

export const isItem = (word: string): word is Item => (ITEMS as readonly string[]).includes(word);

/** The items named in a stretch of a form, each once, in order. */
export function itemsSaid(form: string): readonly Item[] {
  const items = [...form.replace(/@layer (?:of )?@cover/g, '@cover').replace(/ (?:by|along|near|beside|against|on|at) (?:the |my |our )?(?:back |north |south )?@wall /g, ' ').replace(/ (?:in front of|next to) (?:the |my |our )?@\w+(?= )/g, ' ').matchAll(/@(\w+)/g)].map(([, item]) => item ?? '').filter(isItem);
  const one = items.filter((item, at) => items.indexOf(item) === at);
  // A layer is of film, a drum is full of water: the wider word beside it adds nothing.
  return one.includes('layer') ? one.filter((item) => item !== 'film') : one;
}
