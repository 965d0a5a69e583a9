/**
 * Characters of a plain text message, 3GPP TS 23.038 (formerly GSM 03.38): section 6.2.1 default alphabet and section 6.2.1.1
 * extension table. Written out from the published tables, row by row.
 */
const DEFAULT_ALPHABET = [
  '@£$¥èéùìòÇ\nØø\rÅå',
  'Δ_ΦΓΛΩΠΨΣΘΞÆæßÉ',
  ' !"#¤%&\'()*+,-./',
  '0123456789:;<=>?',
  '¡ABCDEFGHIJKLMNO',
  'PQRSTUVWXYZÄÖÑÜ§',
  '¿abcdefghijklmno',
  'pqrstuvwxyzäöñüà',
].join('');
const EXTENSION = '\f^{}\\[~]|€';

export const GSM_CHARACTERS: ReadonlySet<string> = new Set(DEFAULT_ALPHABET + EXTENSION);
/** 128 places of the default alphabet, less the escape to the extension table. */
export const DEFAULT_ALPHABET_SIZE = new Set(DEFAULT_ALPHABET).size;

/** Characters that would force a message out of the plain alphabet. */
export const outsideGsm = (text: string): readonly string[] => [...new Set(text)].filter((character) => !GSM_CHARACTERS.has(character));
