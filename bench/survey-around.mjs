/**
 * Jet reach, first air, what hangs overhead and clearances on the benchmark machine, with eight nozzles around it, 60
 * mouths in rows under a filter face, and one door. Processor time. Needs `npm run build:node` first.
 *
 *   node bench/survey-around.mjs [triangles …]
 */
import {
  defaultSettings,
  emptySite,
  measureClearances,
  measureJetReach,
  measureOpenSky,
  measureOverhead,
  treeOf,
} from '@coveline/survey';
import { machine } from './machine.mjs';

const sizes = process.argv.slice(2).map(Number);

const nozzles = Array.from({ length: 8 }, (_, k) => ({
  id: `nozzle ${k}`,
  parts: [],
  at_mm: [k & 1 ? 1600 : -100, k & 2 ? 1000 : -100, k & 4 ? 1200 : 300],
  direction: [k & 1 ? -1 : 1, k & 2 ? -1 : 1, k & 4 ? -0.3 : 0.2],
  cone_deg: 90,
  range_mm: 1500,
}));
const mouths = Array.from({ length: 60 }, (_, k) => ({
  id: `mouth ${k}`,
  parts: [],
  at_mm: [80 + 95 * (k % 15), 150 + 180 * Math.floor(k / 15), 500],
  outward: [0, 0, 1],
  radius_mm: 35,
}));
const filters = [
  {
    id: 'filter',
    parts: [],
    at_mm: [750, 450, 1400],
    flow: [0, 0, -1],
    across_mm: [800, 0, 0],
    along_mm: [0, 500, 0],
    velocity_mPerS: 0.45,
  },
];

for (const size of sizes.length > 0 ? sizes : [100_000, 1_000_000]) {
  const model = machine(size);
  const triangles = model.parts.reduce((n, { shape }) => n + model.shapes[shape].triangles.length / 3, 0);
  const door = { id: 'door', parts: [model.parts[4].id], hinge: { at_mm: [0, 0, 0], axis: [0, 0, 1] } };
  console.log(`${triangles} triangles, ${model.parts.length} parts`);
  const site = { ...emptySite, nozzles, mouths, filters, doors: [door] };
  timed('tree and material', () => {
    treeOf(model);
    return measureOverhead(model, defaultSettings, emptySite);
  });
  timed('jet reach', () => measureJetReach(model, defaultSettings, site));
  timed('first air', () => measureOpenSky(model, defaultSettings, site));
  timed('overhead', () => measureOverhead(model, defaultSettings, site));
  timed('clearances', () => measureClearances(model, defaultSettings, site));

  function timed(name, measure) {
    const before = process.cpuUsage();
    const { places } = measure().measure;
    const { user, system } = process.cpuUsage(before);
    const memory = Math.round(process.memoryUsage().rss / 2 ** 20);
    console.log(`  ${name}: ${((user + system) / 1e6).toFixed(2)} s, ${memory} MB, ${places.length} places`);
  }
}
