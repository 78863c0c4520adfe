/**
 * Standing liquid and closed hollows on the benchmark machine: by columns, with the exact method, and trials of one change.
 * Processor time, for the wall clock of a shared machine says little. Needs `npm run build:node` first.
 *
 *   node bench/survey-liquid.mjs [triangles …]
 */
import {
  defaultSettings,
  liquidBasis,
  liquidOverTilts,
  loadManifoldUnion,
  survey,
  tryDrain,
  tryTilt,
} from '@coveline/survey';
import { machine } from './machine.mjs';

const asked = process.argv.slice(2).map(Number);
const sizes = asked.length > 0 ? asked : [100_000, 1_000_000, 4_000_000];
/** Pools at which a change is tried, evenly from the largest to the smallest. */
const tried = 12;

const cpu = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Seconds of processor time, and what came out. */
function timed(work) {
  const before = cpu();
  const result = work();
  return result instanceof Promise
    ? result.then((value) => ({ seconds: cpu() - before, value }))
    : { seconds: cpu() - before, value: result };
}

function row(name, seconds, ...facts) {
  const memory = `${Math.round(process.memoryUsage().rss / 2 ** 20)} MB`;
  console.log(
    `  ${name.padEnd(22)}${seconds.toFixed(seconds < 1 ? 3 : 1).padStart(7)} s  ${[...facts, memory].join(', ')}`,
  );
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

for (const size of sizes) {
  const model = machine(size);
  const triangles = model.parts.reduce((n, { shape }) => n + model.shapes[shape].triangles.length / 3, 0);
  console.log(`${triangles} triangles, ${model.parts.length} parts`);

  const columns = await timed(() => survey(model, { measures: ['standingLiquid', 'hollows'] }));
  const { standingLiquid, hollows } = columns.value.result.measures;
  row(
    'columns',
    columns.seconds,
    `${standingLiquid.places.length} pools`,
    `${standingLiquid.total_mL.toFixed(0)} mL`,
    `${hollows.closed.length} hollows`,
  );

  const exact = await timed(() => survey(model, { measures: ['standingLiquid'], exact: loadManifoldUnion }));
  const { places, total_mL } = exact.value.result.measures.standingLiquid;
  const compared = places.filter(({ difference }) => difference !== undefined);
  const close = compared.filter(({ difference }) => Math.abs(difference) < 0.005);
  row(
    'columns and exact',
    exact.seconds,
    `${places.length} pools`,
    `${total_mL.toFixed(0)} mL`,
    `${compared.length} exact, ${close.length} of them within 0.5 % of the columns`,
  );

  const basis = await timed(() => liquidBasis(model, defaultSettings));
  row('basis of trials', basis.seconds);
  const every = Math.max(1, Math.floor(places.length / tried));
  const drains = [];
  const tilts = [];
  for (let k = 0; k < places.length; k += every) {
    const { deepest_mm, parts } = places[k];
    try {
      drains.push(timed(() => tryDrain(basis.value, { at_mm: deepest_mm, diameter_mm: 10 })).seconds);
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
    }
    tilts.push(timed(() => tryTilt(basis.value, { part: parts[0], axis: [1, 0, 0], deg: 2 })).seconds);
  }
  row(
    'a drain hole',
    median(drains),
    `median of ${drains.length}, ${Math.max(...drains).toFixed(2)} s at most`,
  );
  row(
    'a part tilted',
    median(tilts),
    `median of ${tilts.length}, ${Math.max(...tilts).toFixed(2)} s at most`,
  );

  if (size > 1_000_000) continue;
  const over = await timed(() => liquidOverTilts(model, defaultSettings, { range_deg: 1 }));
  row(
    'tilts',
    over.seconds,
    `worst ${over.value.worst.total_mL.toFixed(0)} mL, best ${over.value.best.total_mL.toFixed(0)} mL`,
  );
}
