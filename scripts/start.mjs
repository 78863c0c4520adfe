/** `npm start`: install, build, generate the demo machine, serve the workbench on loopback. */
import { build, install, requireNode, root, run } from './tools.mjs';

requireNode();
install();
const demo = build();
run('node', [`${root}apps/cli/bin/coveline.mjs`, 'serve', '--demo', demo, ...process.argv.slice(2)]);
