export * from './access/index.ts';
export * from './air/index.ts';
export type {
  Calculation,
  CalculationEntry,
  Example,
  Outcome,
  Output,
  Refusal,
  Table,
} from './calculation/calculation.ts';
export { type FieldReading, runFromText, type TypedRun } from './calculation/from-text.ts';
export {
  type ChoiceInput,
  type Input,
  type Inputs,
  type InputValue,
  inputName,
  type ListInput,
  type NumberInput,
  type TextInput,
} from './calculation/inputs.ts';
export { refusalSentence } from './calculation/refusal-sentence.ts';
export { resultText } from './calculation/result-text.ts';
export {
  againstBefore,
  type Gave,
  type RunAgain,
  runAgain,
  type TypedCalculation,
} from './calculation/run-again.ts';
export * from './flow/index.ts';
export * from './heat/index.ts';
export * from './kinetics/index.ts';
export * from './materials/index.ts';
export { calculations, findCalculation, type Subject, subjects } from './registry.ts';
export * from './resources/index.ts';
export * from './statistics/index.ts';
export * from './surface/index.ts';
export * from './texture/index.ts';
export * from './water/index.ts';
