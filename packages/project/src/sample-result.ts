/** A result of a sample, as the laboratory or the person at the machine told it. */
import * as z from 'zod';

export const sampleResult = z.object({
  id: z.string().min(1).max(100),
  /** Id of the sampling point. */
  point: z.string().min(1).max(300),
  of: z.enum([
    'aerobic',
    'enterobacteriaceae',
    'listeria',
    'atp',
    'protein',
    'allergen',
    'visual',
    'rinseCount',
    'settle',
  ]),
  limit: z.string().min(1).max(100).describe('id of a limit of the catalogue'),
  on: z.iso.date(),
  /** In the unit of the limit; null: below the detection limit. */
  value: z.number().min(0).nullable(),
  detectionLimit: z.number().min(0).nullable().default(null),
  by: z.string().max(200).default(''),
  note: z.string().max(1000).default(''),
  /** What was done about it. */
  action: z.string().max(1000).default(''),
});

export type SampleResult = z.infer<typeof sampleResult>;
