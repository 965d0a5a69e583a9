/** How to take back what was just told. */
export const UNDO = 'Wrong? Say "undo".';

export const takenBack = (what: readonly string[]): string => `Taken back: ${what.join('; ')}. That no longer counts.`;

export const houseAsBefore = 'Taken back: the house is as it was before.';
export const houseChangedSince = 'The house has changed again since. Say what it is now, for example "4 drums".';
/** The note goes, and the description stays. */
export const houseStays = 'The house stays as I have it. If that is wrong, say what it is now.';
