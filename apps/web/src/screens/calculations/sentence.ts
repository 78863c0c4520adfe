/** A capital at the beginning: labels of calculations are written for the middle of a sentence. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** Refusals come without capital and full stop, since other sentences quote them. */
export const sentence = (text: string): string => (/[.!?]$/.test(text) ? capital(text) : `${capital(text)}.`);
