export { convert, convertDifference } from './convert.ts';
export { type Dimension, nameOf } from './dimension.ts';
export { type FormatOptions, formatQuantity, formatUnit } from './format.ts';
export { decimalSeparator, isLocale } from './number.ts';
export { type ParsedQuantity, type ParseOptions, parseQuantity, type QuantityReading } from './parse.ts';
export { type UnitRow, units } from './table.ts';
export { readUnit, type Unit, type UnitReading, unitOf } from './unit.ts';
export type { Working, WorkingValue } from './working.ts';
