import type { CameraRig, Pose } from './rig.ts';

const duration_ms = 420;

/** Moves the camera from where it is to a pose, smoothly, or at once where motion is not wanted. */
export class Flight {
  private frame = 0;
  private readonly rig: CameraRig;
  /** Set by the caller, from the person's wish for reduced motion. */
  still = false;

  constructor(rig: CameraRig) {
    this.rig = rig;
  }

  get moving(): boolean {
    return this.frame !== 0;
  }

  to(goal: Pose): void {
    this.stop();
    if (this.still) {
      this.rig.pose = goal;
      return;
    }
    const from = this.rig.pose;
    const turn = shortest(goal.azimuth - from.azimuth);
    const start = performance.now();
    const step = (now: number) => {
      const t = Math.min(1, Math.max(0, (now - start) / duration_ms));
      const s = t * t * (3 - 2 * t);
      this.frame = t < 1 ? requestAnimationFrame(step) : 0;
      this.rig.pose =
        t === 1
          ? goal
          : {
              target: from.target.clone().lerp(goal.target, s),
              azimuth: from.azimuth + turn * s,
              elevation: from.elevation + (goal.elevation - from.elevation) * s,
              distance: from.distance * (goal.distance / from.distance) ** s,
            };
    };
    this.frame = requestAnimationFrame(step);
  }

  stop(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
  }
}

function shortest(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));
}
