import { liquidWater } from '../water/properties.ts';
import { frictionFactor } from './friction.ts';

export interface PipeState {
  readonly density: number;
  readonly viscosity: number;
  readonly reynolds: number;
  /** Darcy. */
  readonly friction: number;
  /** Pa */
  readonly wallShear: number;
  /** Pa/m */
  readonly gradient: number;
}

/** Water at degC and Pa in a round pipe of `bore` m at `speed` m/s with sand roughness in m. */
export function pipeState(
  bore: number,
  speed: number,
  roughness: number,
  temperature_degC: number,
  pressure: number,
): PipeState {
  const { density, viscosity } = liquidWater(temperature_degC, pressure);
  const reynolds = (density * speed * bore) / viscosity;
  const friction = frictionFactor(reynolds, roughness / bore);
  return {
    density,
    viscosity,
    reynolds,
    friction,
    wallShear: (friction * density * speed ** 2) / 8,
    gradient: (friction * density * speed ** 2) / (2 * bore),
  };
}

/** m2 */
export function areaOf(bore: number): number {
  return (Math.PI / 4) * bore ** 2;
}
