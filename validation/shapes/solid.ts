/** Boolean operations for test shapes, by the general-purpose kernel manifold-3d. Coordinates in single precision. */
import Module from 'manifold-3d';
import type { Mesh } from './mesh.ts';

const wasm = await Module();
wasm.setup();
const { Manifold } = wasm;
type Manifold = InstanceType<typeof Manifold>;

export function difference(mesh: Mesh, ...less: readonly Mesh[]): Mesh {
  return fromManifold(Manifold.difference([toManifold(mesh), ...less.map(toManifold)]));
}

export function union(...meshes: readonly Mesh[]): Mesh {
  return fromManifold(Manifold.union(meshes.map(toManifold)));
}

function toManifold({ positions, triangles }: Mesh): Manifold {
  const mesh = new wasm.Mesh({
    numProp: 3,
    vertProperties: Float32Array.from(positions),
    triVerts: triangles,
  });
  return new Manifold(mesh);
}

function fromManifold(solid: Manifold): Mesh {
  const { vertProperties, triVerts, numProp } = solid.getMesh();
  const count = vertProperties.length / numProp;
  const positions = new Float64Array(count * 3);
  for (let v = 0; v < count; v++) {
    for (let k = 0; k < 3; k++) positions[v * 3 + k] = vertProperties[v * numProp + k];
  }
  return { positions, triangles: Uint32Array.from(triVerts) };
}
