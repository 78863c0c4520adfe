/** Typst does the typesetting: tagged PDF/UA-1, which refuses missing alternative texts and missing glyphs. */
import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { FileContent } from './content.ts';
import { fontFiles } from './font.ts';
import { template } from './template.ts';

/** A folder that need not exist: all files are handed over in memory. */
const root = '/file';

/** Throws with the typesetter's own words when it refuses the document. */
export function compilePdf(
  content: FileContent,
  pictures: ReadonlyMap<string, Uint8Array>,
): { pdf: Uint8Array; warnings: string[] } {
  const compiler = NodeCompiler.create({
    fontArgs: [{ fontBlobs: fontFiles() }],
    workspace: root,
  });
  compiler.addSource(`${root}/main.typ`, template);
  compiler.mapShadow(`${root}/data.json`, Buffer.from(JSON.stringify(content)));
  for (const [name, bytes] of pictures) compiler.mapShadow(`${root}/${name}`, Buffer.from(bytes));
  const compiled = compiler.compile({ mainFilePath: `${root}/main.typ` });
  const document = compiled.result;
  if (!document) throw new Error(`The document could not be typeset: ${messages(compiled.takeError())}`);
  const warnings = compiled.takeWarnings();
  try {
    const pdf = compiler.pdf(document, { pdfStandard: 'ua-1' });
    return { pdf: new Uint8Array(pdf), warnings: warnings ? [messages(warnings)] : [] };
  } catch (error) {
    const words = /message: "((?:[^"\\]|\\.)*)"/.exec((error as Error).message);
    throw new Error(`The document could not be written as an accessible PDF: ${words?.[1] ?? String(error)}`);
  } finally {
    compiler.evictCache(0);
  }
}

function messages(error: { shortDiagnostics: unknown[] } | null): string {
  const found = error?.shortDiagnostics ?? [];
  return found
    .map((d) => (typeof d === 'object' && d !== null && 'message' in d ? String(d.message) : String(d)))
    .join('; ');
}
