/**
 * Gaussian profile filter of ISO 16610-21: weighting function s(x) = exp(-pi (x/(a L))^2)/(a L) with
 * a = sqrt(ln 2/pi), so that the transmission at the cut-off wavelength L is 50 %.
 */
const alpha = Math.sqrt(Math.LN2 / Math.PI);

/**
 * Mean line of equally spaced heights. `spacing` and `cutoff` in the same unit. The kernel reaches one cut-off to each
 * side (its weight beyond is below 2e-7) and is normalised at the ends of the profile, where the mean line is less
 * certain: cut one half of the cut-off from each end before evaluating.
 */
export function gaussianMeanLine(heights: Float64Array, spacing: number, cutoff: number): Float64Array {
  const reach = Math.max(1, Math.ceil(cutoff / spacing));
  const weights = new Float64Array(reach + 1);
  for (let k = 0; k <= reach; k++) weights[k] = Math.exp(-Math.PI * ((k * spacing) / (alpha * cutoff)) ** 2);
  const line = new Float64Array(heights.length);
  for (let i = 0; i < heights.length; i++) {
    const low = Math.max(0, i - reach);
    const high = Math.min(heights.length - 1, i + reach);
    let sum = 0;
    let total = 0;
    for (let j = low; j <= high; j++) {
      const weight = weights[Math.abs(i - j)];
      sum += weight * heights[j];
      total += weight;
    }
    line[i] = sum / total;
  }
  return line;
}
