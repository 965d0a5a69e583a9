/** What stands on the buttons under an advisory. */
export const BUTTON_WORDS = { did: 'Done', not: 'Not tonight', why: 'Why' } as const;
