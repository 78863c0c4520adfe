import type { CadTopology } from '@coveline/model';
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/**
 * SHA-256, hex, over everything a shape holds. Equal shapes in equal order give equal hashes; nothing is rounded, so
 * results that are kept by triangle number may be kept under the hash.
 */
export function shapeHash(positions: Float64Array, triangles: Uint32Array, cad?: CadTopology): string {
  const hash = sha256.create();
  const counts = new Float64Array([positions.length, triangles.length, cad ? 1 : 0]);
  hash.update(bytesOf(counts));
  hash.update(bytesOf(positions));
  hash.update(bytesOf(triangles));
  if (cad) {
    hash.update(bytesOf(cad.faceOfTriangle));
    hash.update(new TextEncoder().encode(JSON.stringify(cad.faces)));
    for (const edge of cad.edges) {
      const { points, ...rest } = edge;
      hash.update(new TextEncoder().encode(JSON.stringify(rest)));
      hash.update(bytesOf(points));
    }
  }
  return bytesToHex(hash.digest());
}

/** Hash of bytes as they are, hex. */
export const bytesHash = (bytes: Uint8Array): string => bytesToHex(sha256(bytes));

const bytesOf = (a: Float64Array | Uint32Array) => new Uint8Array(a.buffer, a.byteOffset, a.byteLength);
