import { singular } from './word-forms.js';

export type KnownPlace = 'inside' | 'outside' | 'soil' | 'cover';

const PLACE_WORDS: Readonly<Record<KnownPlace, string>> = {
  inside: 'inside|in here|in there|greenhouse|green house|hoophouse|hoop house|hoop|hoop tunnel|high tunnel|polytunnel|poly tunnel|tunnel|glasshouse|house|caterpillar tunnel|inside air|inner|interior|serre|plastic house|growing house',
  outside: 'outside|out there|out here|out side|yard|outside air|exterior|lawn',
  soil: 'soil|ground|dirt|earth',
  cover: 'underneath|under there|under it|under them',
};

/** Phrases for the places that are no item; covers, drums, stones and tubes are places by their item words. */
export const PLACE_BY_PHRASE: ReadonlyMap<string, KnownPlace> = new Map(
  (Object.entries(PLACE_WORDS) as [KnownPlace, string][]).flatMap(([place, phrases]) => phrases.split('|').map((phrase) => [phrase.split(' ').map(singular).join(' '), place] as const)),
);
