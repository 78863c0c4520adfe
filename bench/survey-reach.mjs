/**
 * Hand reach and tool reach on the benchmark machine. Processor time, for the wall clock of a shared machine says
 * little. Needs `npm run build:node` first.
 *
 *   node bench/survey-reach.mjs [triangles …] [--cell MM]
 */
import { defaultSettings, handOf, measureReach, reachOf, toolOf, treeOf } from '@coveline/survey';
import { machine } from './machine.mjs';

const given = process.argv.slice(2);
const cellAt = given.indexOf('--cell');
const settings = {
  ...defaultSettings,
  ...(cellAt >= 0 && { reachSpacing_mm: Number(given[cellAt + 1]) }),
};
const sizes = (cellAt >= 0 ? given.toSpliced(cellAt, 2) : given).map(Number);

for (const size of sizes.length > 0 ? sizes : [100_000, 1_000_000]) {
  const model = machine(size);
  const triangles = model.parts.reduce((n, { shape }) => n + model.shapes[shape].triangles.length / 3, 0);
  console.log(`${triangles} triangles, ${model.parts.length} parts`);
  timed('tree', () => treeOf(model));
  const reach = timed('ways of all balls', () => reachOf(model, settings));
  const { cells, pitch } = reach.space.lattice;
  console.log(`    ${cells} cells of ${pitch.toFixed(1)} mm`);
  for (const limb of [handOf(settings), toolOf(settings)]) {
    const { measure } = timed(limb.kind, () => measureReach(reach, limb, settings));
    console.log(`    ${measure.places.length} places, ${measure.openings.length} openings`);
  }
}

function timed(name, run) {
  const before = process.cpuUsage();
  const found = run();
  const { user, system } = process.cpuUsage(before);
  const memory = Math.round(process.memoryUsage().rss / 2 ** 20);
  console.log(`  ${name}: ${((user + system) / 1e6).toFixed(1)} s, ${memory} MB`);
  return found;
}
