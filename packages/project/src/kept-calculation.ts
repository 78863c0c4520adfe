/** An engineering calculation that belongs to a machine: what was typed is kept, the number is worked out anew. */
import * as z from 'zod';

/** Longer texts, such as a logger file of a whole shift, stay in files of their own. */
export const longestInput = 100_000;

export const keptCalculation = z.object({
  id: z.string().min(1).max(100),
  calculation: z.string().min(1).max(200).describe('name in the registry of calculations: "pipe-flow"'),
  title: z.string().min(1).max(200),
  note: z.string().max(4000).default(''),
  /** By the short name of the input, as it was typed: a wrong value stays as it is. */
  inputs: z.record(z.string(), z.string().max(longestInput)).default({}),
  locale: z
    .string()
    .refine(isLanguageTag, { error: 'a language tag such as "en" or "de"' })
    .default('en')
    .describe('how numbers are written in the inputs'),
  gave: z
    .object({ value: z.number(), unit: z.string() })
    .nullable()
    .optional()
    .describe('the result when it was kept, null when there was no number'),
  about: z
    .object({ revision: z.string(), finding: z.string().optional(), place: z.string().optional() })
    .optional()
    .describe('the finding or the place of a survey that it belongs to'),
});

export type KeptCalculation = z.infer<typeof keptCalculation>;

function isLanguageTag(text: string): boolean {
  try {
    return Intl.getCanonicalLocales(text).length === 1;
  } catch {
    // What the standard does not take as a tag.
    return false;
  }
}
