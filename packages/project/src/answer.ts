/** What somebody found who stood beside the machine. No answer means: not looked at. */
import * as z from 'zod';

export const mark = z.object({
  /** Along width and height of the picture, from its top left corner. */
  x: z.number().min(0).max(1),
  y: z.number().min(0).max(1),
  words: z.string().max(500).default(''),
});

export const photograph = z.object({
  /** Of the stored file. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  name: z.string().min(1).max(200),
  marks: z.array(mark).max(50).default([]),
});

export const answer = z.object({
  state: z
    .enum(['asItShould', 'notAsItShould', 'notHere'])
    .describe('as a good answer looks like, not so, or the machine has no such thing'),
  words: z.string().max(4000).default(''),
  reading: z.string().max(100).default('').describe('a measured value as it was typed: "12 min"'),
  by: z.string().min(1).max(200),
  on: z.iso.date(),
  photographs: z.array(photograph).max(20).default([]),
});

export type Mark = z.infer<typeof mark>;
export type Photograph = z.infer<typeof photograph>;
export type Answer = z.infer<typeof answer>;
