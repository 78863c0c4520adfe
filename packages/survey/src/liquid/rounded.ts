/** Three digits, written without an exponent: for numbers in sentences. */
export function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
