/** A name that nobody else gives. `crypto.randomUUID` is missing where the page comes over plain HTTP from afar. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(8));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
