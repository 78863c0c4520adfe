/**
 * Darcy friction factors of round pipes; `relative` is roughness over bore. Correlations are named by author and
 * year. All are four times the Fanning factor.
 */

/** Above this the flow is taken as turbulent, below 2300 as laminar (common practice). */
export const laminarLimit = 2300;
export const turbulentLimit = 4000;

/** C. F. Colebrook, J. Inst. Civ. Eng. 11 (1939) 133, solved by Newton's method to machine precision. */
export function colebrook1939(reynolds: number, relative: number): number {
  // x = 1/sqrt(f) solves x + 2 log10(relative/3.7 + 2.51 x/reynolds) = 0.
  let x = 1 / Math.sqrt(haaland1983(reynolds, relative));
  for (let i = 0; i < 20; i++) {
    const argument = relative / 3.7 + (2.51 * x) / reynolds;
    const step = (x + 2 * Math.log10(argument)) / (1 + (2 * 2.51) / (Math.LN10 * reynolds * argument));
    x -= step;
    if (Math.abs(step) < 1e-14 * x) break;
  }
  return 1 / (x * x);
}

/** S. E. Haaland, J. Fluids Eng. 105 (1983) 89. */
export function haaland1983(reynolds: number, relative: number): number {
  return (-1.8 * Math.log10((relative / 3.7) ** 1.11 + 6.9 / reynolds)) ** -2;
}

/** P. K. Swamee, A. K. Jain, J. Hydraul. Div. ASCE 102 (1976) 657. */
export function swameeJain1976(reynolds: number, relative: number): number {
  return 0.25 / Math.log10(relative / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/** T. K. Serghides, Chem. Eng. 91 (1984) 63. */
export function serghides1984(reynolds: number, relative: number): number {
  const a = -2 * Math.log10(relative / 3.7 + 12 / reynolds);
  const b = -2 * Math.log10(relative / 3.7 + (2.51 * a) / reynolds);
  const c = -2 * Math.log10(relative / 3.7 + (2.51 * b) / reynolds);
  return (a - (b - a) ** 2 / (c - 2 * b + a)) ** -2;
}

/** S. W. Churchill, Chem. Eng. 84 (1977) 91: all regimes in one formula. */
export function churchill1977(reynolds: number, relative: number): number {
  const a = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relative))) ** 16;
  const b = (37530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}

/**
 * Laminar 64/Re up to Re 2300, Colebrook from 4000 on, and a straight line between the two ends in the transition,
 * where no formula holds.
 */
export function frictionFactor(reynolds: number, relative: number): number {
  if (reynolds <= laminarLimit) return 64 / reynolds;
  if (reynolds >= turbulentLimit) return colebrook1939(reynolds, relative);
  const share = (reynolds - laminarLimit) / (turbulentLimit - laminarLimit);
  return (1 - share) * (64 / laminarLimit) + share * colebrook1939(turbulentLimit, relative);
}

export function regimeWarning(reynolds: number): readonly string[] {
  if (reynolds >= turbulentLimit && reynolds < 10000)
    return [
      'Reynolds number below 10 000: turbulence is not fully developed, cleaning is weaker than the speed suggests.',
    ];
  if (reynolds > laminarLimit && reynolds < turbulentLimit)
    return [
      'The flow is between laminar and turbulent (Re 2300 to 4000): friction and shear are interpolated and uncertain.',
    ];
  return reynolds <= laminarLimit ? ['The flow is laminar: it does not clean by turbulence.'] : [];
}
