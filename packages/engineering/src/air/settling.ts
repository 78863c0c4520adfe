import { gravity } from '../water/properties.ts';
import { airViscosity, moistAir } from './moist-air.ts';

export interface Settling {
  /** m/s by Stokes with slip. */
  readonly stokes: number;
  /** m/s with the drag of Schiller and Naumann. */
  readonly speed: number;
  readonly slip: number;
  readonly reynolds: number;
}

/** Mean free path of air, m: 0.0665 um at 20 degC and 101.325 kPa, scaled after K. Willeke (1976). */
function meanFreePath(temperature: number, pressure: number): number {
  return (
    0.0665e-6 *
    (temperature / 293.15) *
    (101325 / pressure) *
    ((1 + 110.4 / 293.15) / (1 + 110.4 / temperature))
  );
}

/** Settling of a sphere of `diameter` m and `density` kg/m3 in air at K and Pa. */
export function settling(diameter: number, density: number, temperature: number, pressure: number): Settling {
  const viscosity = airViscosity(temperature);
  const air = moistAir(temperature, 0, pressure).density;
  const knudsen = (2 * meanFreePath(temperature, pressure)) / diameter;
  const slip = 1 + knudsen * (1.257 + 0.4 * Math.exp(-1.1 / knudsen));
  const stokes = (density * diameter ** 2 * gravity * slip) / (18 * viscosity);
  let speed = stokes;
  let reynolds = 0;
  // Fixed point of v = v_Stokes / (1 + 0.15 Re^0.687); contracts for Re up to about 100.
  for (let i = 0; i < 100; i++) {
    reynolds = (air * speed * diameter) / viscosity;
    const next = stokes / (1 + 0.15 * reynolds ** 0.687);
    if (Math.abs(next - speed) < 1e-14 * speed) break;
    speed = (speed + next) / 2;
  }
  return { stokes, speed, slip, reynolds };
}
