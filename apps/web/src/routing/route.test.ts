import fc from 'fast-check';
import { expect, test } from 'vitest';
import { href, parseRoute, type Route, stops } from './route.ts';

const name = fc
  .string({ minLength: 1, maxLength: 20, unit: 'binary' })
  .filter((s) => s !== '.' && s !== '..');
const machineRoute = fc.record({
  at: fc.constant('machine' as const),
  machine: name,
  revision: fc.option(name.filter((s) => s !== 'latest')),
  page: fc.constantFrom(
    ...stops,
    'requirements' as const,
    'history' as const,
    'calculations' as const,
    'site' as const,
  ),
  item: fc.option(name),
});

const calculations = fc.constant('calculations' as const);
const calculationRoute = fc.oneof(
  fc.record({ at: calculations, name: fc.option(name), kept: fc.constant(null) }),
  fc.record({ at: calculations, name, kept: fc.record({ machine: name, id: name }) }),
);

test('every address reads back as what it was written for (seed 11)', () => {
  fc.assert(
    fc.property(fc.oneof(machineRoute, calculationRoute), (route: Route) => {
      expect(parseRoute(href(route))).toEqual(route);
    }),
    { seed: 11 },
  );
});

test('a machine without a page is its walk; what is unknown leads nowhere', () => {
  expect(parseRoute('/')).toEqual({ at: 'start' });
  expect(parseRoute('/machine/a')).toMatchObject({ page: 'walk', revision: null, item: null });
  expect(parseRoute('/machine/a/b/teapot')).toMatchObject({ at: 'nowhere' });
  expect(parseRoute('/machine/%')).toMatchObject({ machine: '%' });
  expect(parseRoute('/calculations/pipe-flow/a')).toMatchObject({ at: 'nowhere' });
});
