import { type Camera, Matrix4, OrthographicCamera, PerspectiveCamera, Quaternion, Vector3 } from 'three';

export type Projection = 'perspective' | 'parallel';

/** Where the camera is: it looks at `target` from `distance`, from the side that azimuth and elevation name. */
export interface Pose {
  readonly target: Vector3;
  /** Radians about +Z; 0 looks from +X, -90° from -Y, which is the front. */
  readonly azimuth: number;
  /** Radians above the horizontal. */
  readonly elevation: number;
  readonly distance: number;
}

const fieldOfView_deg = 30;
const halfTangent = Math.tan((fieldOfView_deg / 2) * (Math.PI / 180));
const steepest = Math.PI / 2;

/** A turntable camera about +Z, in perspective or parallel. Knows nothing of input or animation. */
export class CameraRig {
  private current: Pose = {
    target: new Vector3(),
    azimuth: -Math.PI / 3,
    elevation: Math.PI / 7,
    distance: 1000,
  };
  private readonly perspective = new PerspectiveCamera(fieldOfView_deg);
  private readonly parallel = new OrthographicCamera();
  private projectionKind: Projection = 'perspective';
  private aspect = 1;
  private reach = { center: new Vector3(), radius: 1000 };
  private readonly onChange: () => void;

  constructor(onChange: () => void) {
    this.onChange = onChange;
    for (const camera of [this.perspective, this.parallel]) camera.matrixAutoUpdate = false;
  }

  get camera(): PerspectiveCamera | OrthographicCamera {
    return this.projectionKind === 'perspective' ? this.perspective : this.parallel;
  }

  get pose(): Pose {
    return this.current;
  }

  set pose(next: Pose) {
    const elevation = Math.min(steepest, Math.max(-steepest, next.elevation));
    const distance = Math.min(this.reach.radius * 40, Math.max(this.reach.radius * 1e-4, next.distance));
    this.current = { ...next, elevation, distance };
    this.apply();
  }

  get projection(): Projection {
    return this.projectionKind;
  }

  set projection(kind: Projection) {
    this.projectionKind = kind;
    this.apply();
  }

  /** Height in mm of what the picture shows at the target. */
  get span_mm(): number {
    return 2 * halfTangent * this.current.distance;
  }

  setAspect(aspect: number): void {
    this.aspect = aspect;
    this.apply();
  }

  /** Sphere that must not be cut off by the near or far plane. */
  setReach(center: Vector3, radius: number): void {
    this.reach = { center: center.clone(), radius: Math.max(radius, 1) };
    this.apply();
  }

  /** Distance from which a sphere of this radius fills the picture. */
  distanceFor(radius: number): number {
    return (radius * 1.04) / Math.sin(Math.atan(halfTangent * Math.min(1, this.aspect)));
  }

  orbit(pivot: Vector3, azimuth: number, elevation: number): void {
    const before = orientation(this.current);
    const next = {
      ...this.current,
      azimuth: this.current.azimuth + azimuth,
      elevation: Math.min(steepest, Math.max(-steepest, this.current.elevation + elevation)),
    };
    const turn = orientation(next).multiply(before.invert());
    this.pose = { ...next, target: this.current.target.clone().sub(pivot).applyQuaternion(turn).add(pivot) };
  }

  /** Moves closer (factor below 1) or away, so that `pivot` stays where it is in the picture. */
  zoom(pivot: Vector3, factor: number): void {
    const distance = this.current.distance * factor;
    if (distance < this.reach.radius * 1e-4 || distance > this.reach.radius * 40) return;
    const target = this.current.target.clone().sub(pivot).multiplyScalar(factor).add(pivot);
    this.pose = { ...this.current, target, distance };
  }

  /** Moves sideways by parts of the picture's height, as seen at the depth of `pivot`. */
  pan(right: number, up: number, pivot: Vector3): void {
    const { x, y, z } = axes(this.current);
    const depth = pivot.clone().sub(this.eye()).dot(z) * -1;
    const height =
      this.projectionKind === 'perspective' && depth > 0 ? 2 * halfTangent * depth : this.span_mm;
    const target = this.current.target
      .clone()
      .addScaledVector(x, -right * height)
      .addScaledVector(y, -up * height);
    this.pose = { ...this.current, target };
  }

  eye(): Vector3 {
    return this.current.target.clone().addScaledVector(axes(this.current).z, this.current.distance);
  }

  private apply(): void {
    const { x, y, z } = axes(this.current);
    const eye = this.eye();
    const depth = eye.clone().sub(this.reach.center).dot(z);
    const near = depth - this.reach.radius * 1.05;
    const far = depth + this.reach.radius * 1.05;
    for (const camera of [this.perspective, this.parallel] as Camera[]) {
      camera.matrix.makeBasis(x, y, z).setPosition(eye);
      camera.updateMatrixWorld(true);
    }
    this.perspective.aspect = this.aspect;
    this.perspective.near = Math.max(near, this.current.distance * 0.01, far * 1e-4);
    this.perspective.far = Math.max(far, this.perspective.near * 2);
    this.perspective.updateProjectionMatrix();
    const half = this.span_mm / 2;
    Object.assign(this.parallel, {
      top: half,
      bottom: -half,
      left: -half * this.aspect,
      right: half * this.aspect,
      near,
      far: Math.max(far, near + 1),
    });
    this.parallel.updateProjectionMatrix();
    this.onChange();
  }
}

/** Right, up and backward of the picture. */
export function axes({ azimuth, elevation }: Pick<Pose, 'azimuth' | 'elevation'>) {
  const x = new Vector3(-Math.sin(azimuth), Math.cos(azimuth), 0);
  const z = new Vector3(
    Math.cos(elevation) * Math.cos(azimuth),
    Math.cos(elevation) * Math.sin(azimuth),
    Math.sin(elevation),
  );
  return { x, y: z.clone().cross(x), z };
}

function orientation(pose: Pose): Quaternion {
  const { x, y, z } = axes(pose);
  return new Quaternion().setFromRotationMatrix(new Matrix4().makeBasis(x, y, z));
}
