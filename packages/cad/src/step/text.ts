/**
 * Text of a Part 21 string: doubled apostrophes, \X\hh (ISO 8859-1), \X2\…\X0\ (UTF-16), \X4\…\X0\ (UTF-32) and
 * \S\c (upper half of an ISO 8859 page; page 1 unless \Pc\ says otherwise, which is read as page 1).
 * Bytes above 127 are no clean Part 21, yet common: read as UTF-8 where they are valid, else as ISO 8859-1.
 * Source: ISO 10303-21, clause 6.3.3 (string and its encoding).
 */
export function decodeText(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  let plain = true;
  for (let i = start; i < end; i++) {
    if (bytes[i] > 126 || bytes[i] < 32) plain = false;
    text += String.fromCharCode(bytes[i]);
  }
  if (!plain) text = readUtf8(bytes.subarray(start, end)) ?? text;
  // A string may be wrapped over lines; the line ends are not part of it.
  if (!plain) text = text.replace(/[\r\n]/g, '');
  text = text.replaceAll("''", "'");
  if (!text.includes('\\')) return text;
  return text
    .replace(/\\X2\\((?:[0-9A-Fa-f]{4})*)\\X0\\/g, (_, hex: string) => decodeUnits(hex, 4))
    .replace(/\\X4\\((?:[0-9A-Fa-f]{8})*)\\X0\\/g, (_, hex: string) => decodeUnits(hex, 8))
    .replace(/\\X\\([0-9A-Fa-f]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\S\\(.)/g, (_, c: string) => String.fromCharCode(c.charCodeAt(0) + 128))
    .replace(/\\P[A-I]\\/g, '')
    .replaceAll('\\\\', '\\');
}

function decodeUnits(hex: string, digits: number): string {
  let text = '';
  for (let i = 0; i < hex.length; i += digits) {
    const code = Number.parseInt(hex.slice(i, i + digits), 16);
    text +=
      digits === 4 ? String.fromCharCode(code) : code <= 0x10ffff ? String.fromCodePoint(code) : '\ufffd';
  }
  return text;
}

function readUtf8(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    // Not UTF-8: the caller falls back to ISO 8859-1.
    return undefined;
  }
}
