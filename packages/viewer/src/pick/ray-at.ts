import { type Camera, Ray, Vector3 } from 'three';

/** The line of sight through a point of the picture, px from its upper left corner. */
export function rayAt(
  camera: Camera,
  { width, height }: { readonly width: number; readonly height: number },
  x: number,
  y: number,
): Ray {
  const right = (x / width) * 2 - 1;
  const up = 1 - (y / height) * 2;
  const near = new Vector3(right, up, -1).unproject(camera);
  const far = new Vector3(right, up, 1).unproject(camera);
  return new Ray(near, far.sub(near).normalize());
}
