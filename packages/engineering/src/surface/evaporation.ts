/**
 * Evaporation of water from a flat wet patch into room air: forced, natural and diffusive exchange, joined to heat
 * by the Chilton-Colburn analogy. SI units, K.
 */
import {
  airConductivity,
  airHeatCapacity,
  airViscosity,
  moistAir,
  vapourDiffusivity,
} from '../air/moist-air.ts';
import { liquid, saturationPressure, steam } from '../water/if97.ts';
import { gravity } from '../water/properties.ts';

export interface Room {
  readonly temperature: number;
  /** 0 to 1 */
  readonly relativeHumidity: number;
  readonly pressure: number;
  readonly airSpeed: number;
}

export interface Evaporation {
  /** kg/(m2 s), 0 where the surface does not evaporate. */
  readonly flux: number;
  readonly surfaceTemperature: number;
  /** Mass transfer coefficient, m/s. */
  readonly massCoefficient: number;
  /** Heat transfer coefficient by convection, W/(m2 K). */
  readonly heatCoefficient: number;
}

const stefanBoltzmann = 5.670374e-8;
/** Emissivity of a water film (common practice: 0.95 to 0.96). */
const emissivity = 0.95;

/** Evaporation enthalpy at K, J/kg. */
export function evaporationEnthalpy(temperature: number): number {
  const pressure = saturationPressure(temperature);
  return steam(temperature, pressure).enthalpy - liquid(temperature, pressure).enthalpy;
}

/** Mass transfer coefficient of a patch `length` long, m/s, with the surface at `surface` K. */
function massCoefficientOf(room: Room, surface: number, length: number): number {
  const film = (room.temperature + surface) / 2;
  const far = moistAir(room.temperature, room.relativeHumidity, room.pressure);
  const near = moistAir(surface, 1, room.pressure);
  const density = (far.density + near.density) / 2;
  const nu = airViscosity(film) / density;
  const diffusivity = vapourDiffusivity(film, room.pressure);
  const schmidt = nu / diffusivity;
  const reynolds = (room.airSpeed * length) / nu;
  // Flat plate, laminar, and turbulent from the edge on above Re 5e5 (Incropera, chapter 7).
  const forced =
    (reynolds < 5e5 ? 0.664 * Math.sqrt(reynolds) : 0.037 * reynolds ** 0.8 - 871) * Math.cbrt(schmidt);
  // Horizontal plate facing up; length scale area/perimeter of a square (Lloyd and Moran 1974). Air at the wet
  // surface that is lighter than the room rises, heavier air lies on it.
  const scale = length / 4;
  const rayleigh =
    (gravity * (Math.abs(far.density - near.density) / density) * scale ** 3 * schmidt) / nu ** 2;
  const rises = near.density < far.density;
  const natural = !rises
    ? 0.27 * rayleigh ** 0.25
    : rayleigh < 1e7
      ? 0.54 * rayleigh ** 0.25
      : 0.15 * Math.cbrt(rayleigh);
  // Still air: diffusion from a disc of the same area, flux 4 D / (pi a) (J. C. Maxwell; J. Crank).
  const radius = length / Math.sqrt(Math.PI);
  const still = (4 * diffusivity) / (Math.PI * radius);
  return Math.max((forced * diffusivity) / length, (natural * diffusivity) / scale, still);
}

/** Chilton-Colburn: h = h_m rho cp Le^(2/3). */
function heatCoefficientOf(massCoefficient: number, room: Room, surface: number): number {
  const film = (room.temperature + surface) / 2;
  const { density } = moistAir(film, room.relativeHumidity, room.pressure);
  const lewis = airConductivity(film) / (density * airHeatCapacity) / vapourDiffusivity(film, room.pressure);
  return massCoefficient * density * airHeatCapacity * lewis ** (2 / 3);
}

function at(room: Room, surface: number, length: number): Evaporation {
  const massCoefficient = massCoefficientOf(room, surface, length);
  const far = moistAir(room.temperature, room.relativeHumidity, room.pressure).vapourDensity;
  const near = moistAir(surface, 1, room.pressure).vapourDensity;
  return {
    flux: Math.max(0, massCoefficient * (near - far)),
    surfaceTemperature: surface,
    massCoefficient,
    heatCoefficient: heatCoefficientOf(massCoefficient, room, surface),
  };
}

/** The surface keeps a given temperature, as on a heavy metal part. */
export function evaporateAt(room: Room, surface: number, length: number): Evaporation {
  return at(room, surface, length);
}

/**
 * The surface finds its own temperature: evaporation takes what convection and, with `radiation`, the room's walls
 * bring; nothing comes from below. The slowest case. Bisection between 0 degC and the room temperature.
 */
export function evaporateInsulated(room: Room, length: number, radiation: boolean): Evaporation {
  const surplus = (surface: number): number => {
    const state = at(room, surface, length);
    const radiant = radiation ? emissivity * stefanBoltzmann * (room.temperature ** 4 - surface ** 4) : 0;
    return (
      state.heatCoefficient * (room.temperature - surface) +
      radiant -
      state.flux * evaporationEnthalpy(surface)
    );
  };
  let low = 273.16;
  let high = room.temperature;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (surplus(middle) > 0) low = middle;
    else high = middle;
  }
  return at(room, (low + high) / 2, length);
}
