import type { Vec3 } from '@coveline/model';
import type { AirSpace } from '../liquid/air-space.ts';
import { type Sealed, sealedIn } from '../sealed.ts';

/**
 * Whether the air before a surface point is cut off from the air around every one of some points, mm: a jet comes
 * through air only. A vessel that is drawn closed has its spray ball in a hollow of its own.
 */
export function cutOffFrom(air: AirSpace, points: readonly Vec3[]): Sealed {
  const holds = ({ hollow }: { hollow: Sealed }) => points.some(([x, y, z]) => hollow(x, y, z, 0, 0, 0));
  const hollows = air.hollows.map((region) => ({
    region,
    hollow: sealedIn({ ...air, hollows: [region] }),
  }));
  const inside = hollows.filter(holds);
  const within = sealedIn({ ...air, hollows: inside.map(({ region }) => region) });
  const outside = points.some(([x, y, z]) => !inside.some(({ hollow }) => hollow(x, y, z, 0, 0, 0)));
  const elsewhere = sealedIn({
    ...air,
    hollows: hollows.filter((h) => !inside.includes(h)).map(({ region }) => region),
  });
  if (!outside) return (x, y, z, dx, dy, dz) => !within(x, y, z, dx, dy, dz);
  return elsewhere;
}
