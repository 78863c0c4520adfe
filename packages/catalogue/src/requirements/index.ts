/** All requirements, in the order of the elements. */
import type { Requirement } from '../types.ts';
import { bearings } from './bearing.ts';
import { belts } from './belt.ts';
import { cables } from './cable.ts';
import { castors } from './castor.ts';
import { closing } from './closing.ts';
import { containers } from './container.ts';
import { controls } from './control.ts';
import { decontamination } from './decontamination.ts';
import { documents } from './documents.ts';
import { doors } from './door.ts';
import { drives } from './drive.ts';
import { panels } from './enclosure.ts';
import { fasteners } from './fastener.ts';
import { feet } from './feet.ts';
import { frame } from './frame.ts';
import { gaskets } from './gasket.ts';
import { generalMaterials } from './general-materials.ts';
import { generalShape } from './general-shape.ts';
import { guards } from './guard.ts';
import { hollow } from './hollow.ts';
import { hoods } from './hood.ts';
import { hoppers } from './hopper.ts';
import { hoses } from './hose.ts';
import { insulation } from './insulation.ts';
import { joints } from './joint.ts';
import { labels } from './label.ts';
import { nozzles } from './nozzle.ts';
import { pipes } from './pipe.ts';
import { pneumatics } from './pneumatic.ts';
import { pumps } from './pump.ts';
import { room } from './room.ts';
import { sensors } from './sensor.ts';
import { shafts } from './shaft.ts';
import { sprays } from './spray.ts';
import { tanks } from './tank.ts';
import { trays } from './tray.ts';
import { valves } from './valve.ts';
import { waste } from './waste.ts';
import { welds } from './weld.ts';
import { windows } from './window.ts';

export const requirements: readonly Requirement[] = [
  ...generalShape,
  ...generalMaterials,
  ...feet,
  ...castors,
  ...frame,
  ...hollow,
  ...fasteners,
  ...welds,
  ...joints,
  ...gaskets,
  ...doors,
  ...windows,
  ...guards,
  ...panels,
  ...controls,
  ...cables,
  ...hoses,
  ...pneumatics,
  ...drives,
  ...shafts,
  ...bearings,
  ...belts,
  ...hoppers,
  ...tanks,
  ...pipes,
  ...valves,
  ...pumps,
  ...sensors,
  ...nozzles,
  ...sprays,
  ...trays,
  ...insulation,
  ...labels,
  ...hoods,
  ...containers,
  ...decontamination,
  ...closing,
  ...waste,
  ...room,
  ...documents,
];

export const requirementById: ReadonlyMap<string, Requirement> = new Map(requirements.map((r) => [r.id, r]));
