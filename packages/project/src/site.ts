/**
 * What stands around a machine and happens in it, as people set it. The rest is proposed from the model anew each time
 * and not kept. Coordinates in mm in the frame that is surveyed (+Z up).
 */
import * as z from 'zod';

const coordinate = z.number().min(-1e6).max(1e6);
const point = z.tuple([coordinate, coordinate, coordinate]);
const direction = point.refine((v) => Math.hypot(...v) > 1e-9, { error: 'a direction that is not zero' });
const parts = z.array(z.string().min(1)).max(1000).default([]);
const length = z.number().positive().max(1e6);

export const siteItem = z
  .discriminatedUnion('what', [
    z.object({ what: z.literal('floor'), height_mm: coordinate }),
    z.object({ what: z.literal('wall'), at_mm: point, into: direction }),
    z.object({ what: z.literal('access'), outward: direction }),
    z.object({ what: z.literal('door'), parts, hinge: z.object({ at_mm: point, axis: direction }) }),
    z.object({
      what: z.literal('mouth'),
      parts,
      at_mm: point,
      outward: direction,
      radius_mm: length,
      time_s: z.number().min(0).max(1e6).optional().describe('on the way from infeed to lid'),
    }),
    z.object({
      what: z.literal('filter'),
      parts,
      at_mm: point,
      flow: direction,
      across_mm: direction.describe('half of one side of the rectangle'),
      along_mm: direction.describe('half of the other side'),
      velocity_mPerS: z.number().positive().max(10).optional(),
    }),
    z.object({
      what: z.literal('nozzle'),
      parts,
      at_mm: point,
      direction,
      cone_deg: z.number().positive().max(360),
      range_mm: length,
    }),
    z.object({ what: z.literal('drain'), at_mm: point, diameter_mm: length }),
    z.object({ what: z.literal('main'), parts: z.array(z.string().min(1)).min(1).max(1000) }),
  ])
  .describe('one thing of the site');

export const siteChange = z.discriminatedUnion('do', [
  z.object({ do: z.literal('accept') }).describe('the proposal holds'),
  z.object({ do: z.literal('remove') }).describe('the proposal does not hold'),
  z.object({ do: z.literal('set'), item: siteItem }).describe('in place of the proposal, or added'),
]);

export type SiteItem = z.infer<typeof siteItem>;
export type SiteChange = z.infer<typeof siteChange>;
