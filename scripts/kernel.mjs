/**
 * Compiles the ray kernel (packages/survey/kernel, AssemblyScript) to WebAssembly and leaves it as a module of base64
 * among the sources, so that Node, browsers and bundlers load it like any other. Does nothing while it is up to date.
 */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const sources = join(root, 'packages/survey/kernel');
const target = join(root, 'packages/survey/src/tree/kernel.generated.ts');
const options = [
  ...['--enable', 'simd,threads', '--importMemory', '--sharedMemory'],
  ...['--initialMemory', '1', '--maximumMemory', '65536'],
  ...['--runtime', 'stub', '-O3', '--noAssert', '--noExportMemory'],
];

/** Brings the generated module up to date. Throws with the compiler's own words when the sources are wrong. */
export async function buildKernel() {
  const files = readdirSync(sources)
    .filter((name) => name.endsWith('.ts'))
    .sort()
    .map((name) => [name, readFileSync(join(sources, name), 'utf8')]);
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
    readFile: (name) => texts.get(name) ?? null,
    writeFile: (_name, contents) => {
      wasm = contents;
    },
    listFiles: () => [],
  });
  if (error) throw new Error(`The ray kernel does not compile.\n${stderr}`, { cause: error });
  const text = [
    `/** Made by scripts/kernel.mjs from packages/survey/kernel. ${stamp} */`,
    `export const kernelBase64 = '${Buffer.from(wasm).toString('base64')}';`,
    '',
  ].join('\n');
  // Two builds at once must not leave half a file.
  const half = `${target}.tmp.${process.pid}`;
  writeFileSync(half, text);
  renameSync(half, target);
  console.log(`Ray kernel: ${relative(root, target)}, ${wasm.length} bytes`);
}

/** The global setup of the tests calls the default export. */
export default buildKernel;

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) await buildKernel();
