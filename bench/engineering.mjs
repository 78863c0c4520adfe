/**
 * Speed of the engineering core: node bench/engineering.mjs (after the build). Seeded inputs, minimum and mean of
 * several runs. The network is compared with EPANET (epanet-js) on the same text, solved twice as often as needed for
 * warm code on both sides.
 */
import { findCalculation } from '@coveline/engineering';
import { Project, Workspace } from 'epanet-js';

function measure(name, limit_ms, runs, run) {
  const times = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  const least = Math.min(...times);
  const mean = times.reduce((a, b) => a + b, 0) / runs;
  const limit = limit_ms === undefined ? '' : `  limit ${limit_ms} ms`;
  console.log(`${name.padEnd(44)} min ${least.toFixed(1)} ms  mean ${mean.toFixed(1)} ms${limit}`);
  return least;
}

function done(name, inputs) {
  const outcome = findCalculation(name).evaluate(inputs);
  if (outcome.kind === 'refused') throw new Error(outcome.reason);
  return outcome;
}

/** A grid of loops: 15 x 14 junctions, 391 pipes, a feed, in all about 400 segments. */
function network() {
  const [wide, high] = [15, 14];
  const bores = [38, 50, 66, 81];
  const lines = ['[JUNCTIONS]', ...Array.from({ length: wide * high }, (_, i) => `N${i} 0 0.5`)];
  lines.push('[RESERVOIRS]', 'R 60', '[PIPES]', 'feed R N0 5 150 0.0015 1 Open');
  let count = 1;
  const pipe = (a, b) =>
    lines.push(`P${count} N${a} N${b} ${5 + (count % 7)} ${bores[count++ % 4]} 0.0015 1 Open`);
  for (let r = 0; r < high; r++)
    for (let c = 0; c < wide; c++) {
      if (c + 1 < wide) pipe(r * wide + c, r * wide + c + 1);
      if (r + 1 < high) pipe(r * wide + c, (r + 1) * wide + c);
    }
  lines.push('[OPTIONS]', 'Units CMH', 'Headloss D-W', 'Accuracy 0.0000001', 'Trials 200', '[END]');
  return { text: lines.join('\n'), count };
}

const { text, count } = network();
const ours = measure(`network of ${count} segments`, 50, 8, () =>
  done('cleaning-circuit', { network: text }),
);
const workspace = new Workspace();
await workspace.loadModule();
workspace.writeFile('net.inp', text);
const theirs = measure('  the same in EPANET', undefined, 8, () => {
  const project = new Project(workspace);
  project.open('net.inp', 'net.rpt', 'net.bin');
  project.solveH();
  project.close();
});
console.log(`  ratio to EPANET ${(ours / theirs).toFixed(2)}`);

const stamps = ['stamp,cold end degC,drain degC,vent degC'];
const start = Date.UTC(2026, 0, 1);
for (let i = 0; i < 1e6; i++) {
  const t = (110 + 11 * Math.sin(i / 1e4)).toFixed(2);
  stamps.push(`${new Date(start + i * 1000).toISOString()},${t},${t},${t}`);
}
const log = stamps.join('\n');
measure('logger file, 1 000 000 samples x 3 sensors', 1000, 3, () =>
  done('lethality-of-logger-file', { file: log }),
);

measure('open containers, 10 000 trials', 1000, 5, () =>
  done('container-contamination', { airborne_cfum3: 5, trials: 10000 }),
);
