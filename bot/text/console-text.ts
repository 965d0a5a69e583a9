/** Words of the conversation by lines. */
export const CONSOLE_WORDS = {
  /** What the console says to itself, so that tonight comes first. */
  tonight: 'tonight',
  /** The same where no greenhouse is described yet. */
  begin: 'start',
  greeting: 'Ask me anything about tonight, or say "help". "bye" leaves.',
  farewell: 'Good night.',
  picture: (path: string): string => `(picture: ${path})`,
  document: (path: string): string => `(file: ${path})`,
} as const;
