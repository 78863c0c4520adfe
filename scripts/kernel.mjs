/**
 * Compiles the kernels (packages/survey/kernel, AssemblyScript) to WebAssembly and leaves each as a module of base64
 * among the sources, so that Node, browsers and bundlers load it like any other. Does nothing while they are up to date.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const common = ['--importMemory', '--runtime', 'stub', '-O3', '--noAssert', '--noExportMemory'];
/** Rays share their memory among threads; columns are the work of one. */
const kernels = [
  {
    name: 'Ray kernel',
    sources: 'packages/survey/kernel',
    target: 'packages/survey/src/tree/kernel.generated.ts',
    options: [
      ...['--enable', 'simd,threads', '--sharedMemory', '--initialMemory', '1', '--maximumMemory', '65536'],
      ...common,
    ],
  },
  {
    name: 'Column kernel',
    sources: 'packages/survey/kernel/columns',
    target: 'packages/survey/src/liquid/kernel.generated.ts',
    options: ['--initialMemory', '1', ...common],
  },
];

/** Brings the generated modules up to date. Throws with the compiler's own words when the sources are wrong. */
export async function buildKernels() {
  for (const kernel of kernels) await build(kernel);
}

async function build({ name, sources, target: path, options }) {
  const folder = join(root, sources);
  const target = join(root, path);
  const files = readdirSync(folder)
    .filter((file) => file.endsWith('.ts'))
    .sort()
    .map((file) => [file, readFileSync(join(folder, file), 'utf8')]);
  const manifest = createRequire(import.meta.url).resolve('assemblyscript/package.json');
  const { version } = JSON.parse(readFileSync(manifest, 'utf8'));
  const stamp = createHash('sha256')
    .update(JSON.stringify([version, options, files]))
    .digest('hex');
  if (existsSync(target) && readFileSync(target, 'utf8').includes(stamp)) return;

  const { default: asc } = await import('assemblyscript/asc');
  const texts = new Map(files);
  let wasm;
  const { error, stderr } = await asc.main(['index.ts', ...options, '--outFile', 'kernel.wasm'], {
    readFile: (file) => texts.get(file) ?? null,
    writeFile: (_file, contents) => {
      wasm = contents;
    },
    listFiles: () => [],
  });
  if (error) throw new Error(`${name}: the sources do not compile.\n${stderr}`, { cause: error });
  const text = [
    `/** Made by scripts/kernel.mjs from ${sources}. ${stamp} */`,
    `export const kernelBase64 = '${Buffer.from(wasm).toString('base64')}';`,
    '',
  ].join('\n');
  // Two builds at once must not leave half a file.
  const half = `${target}.tmp.${process.pid}`;
  writeFileSync(half, text);
  renameSync(half, target);
  console.log(`${name}: ${path}, ${wasm.length} bytes`);
}

/** The global setup of the tests calls the default export. */
export default buildKernels;

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await buildKernels();
