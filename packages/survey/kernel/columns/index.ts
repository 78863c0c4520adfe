/** What the air space calls, for each line of columns in turn: `startLine`, `layLine`, then `fill` or `known`, then `join`. */
export { as, bottoms, bs, ceilings, fill, floors, heights, join, known, numbers, starts, stripStarts, tops } from './air';
export { layLine, lines, open, startLine } from './line';
