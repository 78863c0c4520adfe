import type { Solid, Union } from './solid.ts';

/**
 * The union by the general-purpose kernel manifold-3d (WebAssembly). It is loaded when this is first called, and only
 * then. `locate` tells where the kernel's wasm file lies, where the surroundings need that (a browser's bundle).
 */
export async function loadManifoldUnion(locate?: () => string): Promise<Union> {
  const { default: load } = await import('manifold-3d');
  const kernel = await load(locate ? { locateFile: locate } : undefined);
  kernel.setup();
  const { Manifold, Mesh } = kernel;

  return (solids) => {
    // Single precision inside the kernel's meshes: keep the numbers small.
    const origin = middle(solids);
    const bodies: InstanceType<typeof Manifold>[] = [];
    try {
      for (const { positions, triangles } of solids) {
        const vertProperties = Float32Array.from(positions, (c, k) => c - origin[k % 3]);
        const mesh = new Mesh({ numProp: 3, vertProperties, triVerts: triangles });
        mesh.merge();
        bodies.push(new Manifold(mesh));
      }
      const union = Manifold.union(bodies);
      bodies.push(union);
      const { vertProperties, triVerts, numProp } = union.getMesh();
      const count = vertProperties.length / numProp;
      const positions = new Float64Array(count * 3);
      for (let v = 0; v < count; v++) {
        for (let k = 0; k < 3; k++) positions[v * 3 + k] = vertProperties[v * numProp + k] + origin[k];
      }
      return { positions, triangles: Uint32Array.from(triVerts) };
    } finally {
      for (const body of bodies) body.delete();
    }
  };
}

function middle(solids: readonly Solid[]): [number, number, number] {
  const low = [Infinity, Infinity, Infinity];
  const high = [-Infinity, -Infinity, -Infinity];
  for (const { positions } of solids) {
    for (let i = 0; i < positions.length; i++) {
      if (positions[i] < low[i % 3]) low[i % 3] = positions[i];
      if (positions[i] > high[i % 3]) high[i % 3] = positions[i];
    }
  }
  return [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2];
}
