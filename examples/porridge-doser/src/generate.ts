/** Writes both revisions and the project of the demo machine into `out/` of this package. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { startKernel } from './kernel.ts';
import { machine } from './machine.ts';
import { revisionA, revisionB } from './parameters.ts';
import { demoProject, stepFileName } from './project.ts';
import { writeStep } from './step.ts';
import { placedBodies } from './tree.ts';

const out = fileURLToPath(new URL('../out/', import.meta.url));

await startKernel();
mkdirSync(`${out}project`, { recursive: true });
const revisions = [revisionA, revisionB].map((parameters) => ({ parameters, root: machine(parameters) }));
for (const { parameters: p, root } of revisions) {
  const name = stepFileName(p);
  const step = writeStep(root, name);
  writeFileSync(`${out}${name}`, step);
  writeFileSync(`${out}project/${name}`, step);
  console.log(`${name}: ${placedBodies(root).length} parts, ${(step.length / 1e6).toFixed(1)} MB (invented)`);
}
writeFileSync(`${out}project/project.json`, `${JSON.stringify(demoProject(revisions), null, 2)}\n`);
