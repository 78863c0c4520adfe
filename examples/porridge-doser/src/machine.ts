import type { Parameters } from './parameters.ts';
import { type Assembly, assembly, here } from './tree.ts';
import { cleaning } from './units/cleaning.ts';
import { controls } from './units/controls.ts';
import { dosing } from './units/dosing.ts';
import { frame } from './units/frame.ts';
import { hood } from './units/hood.ts';
import { infeed, jarBody } from './units/infeed.ts';
import { lidding } from './units/lidding.ts';

/** The whole machine, +Z up, standing on z = 0. Call `startKernel` first. */
export function machine(p: Parameters): Assembly {
  const jar = jarBody();
  return assembly('porridge doser (invented)', [
    here(frame(p)),
    here(infeed(p, jar)),
    here(dosing(p)),
    here(lidding(p, jar)),
    here(hood(p)),
    here(controls(p)),
    here(cleaning(p)),
  ]);
}
