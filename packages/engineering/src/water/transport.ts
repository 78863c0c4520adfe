/** Transport properties of water and steam by IAPWS releases. SI units. */

const critical = { temperature: 647.096, density: 322 };

const viscosityTerms: readonly (readonly [number, number, number])[] = [
  [0, 0, 0.520094],
  [1, 0, 0.0850895],
  [2, 0, -1.08374],
  [3, 0, -0.289555],
  [0, 1, 0.222531],
  [1, 1, 0.999115],
  [2, 1, 1.88797],
  [3, 1, 1.26613],
  [5, 1, 0.120573],
  [0, 2, -0.281378],
  [1, 2, -0.906851],
  [2, 2, -0.772479],
  [3, 2, -0.489837],
  [4, 2, -0.25704],
  [0, 3, 0.161913],
  [1, 3, 0.257399],
  [0, 4, -0.0325372],
  [3, 4, 0.0698452],
  [4, 5, 0.00872102],
  [3, 6, -0.00435673],
  [5, 6, -0.000593264],
];

/** Dynamic viscosity in Pa s at K and kg/m3: IAPWS R12-08, without the critical enhancement (mu2 = 1). */
export function viscosity(temperature: number, density: number): number {
  const t = temperature / critical.temperature;
  const r = density / critical.density;
  const dilute = (100 * Math.sqrt(t)) / (1.67752 + 2.20462 / t + 0.6366564 / t ** 2 - 0.241605 / t ** 3);
  let sum = 0;
  for (const [i, j, h] of viscosityTerms) sum += (1 / t - 1) ** i * h * (r - 1) ** j;
  return 1e-6 * dilute * Math.exp(r * sum);
}

const conductivityTerms: readonly (readonly number[])[] = [
  [1.60397357, -0.646013523, 0.111443906, 0.102997357, -0.0504123634, 0.00609859258],
  [2.33771842, -2.78843778, 1.53616167, -0.463045512, 0.0832827019, -0.00719201245],
  [2.19650529, -4.54580785, 3.55777244, -1.40944978, 0.275418278, -0.0205938816],
  [-1.21051378, 1.60812989, -0.621178141, 0.0716373224, 0, 0],
  [-2.720337, 4.57586331, -3.18369245, 1.1168348, -0.19268305, 0.012913842],
];

/** Thermal conductivity in W/(m K) at K and kg/m3: IAPWS R15-11, without the critical enhancement. */
export function conductivity(temperature: number, density: number): number {
  const t = temperature / critical.temperature;
  const r = density / critical.density;
  const dilute =
    Math.sqrt(t) /
    (2.443221e-3 + 1.323095e-2 / t + 6.770357e-3 / t ** 2 - 3.454586e-3 / t ** 3 + 4.096266e-4 / t ** 4);
  let sum = 0;
  conductivityTerms.forEach((terms, i) => {
    terms.forEach((n, j) => {
      sum += (1 / t - 1) ** i * n * (r - 1) ** j;
    });
  });
  return 1e-3 * dilute * Math.exp(r * sum);
}

/** Surface tension against its vapour in N/m: IAPWS R1-76(2014). */
export function surfaceTension(temperature: number): number {
  const tau = 1 - temperature / critical.temperature;
  return 0.2358 * tau ** 1.256 * (1 - 0.625 * tau);
}
