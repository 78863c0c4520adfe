/** Integrals of the lethal rate 10^((T - T_ref)/z) over time. Times in any unit; the result is in the same unit. */

export function lethalRate(temperature: number, reference: number, z: number): number {
  // exp is several times faster than a power and as exact here.
  return Math.exp((Math.LN10 * (temperature - reference)) / z);
}

/**
 * Exact integral of the lethal rate over a step in which the temperature rises in a straight line by `rise`, from the
 * rates at its two ends: dt (L2 - L1) / ln(L2/L1), with a series where the rise is small.
 */
export function exactStep(duration: number, rateA: number, rateB: number, rise: number, z: number): number {
  const s = (Math.LN10 * rise) / z;
  return Math.abs(s) < 1e-3
    ? duration * rateA * (1 + (s / 2) * (1 + (s / 3) * (1 + s / 4)))
    : (duration * (rateB - rateA)) / s;
}

export interface Lethality {
  readonly exact: number;
  readonly trapezoid: number;
}

export function lethality(
  times: readonly number[],
  temperatures: readonly number[],
  reference: number,
  z: number,
): Lethality {
  let exact = 0;
  let trapezoid = 0;
  let rate = lethalRate(temperatures[0], reference, z);
  for (let i = 1; i < times.length; i++) {
    const duration = times[i] - times[i - 1];
    const next = lethalRate(temperatures[i], reference, z);
    exact += exactStep(duration, rate, next, temperatures[i] - temperatures[i - 1], z);
    trapezoid += (duration * (rate + next)) / 2;
    rate = next;
  }
  return { exact, trapezoid };
}
