import { CadError } from '../error.ts';
import { limits } from '../limits.ts';

interface GltfJson {
  readonly nodes?: readonly { readonly children?: readonly number[] }[];
  readonly buffers?: readonly { readonly uri?: string; readonly byteLength?: number }[];
  readonly accessors?: readonly { readonly count?: number }[];
  readonly extensionsRequired?: readonly string[];
}

/**
 * What has to be known before the file is given to a library: that it is all there, that its nodes form a tree, and
 * that it needs nothing outside itself. Throws CadError.
 */
export function checkGlb(bytes: Uint8Array, fileName: string): void {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20 || view.getUint32(8, true) > bytes.length) {
    throw new CadError(
      'truncated',
      `"${fileName}" has ${bytes.length} bytes, fewer than it announces; copy or export it again.`,
    );
  }
  const jsonLength = view.getUint32(12, true);
  if (view.getUint32(16, true) !== 0x4e4f534a || 20 + jsonLength > bytes.length) {
    throw new CadError('damaged', `"${fileName}" has no readable glTF description; export it again.`);
  }
  const json = parse(bytes.subarray(20, 20 + jsonLength), fileName);
  const required = json.extensionsRequired ?? [];
  if (required.length > 0) {
    throw new CadError(
      'unsupported',
      `"${fileName}" needs the glTF extension ${required.join(', ')}, which is not read; export it without compression.`,
    );
  }
  const outside = json.buffers?.find((buffer) => buffer.uri !== undefined && !buffer.uri.startsWith('data:'));
  if (outside) {
    throw new CadError(
      'unsupported',
      `"${fileName}" keeps its geometry in another file (${outside.uri?.slice(0, 60)}); export one GLB file.`,
    );
  }
  // Sparse accessors may announce more elements than the file has bytes.
  if (json.accessors?.some((accessor) => (accessor.count ?? 0) > limits.triangles * 3)) {
    throw new CadError(
      'tooLarge',
      `"${fileName}" announces more than ${limits.triangles / 1e6} million triangles; export it coarser.`,
    );
  }
  checkTree(json.nodes ?? [], fileName);
}

function parse(bytes: Uint8Array, fileName: string): GltfJson {
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as GltfJson;
  } catch {
    throw new CadError('damaged', `The glTF description in "${fileName}" is no valid JSON; export it again.`);
  }
}

/** glTF 2.0, 3.5.1: nodes form disjoint strict trees. A node with two parents would be walked for each of them. */
function checkTree(nodes: readonly { readonly children?: readonly number[] }[], fileName: string): void {
  const parents = new Int32Array(nodes.length).fill(-1);
  for (let i = 0; i < nodes.length; i++) {
    for (const child of nodes[i]?.children ?? []) {
      if (!(child >= 0 && child < nodes.length) || parents[child] >= 0) {
        throw new CadError(
          'damaged',
          `Node ${child} in "${fileName}" is missing or has two parents; export the file again.`,
        );
      }
      parents[child] = i;
    }
  }
  for (let i = 0; i < nodes.length; i++) {
    let depth = 0;
    for (let at = i; at >= 0; at = parents[at]) {
      if (++depth > limits.depth) {
        throw new CadError(
          'hostile',
          `The nodes in "${fileName}" contain themselves or are nested more than ${limits.depth} deep; export a flatter model.`,
        );
      }
    }
  }
}
