/** What the view draws for places: all together for the walk, and those of one finding when it is looked at. */
import { readDrawings } from '@coveline/compute';
import { packFloats } from '@coveline/model';
import type { Store, SurveyRow } from '@coveline/store';
import type { Reviewed } from './reviews.ts';

const bytesOf = (floats: number) => 4 * floats;
/** A drawing that is larger is sent only when its finding is looked at. */
const mostBytes = 16_384;
/** What is sent for one finding at most; the walls of what no longer fits are still painted by their field. */
const mostForFinding = 2_000_000;
/** Patches of the model's own surface: the field of their measure paints the very same, so only the way there is sent. */
const isPainted = (place: string) => /^(hand-unreached|tool-unreached|shadow)-/.test(place);

/** Of all places that findings name, those that are light. */
export async function drawingsNamed(
  store: Store,
  { review, survey }: Reviewed,
): Promise<Uint8Array<ArrayBuffer>> {
  const named = new Set(review.findings.flatMap((finding) => finding.places));
  const found = await readDrawings(
    store.blobs.path(survey.drawings),
    (id, floats) => named.has(id) && !isPainted(id) && bytesOf(floats) <= mostBytes,
  );
  return packFloats(Object.fromEntries(found));
}

/** Of these places, as far as `mostForFinding` goes. */
export async function drawingsOf(
  store: Store,
  survey: SurveyRow,
  places: readonly string[],
): Promise<Uint8Array<ArrayBuffer>> {
  const asked = new Set(places);
  let sum = 0;
  const found = await readDrawings(store.blobs.path(survey.drawings), (id, floats) => {
    if (!asked.has(id)) return false;
    if (isPainted(id)) return true;
    if (sum + bytesOf(floats) > mostForFinding) return false;
    sum += bytesOf(floats);
    return true;
  });
  return packFloats(
    Object.fromEntries(
      [...found].map(([id, drawing]) => [id, isPainted(id) ? { lines: drawing.lines ?? [] } : drawing]),
    ),
  );
}
