/** How sentences name parts. */

/**
 * What names carry along beside words: steel numbers, grades, plastics, standards, diameters and sizes. Threads (M8)
 * and nominal sizes (DN25) stay, as they tell parts apart.
 */
const designation = new RegExp(
  [
    String.raw`\d\.\d{4}`,
    String.raw`aisi ?\d{3}l?`,
    String.raw`(?:en ?aw|en|iso|din)[ -]?\d{3,5}(?:-\d+)?`,
    'a[24](?:-[78]0)?',
    'pa ?66?|pe-(?:uhmw|hd)|petg?|pmma|pom|ptfe|peek|epdm|fkm|vmq|nbr|pvc|pur?|tpu|pc',
    'rhs|shs|chs',
    String.raw`ø ?[\d.,]+(?:x[\d.,]+)*`,
    String.raw`[\d.,]+(?:x[\d.,]+)*(?: ?(?:mm|cm|ml|l|kw))?`,
  ]
    .map((pattern) => String.raw`(?<![\p{L}\d_])(?:${pattern})(?![\p{L}\d_])`)
    .join('|'),
  'giu',
);

/** The name without designations, as long as a word is left. */
export function bareName(name: string): string {
  const bare = name.replace(designation, ' ').replace(/\s+/g, ' ').trim();
  return /\p{L}{3}/u.test(bare) ? bare : name;
}

/** "the jar guide plate" for a name of plain lower-case words, `"PRT_0012"` in quotes otherwise. */
export function theName(name: string): string {
  const bare = bareName(name);
  return /^[\p{Ll}][\p{L}\d -]*$/u.test(bare) ? `the ${bare}` : `"${bare}"`;
}

/** Starts a sentence with the name. */
export function TheName(name: string): string {
  const text = theName(name);
  return text.startsWith('the ') ? `T${text.slice(1)}` : text;
}

/** "the foot", or "the foot (4 alike)" for parts of one shape. */
export function alike(text: string, count: number): string {
  return count > 1 ? `${text} (${count} alike)` : text;
}

/** "a, b and 3 others". */
export function some(names: readonly string[], most = 3): string {
  if (names.length <= 1) return names.join('');
  if (names.length <= most) return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
  const rest = names.length - most;
  return `${names.slice(0, most).join(', ')} and ${rest} other${rest === 1 ? '' : 's'}`;
}
