#!/usr/bin/env node
import { existsSync } from 'node:fs';

const main = new URL('../dist/main.js', import.meta.url);
if (!existsSync(main)) {
  console.error('coveline is not built yet: run "npm run build:node" in the repository first.');
  process.exit(1);
}
await import(main.href);
