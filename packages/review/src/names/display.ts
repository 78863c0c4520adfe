/** How sentences name parts. */

/** Designations of materials and sizes that a name carries along: "1.4301", "AISI 304", "Ø40", "DN25", "M8x30". */
const designation = /\b(\d\.\d{4}|aisi ?\d{3}l?|en ?aw-?\d{4}|Ø ?\d+\S*)(?=\s|$)|Ø ?\d+\S*/gi;

/** The name without material designations, as long as something is left. */
export function bareName(name: string): string {
  const bare = name
    .replace(designation, '')
    .replace(/[_\s]+/g, ' ')
    .trim();
  return bare.length >= 3 ? bare : name;
}

/** "the jar guide plate" for a name of plain words, `"PRT-0012"` in quotes otherwise. */
export function theName(name: string): string {
  const bare = bareName(name);
  return /^[a-z][a-z -]*( [A-Z]+\d*)?$/.test(bare) ? `the ${bare}` : `"${bare}"`;
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
