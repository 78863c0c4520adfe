/** Named views: the side from which the camera looks, radians. The front looks from -Y, the right from +X. */
export const views = {
  front: { azimuth: -Math.PI / 2, elevation: 0 },
  back: { azimuth: Math.PI / 2, elevation: 0 },
  left: { azimuth: Math.PI, elevation: 0 },
  right: { azimuth: 0, elevation: 0 },
  top: { azimuth: -Math.PI / 2, elevation: Math.PI / 2 },
  bottom: { azimuth: -Math.PI / 2, elevation: -Math.PI / 2 },
  iso: { azimuth: -Math.PI / 3, elevation: Math.asin(Math.tan(Math.PI / 6)) },
} as const;

export type ViewName = keyof typeof views;
