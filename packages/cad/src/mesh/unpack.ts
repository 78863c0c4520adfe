import { type UnzipFileInfo, unzipSync } from 'fflate';
import { CadError } from '../error.ts';
import { limits } from '../limits.ts';

/**
 * Members of a zip archive whose names pass, by name. Sizes are checked as the archive announces them, before anything
 * is unpacked; a member cannot unpack to more than it announces.
 * Throws CadError `hostile` for an archive that would grow beyond the limits, `damaged` for a broken one.
 */
export function unpack(
  bytes: Uint8Array,
  fileName: string,
  wanted: (name: string) => boolean,
): ReadonlyMap<string, Uint8Array> {
  let total = 0;
  const guard = (member: UnzipFileInfo): boolean => {
    if (!wanted(member.name)) return false;
    total += member.originalSize;
    if (
      total > limits.unpackedBytes ||
      member.originalSize > limits.unpackRatio * Math.max(member.size, 2048)
    ) {
      throw new CadError(
        'hostile',
        `"${fileName}" would unpack "${member.name.slice(0, 60)}" from ${member.size} to ${member.originalSize} bytes, more than any model needs; it is not read.`,
      );
    }
    return true;
  };
  try {
    return new Map(Object.entries(unzipSync(bytes, { filter: guard })));
  } catch (thrown) {
    if (thrown instanceof CadError) throw thrown;
    const why = thrown instanceof Error ? thrown.message : String(thrown);
    throw new CadError(
      'damaged',
      `"${fileName}" cannot be unpacked (${why}); the file is damaged or cut off, so copy or export it again.`,
    );
  }
}
