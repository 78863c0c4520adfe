/**
 * Imports point downwards only. Each package has a rank; it may import packages of a lower rank, and npm packages
 * that its own package.json names. Prints every breach and exits 1 if there is one.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const rank = {
  '@coveline/quantity': 0,
  '@coveline/model': 0,
  '@coveline/cad': 1,
  '@coveline/survey': 1,
  '@coveline/engineering': 1,
  '@coveline/catalogue': 1,
  '@coveline/project': 2,
  '@coveline/review': 3,
  '@coveline/viewer': 3,
  '@coveline/api': 4,
  '@coveline/store': 4,
  '@coveline/file': 4,
  '@coveline/compute': 4,
  '@coveline/porridge-doser': 4,
  '@coveline/server': 5,
  '@coveline/web': 6,
  coveline: 6,
};

/** Pure packages: no Node API, no DOM. */
const pure = new Set(
  ['quantity', 'model', 'survey', 'engineering', 'catalogue', 'project', 'review'].map(
    (n) => `@coveline/${n}`,
  ),
);

const root = fileURLToPath(new URL('..', import.meta.url));
const breaches = [];

function* sources(dir) {
  for (const name of readdirSync(dir)) {
    const path = join(dir, name);
    if (statSync(path).isDirectory()) yield* sources(path);
    else if (/\.tsx?$/.test(name)) yield path;
  }
}

for (const group of ['packages', 'apps', 'examples']) {
  for (const name of readdirSync(join(root, group))) {
    const home = join(root, group, name);
    const manifest = JSON.parse(readFileSync(join(home, 'package.json'), 'utf8'));
    const own = manifest.name;
    if (!(own in rank)) breaches.push(`${group}/${name}: package ${own} has no rank in scripts/layers.mjs`);
    for (const file of sources(join(home, 'src'))) {
      const isTest = /\.test\.tsx?$/.test(file);
      const text = readFileSync(file, 'utf8');
      for (const [, target] of text.matchAll(
        /(?:^|\n)\s*(?:import|export)\b[^;'"]*?from\s*'([^'.][^']*)'|\bimport\(\s*'([^'.][^']*)'/g,
      )) {
        if (!target) continue;
        const pkg = target.startsWith('node:')
          ? target
          : target
              .split('/')
              .slice(0, target[0] === '@' ? 2 : 1)
              .join('/');
        const where = relative(root, file);
        if (pkg in rank && pkg !== own && rank[pkg] >= rank[own])
          breaches.push(`${where}: ${own} must not import ${pkg}, which is not below it`);
        const isBuiltin = pkg.startsWith('node:') || builtinModules.includes(pkg);
        if (isBuiltin && pure.has(own) && !isTest)
          breaches.push(`${where}: ${own} is pure and must not import ${pkg}`);
        if (!isBuiltin && !isTest && pkg !== own && !(pkg in (manifest.dependencies ?? {})))
          breaches.push(`${where}: ${pkg} is not among the dependencies of ${own}`);
      }
    }
  }
}

for (const line of breaches) console.error(line);
console.log(`layers: ${breaches.length === 0 ? 'imports point downwards' : `${breaches.length} breaches`}`);
process.exit(breaches.length === 0 ? 0 : 1);
