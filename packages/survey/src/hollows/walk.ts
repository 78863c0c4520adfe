/** A walk of the largest ball along the inside of a member, to the end of it. */
import type { Vec3 } from '@coveline/model';
import { type Ball, widened } from './ball.ts';
import { freeShare, type Looks } from './looks.ts';
import { along, minus, unit } from './vector.ts';

export interface Walk {
  /** What was found at its end. `continued`: another tube leads on. */
  readonly end: 'open' | 'closed' | 'continued';
  /** Where the ball is smallest on the way, and the last place inside. */
  readonly neck: Ball;
  readonly last: Vec3;
  readonly direction: Vec3;
  readonly balls: readonly Ball[];
}

/** Of the radius of the ball: how far it is moved before it is widened again. */
const stride = 0.4;
/** Looks to the side farther than this many first radii have left the member; this share of them: it is outside. */
const farOut = 3;
const mostFree = 0.5;
/** A ball that is smaller than this share of the first one gets no farther. */
const stuck = 0.05;
/** The direction follows the way of the ball by this share at a step, so that a bent tube is walked too. */
const steering = 0.3;
const mostSteps = 4000;

/** `isBeyond`: whether a place lies beyond the member as a whole. */
export function walk(looks: Looks, start: Ball, towards: Vec3, isBeyond: (at: Vec3) => boolean): Walk {
  const most = 2 * start.radius;
  let ball = start;
  let neck = start;
  let direction = towards;
  const balls: Ball[] = [start];
  const told = (end: Walk['end']): Walk => ({ end, neck, last: ball.at, direction, balls });
  for (let k = 0; k < mostSteps; k++) {
    const moved: Ball = {
      at: along(ball.at, direction, stride * ball.radius),
      radius: (1 - stride) * ball.radius,
    };
    const next = widened(looks, moved, direction, most);
    if (next.radius < stuck * start.radius) return told('closed');
    const way = minus(next.at, ball.at);
    if (Math.hypot(...way) > 0)
      direction = unit(along(along([0, 0, 0], direction, 1 - steering), unit(way), steering));
    if (freeShare(looks, next.at, direction, farOut * start.radius) >= mostFree) {
      if (next.radius < neck.radius) neck = next;
      return told('open');
    }
    ball = next;
    balls.push(ball);
    if (ball.radius < neck.radius) neck = ball;
    if (isBeyond(ball.at)) return told('continued');
  }
  return told('continued');
}
