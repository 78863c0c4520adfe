import { gravity, liquidWater } from '../water/properties.ts';

/** Depth in m of a wide puddle of water whose rim meets the plate at the given angle (radian). */
export function puddleDepthAt(angle: number, temperature_degC: number): number {
  const { density, surfaceTension } = liquidWater(temperature_degC);
  return 2 * Math.sqrt(surfaceTension / (density * gravity)) * Math.sin(angle / 2);
}

export const radians = Math.PI / 180;
