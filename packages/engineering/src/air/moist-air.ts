/** Properties of air at about atmospheric pressure, as drying, cooling and settling need them. SI units. */
import { saturationPressure } from '../water/if97.ts';

/** Molar mass over gas constant: J/(kg K). Dry air and water vapour (ISO 2533; IAPWS). */
const gasConstant = { air: 287.05, vapour: 461.526 };

/** Dynamic viscosity of air, Pa s: Sutherland's law (F. M. White, Viscous Fluid Flow, table 1-2). */
export function airViscosity(temperature: number): number {
  return 1.716e-5 * (temperature / 273) ** 1.5 * ((273 + 111) / (temperature + 111));
}

/** Thermal conductivity of air, W/(m K): Sutherland's law (F. M. White, Viscous Fluid Flow, table 1-3). */
export function airConductivity(temperature: number): number {
  return 0.0241 * (temperature / 273) ** 1.5 * ((273 + 194) / (temperature + 194));
}

/** Heat capacity of dry air, J/(kg K), constant within 0.2 % from -20 to 100 degC. */
export const airHeatCapacity = 1006;

/** Diffusivity of water vapour in air, m2/s: W. J. Massman, Atmos. Environ. 32 (1998) 1111, table 5. */
export function vapourDiffusivity(temperature: number, pressure: number): number {
  return 2.178e-5 * (101325 / pressure) * (temperature / 273.15) ** 1.81;
}

export interface MoistAir {
  /** kg/m3 */
  readonly density: number;
  /** Vapour, kg/m3. */
  readonly vapourDensity: number;
  /** Partial pressure of the vapour, Pa. */
  readonly vapourPressure: number;
  /** kg vapour per kg dry air. */
  readonly humidityRatio: number;
}

/** Moist air as ideal gases at K, relative humidity 0 to 1 and Pa. */
export function moistAir(temperature: number, relativeHumidity: number, pressure: number): MoistAir {
  const vapourPressure = relativeHumidity * saturationPressure(temperature);
  const vapourDensity = vapourPressure / (gasConstant.vapour * temperature);
  const airDensity = (pressure - vapourPressure) / (gasConstant.air * temperature);
  return {
    density: airDensity + vapourDensity,
    vapourDensity,
    vapourPressure,
    humidityRatio: vapourDensity / airDensity,
  };
}
