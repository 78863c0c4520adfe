/** A multipart/form-data request body, its fields half before and half behind the file. */
export function multipartBody(
  file: { readonly name: string; readonly content: string },
  fields: Readonly<Record<string, string>>,
): { payload: string; headers: Record<string, string> } {
  const boundary = 'a-line-that-is-not-in-the-file';
  const texts = Object.entries(fields).map(
    ([name, value]) => `--${boundary}\r\nContent-Disposition: form-data; name="${name}"\r\n\r\n${value}\r\n`,
  );
  const half = Math.ceil(texts.length / 2);
  const model = [
    `--${boundary}`,
    `Content-Disposition: form-data; name="file"; filename="${file.name}"`,
    'Content-Type: application/octet-stream',
    '',
    `${file.content}\r\n`,
  ].join('\r\n');
  return {
    payload: [...texts.slice(0, half), model, ...texts.slice(half), `--${boundary}--\r\n`].join(''),
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
  };
}

/** The same with a file of any bytes and no field. */
export function multipartBytes(
  name: string,
  content: Buffer,
): { payload: Buffer; headers: Record<string, string> } {
  const boundary = 'a-line-that-is-not-in-the-bytes';
  const head = `--${boundary}\r\nContent-Disposition: form-data; name="file"; filename="${name}"\r\nContent-Type: application/octet-stream\r\n\r\n`;
  return {
    payload: Buffer.concat([Buffer.from(head), content, Buffer.from(`\r\n--${boundary}--\r\n`)]),
    headers: { 'content-type': `multipart/form-data; boundary=${boundary}` },
  };
}
