export { builtIn, type Catalogue } from './catalogue.ts';
export { media, mediumById } from './cleaning/media.ts';
export { disinfectionPoints, orderRuleById, orderRules } from './cleaning/order.ts';
export { templateById, templates } from './cleaning/templates.ts';
export type * from './cleaning/types.ts';
export { type Verdict, type WithstandRow, withstand } from './cleaning/withstand.ts';
export { elements } from './elements.ts';
export { type Demand, demandsInForce, limitsFor, profileById, type Setting } from './in-force.ts';
export { materialById, materials } from './materials/index.ts';
export { type Pack, pack, type ReadPack, readPack, withPack } from './pack.ts';
export { type Packed, withPacks } from './packs.ts';
export { profiles } from './profiles.ts';
export { matters, questionById, questions } from './questions/index.ts';
export type { Matter, Question, Reading } from './questions/question.ts';
export { requirementById, requirements } from './requirements/index.ts';
export {
  type Measured,
  type SamplingLimit,
  type SamplingMethod,
  samplingLimitById,
  samplingLimits,
  samplingMethodById,
  samplingMethods,
} from './sampling/methods.ts';
export { sourceByKey, sources } from './sources.ts';
export type * from './types.ts';
