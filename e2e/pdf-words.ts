import { inflateSync } from 'node:zlib';

/** What a PDF says outside of its pages, such as the titles of its bookmarks: its streams unpacked, as Latin-1. */
export function pdfWords(pdf: Buffer): string {
  const text = pdf.toString('latin1');
  const unpacked = [text];
  for (const found of text.matchAll(/\/FlateDecode[\s\S]*?stream\r?\n/g)) {
    const start = found.index + found[0].length;
    const dictionary = text.slice(text.lastIndexOf('obj', start), start);
    if (/\/Subtype ?\/Image/.test(dictionary)) continue;
    const end = text.indexOf('endstream', start);
    // 2 is Z_SYNC_FLUSH: the end of the line before "endstream" may or may not belong to the stream.
    unpacked.push(inflateSync(pdf.subarray(start, end), { finishFlush: 2 }).toString('latin1'));
  }
  return unpacked.join('\n');
}
