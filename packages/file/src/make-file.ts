import { buildContent } from './document/build.ts';
import { compilePdf } from './document/compile.ts';
import type { FileRequest, MadeFile } from './request.ts';

/**
 * The technical file of one revision as a tagged PDF/UA-1. Same request, same bytes. Throws with one sentence on an
 * unknown revision, on a date that is none, and when the document cannot be made accessible.
 */
export async function makeFile(request: FileRequest): Promise<MadeFile> {
  const { content, pictures, warnings } = buildContent(request);
  const made = compilePdf(content, pictures);
  return { pdf: made.pdf, warnings: [...warnings, ...made.warnings] };
}
