/**
 * The triangle tree, flat faces, inside corners and narrow gaps on the benchmark machine. Processor time, for the wall
 * clock of a shared machine says little. Needs `npm run build:node` first.
 *
 *   node bench/survey-surfaces.mjs [triangles …]
 */
import {
  defaultSettings,
  measureFlatFaces,
  measureInsideCorners,
  measureNarrowGaps,
  treeOf,
} from '@coveline/survey';
import { machine } from './machine.mjs';

const sizes = process.argv.slice(2).map(Number);

for (const size of sizes.length > 0 ? sizes : [100_000, 1_000_000]) {
  const model = machine(size);
  const triangles = model.parts.reduce((n, { shape }) => n + model.shapes[shape].triangles.length / 3, 0);
  console.log(`${triangles} triangles, ${model.parts.length} parts`);
  timed(
    'tree',
    () => treeOf(model),
    () => '',
  );
  timed('flat faces', measureFlatFaces, ({ measure }) => `${measure.places.length} places`);
  timed('inside corners', measureInsideCorners, ({ measure }) => `${measure.places.length} places`);
  timed(
    'narrow gaps',
    measureNarrowGaps,
    ({ measure }) => `${measure.places.length} gaps, ${measure.joints.length} joints`,
  );

  function timed(name, measure, tell) {
    const before = process.cpuUsage();
    const found = measure(model, defaultSettings);
    const { user, system } = process.cpuUsage(before);
    const memory = Math.round(process.memoryUsage().rss / 2 ** 20);
    console.log(`  ${name}: ${((user + system) / 1e6).toFixed(1)} s, ${memory} MB ${tell(found)}`);
  }
}
