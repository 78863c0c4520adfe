import { and, eq, sql } from 'drizzle-orm';
import type { Tx } from './database.ts';
import { review, survey } from './schema.ts';

export type SurveyRow = typeof survey.$inferSelect;
export type ReviewRow = typeof review.$inferSelect;

/** Replaces the survey of the same revision and orientation. */
export async function storeSurvey(tx: Tx, row: Omit<SurveyRow, 'at'>): Promise<void> {
  await tx
    .insert(survey)
    .values(row)
    .onConflictDoUpdate({
      target: [survey.machine, survey.revision, survey.up],
      set: { ...row, at: sql`now()` },
    });
}

/** The survey of a revision in the orientation that its project says; null while there is none. */
export async function findSurvey(
  tx: Tx,
  machine: string,
  revision: string,
  up: string,
): Promise<SurveyRow | null> {
  const [row] = await tx
    .select()
    .from(survey)
    .where(and(eq(survey.machine, machine), eq(survey.revision, revision), eq(survey.up, up)));
  return row ?? null;
}

/** All surveys of a machine, or of all machines. */
export async function listSurveys(tx: Tx, machine?: string): Promise<SurveyRow[]> {
  const all = tx.select().from(survey);
  return await (machine === undefined ? all : all.where(eq(survey.machine, machine)));
}

/** Notes what a review found, in place of the last one of its revision. */
export async function storeReview(tx: Tx, row: ReviewRow): Promise<void> {
  await tx
    .insert(review)
    .values(row)
    .onConflictDoUpdate({ target: [review.machine, review.revision], set: row });
}

/** All reviews of a machine, or of all machines. */
export async function listReviews(tx: Tx, machine?: string): Promise<ReviewRow[]> {
  const all = tx.select().from(review);
  return await (machine === undefined ? all : all.where(eq(review.machine, machine)));
}
