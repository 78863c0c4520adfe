export type ProfileReading =
  | { readonly kind: 'profile' /** um */; readonly heights: Float64Array; readonly spacing_mm: number }
  | { readonly kind: 'error'; readonly message: string };

/**
 * Read a profile: one number a line (z in um, `spacing_mm` given) or two (x in mm, z in um, equally spaced). A header
 * line of words is skipped. A decimal comma is read where cells are not parted by commas.
 */
export function readProfile(text: string, spacing_mm: number): ProfileReading {
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  const start = lines.length > 0 && !/^\s*[-+.\d]/.test(lines[0]) ? 1 : 0;
  const body = lines.slice(start);
  if (body.length < 50)
    return { kind: 'error', message: `there are ${body.length} points, expected at least 50` };
  // "1.5,2.3" is two cells, "1,5;2,3" too, "1,5" alone is one number.
  const commaParts =
    body[0].includes(',') &&
    (body[0].includes('.') || body[0].split(',').length === 2) &&
    !/[;\t]|\d\s+[-\d]/.test(body[0]);
  const twoColumns = /[;\t]|\d\s+[-+.\d]/.test(body[0].trim()) || (commaParts && spacing_mm === 0);
  const heights = new Float64Array(body.length);
  const places = new Float64Array(body.length);
  for (let i = 0; i < body.length; i++) {
    const cells =
      twoColumns && !commaParts
        ? body[i].trim().split(/[;\t ]+/)
        : commaParts && twoColumns
          ? body[i].split(',')
          : [body[i].trim()];
    const numbers = cells.map((cell) => Number(commaParts && twoColumns ? cell : cell.replace(',', '.')));
    if (numbers.length < (twoColumns ? 2 : 1) || numbers.some((v) => !Number.isFinite(v)))
      return {
        kind: 'error',
        message: `line ${i + start + 1}: "${body[i].trim().slice(0, 40)}" is not ${twoColumns ? 'two numbers' : 'a number'}`,
      };
    places[i] = numbers[0];
    heights[i] = numbers[twoColumns ? 1 : 0];
  }
  if (!twoColumns)
    return spacing_mm > 0
      ? { kind: 'profile', heights, spacing_mm }
      : { kind: 'error', message: 'there is one column only: give the spacing of the points' };
  const step = (places[body.length - 1] - places[0]) / (body.length - 1);
  if (!(step > 0)) return { kind: 'error', message: 'x does not rise' };
  for (let i = 1; i < body.length; i++)
    if (Math.abs(places[i] - places[i - 1] - step) > 0.02 * step)
      return { kind: 'error', message: `line ${i + start + 1}: the points are not equally spaced` };
  return { kind: 'profile', heights, spacing_mm: step };
}
