/** "milk, oats," becomes ["milk", "oats"]. */
export const wordList = (text: string): string[] =>
  text
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');
