import { expect, test } from 'vitest';
import { alike, some, TheName, theName } from './display.ts';

test.each([
  ['jar guide plate 1.4301', 'the jar guide plate'],
  ['hopper 12 L 1.4404', 'the hopper'],
  ['base rail rear RHS 50x50x2 1.4301', 'the base rail rear'],
  ['hex nut M6 ISO 4032 A2', 'the hex nut M6'],
  ['levelling stud M16x60 A2', 'the levelling stud M16x60'],
  ['foot pad PA66 Ø64', 'the foot pad'],
  ['upright front tube Ø48.3x2 1.4301', 'the upright front tube'],
  ['clamp gasket EPDM DN25', 'the clamp gasket DN25'],
  ['PRT_00012', '"PRT_00012"'],
  ['Getriebemotor', '"Getriebemotor"'],
  ['1.4301', '"1.4301"'],
])('%s is called %s', (name, said) => {
  expect(theName(name)).toBe(said);
});

test('sentences start with a capital, groups say how many, lists stay short', () => {
  expect(TheName('cover')).toBe('The cover');
  expect(alike('The foot', 4)).toBe('The foot (4 alike)');
  expect(alike('The foot', 1)).toBe('The foot');
  expect(some(['a', 'b'])).toBe('a and b');
  expect(some(['a', 'b', 'c', 'd', 'e'])).toBe('a, b, c and 2 others');
});
