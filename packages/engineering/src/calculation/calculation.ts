/**
 * A calculation: a pure function with everything that a reader needs to trust it and to redo it by hand. One
 * calculation a file; the command line, the HTTP route, the workbench and the file are made from this description.
 */
import type { Working } from '@coveline/quantity';
import { checkInputs } from './check-inputs.ts';
import type { GivenOf, Inputs, InputValue, ValuesOf } from './inputs.ts';
import { writeWorking } from './working.ts';

export interface Output {
  readonly symbol: string;
  readonly label: string;
  readonly unit: string;
  /** For a verdict: what each number means. */
  readonly words?: Readonly<Record<string, string>>;
}
/** The first one is the result, the others are intermediate values in the order in which they arise. */
export type Outputs = Readonly<Record<string, Output>>;
export type NumbersOf<O extends Outputs> = { readonly [K in keyof O]: number };

/** Rows that belong to a result: points of a chart, segments of a network. */
export interface Table {
  readonly title: string;
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
  readonly rows: readonly (readonly (number | string)[])[];
}

export interface Computed<O extends Outputs> {
  readonly values: NumbersOf<O>;
  readonly warnings?: readonly string[];
  readonly tables?: readonly Table[];
}

/** No result, and one sentence that says why and what would help. */
export interface Refusal {
  readonly kind: 'refused';
  readonly reason: string;
}

export type Outcome<O extends Outputs = Outputs> =
  | {
      readonly kind: 'done';
      readonly values: NumbersOf<O>;
      readonly working: Working;
      readonly warnings: readonly string[];
      readonly tables: readonly Table[];
    }
  | Refusal;

export interface Example {
  readonly inputs: Readonly<Record<string, InputValue>>;
  /** Expected value of the result or of any other output by key. */
  readonly expected: Readonly<Record<string, number>>;
  /** Relative. */
  readonly tolerance: number;
  readonly source: string;
}

export interface Definition<I extends Inputs, O extends Outputs> {
  /** As the command line knows it: "puddle-depth". */
  readonly name: string;
  readonly title: string;
  readonly inputs: I;
  readonly outputs: O;
  /** Plain-text equations in the order in which they are used. */
  readonly equation: readonly string[];
  readonly validity: string;
  readonly source: string;
  readonly example: Example;
  /** The usual caution, where the work can hurt someone. */
  readonly caution?: string;
  readonly compute: (values: ValuesOf<I>) => Computed<O> | Refusal;
}

/** A calculation with its types forgotten, as the registry holds it. */
export interface CalculationEntry extends Omit<Definition<Inputs, Outputs>, 'compute'> {
  /** Run with values of any kind; every mistake comes back as a refusal. */
  readonly evaluate: (
    values: Readonly<Record<string, InputValue | undefined>>,
    origins?: Readonly<Record<string, string | undefined>>,
  ) => Outcome;
}

export interface Calculation<I extends Inputs, O extends Outputs> extends CalculationEntry {
  readonly inputs: I;
  readonly outputs: O;
  /**
   * Run with values in the units of `inputs`. `origins` says where a value comes from ("measured on the model") and
   * is printed in the working.
   */
  readonly run: (given: GivenOf<I>, origins?: { readonly [K in keyof I]?: string }) => Outcome<O>;
}

export function refuse(reason: string): Refusal {
  return { kind: 'refused', reason };
}

export function calculation<const I extends Inputs, const O extends Outputs>(
  definition: Definition<I, O>,
): Calculation<I, O> {
  const { compute, ...described } = definition;
  const evaluate = (
    given: Readonly<Record<string, InputValue | undefined>>,
    origins: Readonly<Record<string, string | undefined>> = {},
  ): Outcome<O> => {
    const checked = checkInputs(definition.inputs, given);
    if (checked.kind === 'refused') return checked;
    const computed = compute(checked.values as ValuesOf<I>);
    if ('kind' in computed) return computed;
    for (const [key, output] of Object.entries(definition.outputs))
      if (!Number.isFinite(computed.values[key]))
        return refuse(`${definition.name}: the ${output.label} is not a finite number for these inputs`);
    const warnings = [
      ...checked.warnings,
      ...(computed.warnings ?? []),
      ...(definition.caution === undefined ? [] : [definition.caution]),
    ];
    return {
      kind: 'done',
      values: computed.values,
      working: writeWorking(described, checked.values, given, origins, computed.values, warnings),
      warnings,
      tables: computed.tables ?? [],
    };
  };
  return {
    ...described,
    evaluate,
    run: (given, origins) => evaluate(given as Readonly<Record<string, InputValue | undefined>>, origins),
  };
}
