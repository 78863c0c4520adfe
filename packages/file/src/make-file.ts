import { buildContent } from './document/build.ts';
import { compilePdf } from './document/compile.ts';
import type { FileControl, FileRequest, MadeFile } from './request.ts';

/**
 * The technical file of one revision as a tagged PDF/UA-1. Same request, same bytes. Throws with one sentence on an
 * unknown revision, on a date that is none, when the document cannot be made accessible, and when it is stopped.
 */
export async function makeFile(request: FileRequest, control: FileControl = {}): Promise<MadeFile> {
  const { content, pictures, warnings } = await buildContent(request, control);
  control.onProgress?.('Typesetting', 0.95);
  const made = compilePdf(content, pictures);
  return { pdf: made.pdf, warnings: [...warnings, ...made.warnings] };
}
