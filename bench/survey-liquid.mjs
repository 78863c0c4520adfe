/**
 * Standing liquid and closed hollows on the benchmark machine, alone and with the exact second method.
 * Processor time, for the wall clock of a shared machine says little. Needs `npm run build:node` first.
 *
 *   node bench/survey-liquid.mjs [triangles …]
 */
import { loadManifoldUnion, survey } from '@coveline/survey';
import { machine } from './machine.mjs';

const sizes = process.argv.slice(2).map(Number);

for (const size of sizes.length > 0 ? sizes : [100_000, 1_000_000]) {
  const model = machine(size);
  const triangles = model.parts.reduce((n, { shape }) => n + model.shapes[shape].triangles.length / 3, 0);
  console.log(`${triangles} triangles, ${model.parts.length} parts`);
  for (const [name, request] of [
    ['columns', { measures: ['standingLiquid', 'hollows'] }],
    ['columns and exact', { measures: ['standingLiquid'], exact: loadManifoldUnion }],
  ]) {
    const before = process.cpuUsage();
    const { result } = await survey(model, request);
    const { user, system } = process.cpuUsage(before);
    const { standingLiquid, hollows } = result.measures;
    const compared = standingLiquid.places.filter(({ difference }) => difference !== undefined);
    const close = compared.filter(({ difference }) => Math.abs(difference) < 0.005);
    console.log(
      [
        `  ${name}: ${((user + system) / 1e6).toFixed(1)} s`,
        `${standingLiquid.places.length} pools, ${standingLiquid.total_mL.toFixed(0)} mL`,
        hollows && `${hollows.closed.length} hollows`,
        compared.length > 0 && `${close.length} of ${compared.length} within 0.5 %`,
        `${Math.round(process.memoryUsage().rss / 2 ** 20)} MB`,
      ]
        .filter(Boolean)
        .join(', '),
    );
  }
}
