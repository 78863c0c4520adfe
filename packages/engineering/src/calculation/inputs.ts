/** What a calculation asks for. The builders keep a calculation's own file short and its types exact. */

export interface NumberInput {
  readonly kind: 'number';
  readonly symbol: string;
  readonly label: string;
  /** As `@coveline/quantity` reads it. "K" is a difference, "degC" a temperature. */
  readonly unit: string;
  readonly default?: number;
  /** Outside min and max the calculation refuses. */
  readonly min?: number;
  readonly max?: number;
  /** Outside this the formula still computes, and warns. */
  readonly usual?: readonly [number, number];
  readonly whole?: true;
  /** Where the default comes from. */
  readonly from?: string;
}

export interface ChoiceInput<C extends string = string> {
  readonly kind: 'choice';
  readonly label: string;
  /** Each choice with one line that explains it. */
  readonly choices: Readonly<Record<C, string>>;
  readonly default?: C;
}

export interface ListInput {
  readonly kind: 'list';
  readonly symbol: string;
  readonly label: string;
  readonly unit: string;
  readonly min?: number;
  readonly max?: number;
  readonly minCount: number;
}

export interface TextInput {
  readonly kind: 'text';
  readonly label: string;
  /** What the text has to look like. */
  readonly format: string;
}

export type Input = NumberInput | ChoiceInput | ListInput | TextInput;
export type Inputs = Readonly<Record<string, Input>>;
export type InputValue = number | string | readonly number[];

export type ValueOf<I extends Input> = I extends NumberInput
  ? number
  : I extends { readonly kind: 'choice'; readonly choices: infer R }
    ? keyof R & string
    : I extends ListInput
      ? readonly number[]
      : string;

export type ValuesOf<I extends Inputs> = { readonly [K in keyof I]: ValueOf<I[K]> };

type WithDefault<I extends Inputs> = {
  [K in keyof I]: I[K] extends { readonly default: number | string } ? K : never;
}[keyof I];

/** What a caller must give: everything without a default. */
export type GivenOf<I extends Inputs> = {
  readonly [K in Exclude<keyof I, WithDefault<I>>]: ValueOf<I[K]>;
} & { readonly [K in WithDefault<I>]?: ValueOf<I[K]> };

type NumberOptions = Omit<NumberInput, 'kind' | 'symbol' | 'label' | 'unit'>;

export function number<const N extends NumberOptions>(
  symbol: string,
  label: string,
  unit: string,
  options: N,
): { readonly kind: 'number'; readonly symbol: string; readonly label: string; readonly unit: string } & N {
  return { kind: 'number', symbol, label, unit, ...options };
}

export function choice<const C extends string, const D extends { readonly default?: NoInfer<C> }>(
  label: string,
  choices: Readonly<Record<C, string>>,
  options: D = {} as D,
): { readonly kind: 'choice'; readonly label: string; readonly choices: Readonly<Record<C, string>> } & D {
  return { kind: 'choice', label, choices, ...options };
}

export function list(
  symbol: string,
  label: string,
  unit: string,
  options: Omit<ListInput, 'kind' | 'symbol' | 'label' | 'unit'>,
): ListInput {
  return { kind: 'list', symbol, label, unit, ...options };
}

export function text(label: string, format: string): TextInput {
  return { kind: 'text', label, format };
}

/** The name that a person types: `depth` for the key `depth_mm`. */
export function inputName(key: string): string {
  return key.split('_')[0];
}
