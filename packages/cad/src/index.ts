export { CadError, type CadErrorCode } from './error.ts';
export { type Format, type FormatId, formats } from './formats.ts';
export { limits } from './limits.ts';
export { defaultAngle_rad, defaultDeviation_mm, type ReadOptions } from './options.ts';
export { readModel } from './read.ts';
export { resetKernel } from './step/kernel.ts';
