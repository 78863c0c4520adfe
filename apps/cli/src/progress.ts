/** Progress on standard error: one line that is rewritten on a terminal, a line a stage elsewhere. */

export interface Progress {
  readonly update: (stage: string, done: number) => void;
  readonly end: () => void;
}

export function progressOn(stream: NodeJS.WriteStream, quiet: boolean): Progress {
  if (quiet) return { update: () => {}, end: () => {} };
  let stage = '';
  let shown = false;
  return {
    update(now, done) {
      if (stream.isTTY) {
        stream.write(`\r\x1b[K${now} ${Math.round(done * 100)} %`);
        shown = true;
      } else if (now !== stage) {
        stream.write(`${now}\n`);
      }
      stage = now;
    },
    end() {
      if (shown) stream.write('\r\x1b[K');
    },
  };
}
