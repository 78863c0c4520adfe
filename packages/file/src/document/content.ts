/** What the template is handed: plain data, every string printable, every picture by the name of its file. */

export interface Row {
  readonly label: string;
  readonly value: string;
}

export interface Picture {
  readonly file: string;
  readonly alt: string;
  readonly caption: string;
}

export interface NumberContent extends Row {
  /** Number of the calculation that shows how it came about. */
  readonly working: number;
}

export interface DecisionContent {
  /** "Change it", "Concession", "Does not apply", or "Not decided". */
  readonly kind: string;
  readonly lines: readonly Row[];
}

export interface FindingContent {
  readonly number: number;
  readonly sign: string;
  readonly title: string;
  readonly place: string;
  readonly status: string;
  readonly close: Picture | null;
  readonly overview: Picture | null;
  readonly numbers: readonly NumberContent[];
  readonly why: string;
  readonly order: string;
  readonly demand: string;
  readonly limit: string;
  readonly sources: readonly string[];
  readonly remedies: readonly { readonly text: string; readonly cost: string }[];
  readonly conflict: readonly Row[];
  readonly caveats: readonly string[];
  readonly parts: string;
  readonly decision: DecisionContent;
}

export interface GroupContent {
  readonly title: string;
  readonly findings: readonly FindingContent[];
}

export interface ConcessionContent {
  readonly number: number;
  readonly title: string;
  readonly facts: readonly Row[];
  readonly measures: readonly { readonly what: string; readonly interval: string; readonly owner: string }[];
}

export interface RequirementContent {
  readonly text: string;
  readonly status: string;
  readonly basis: string;
  readonly source: string;
  readonly findings: readonly number[];
}

export interface WorkingParts {
  readonly inputs: readonly {
    readonly symbol: string;
    readonly name: string;
    readonly value: string;
    readonly from: string;
  }[];
  readonly formula: readonly string[];
  readonly steps: readonly Row[];
  readonly result: Row;
  readonly source: string;
  readonly validity: string;
  readonly warnings: readonly string[];
}

/** One calculation that came about the same way several times: told once, with a row for each time. */
export interface WorkingContent extends WorkingParts {
  readonly title: string;
  /** The number of the first; the others follow in `rows`. */
  readonly number: number;
  readonly usedBy: readonly number[];
  /** Heads of the columns of `rows`: what differs from one to the next. */
  readonly columns: readonly string[];
  /** Empty for a calculation that is used once. */
  readonly rows: readonly {
    readonly number: number;
    readonly values: readonly string[];
    readonly usedBy: readonly number[];
  }[];
}

/** A calculation that was kept with the machine, worked out for this file. */
export interface KeptContent {
  readonly number: number;
  readonly title: string;
  /** What is calculated, in the words of the calculation. */
  readonly formulaTitle: string;
  readonly note: string;
  /** What was typed, as it was typed. */
  readonly typed: readonly Row[];
  /** The finding that it belongs to; 0 when there is none in this file. */
  readonly finding: number;
  /** Null when there is no number; `refusal` then says why. */
  readonly working: WorkingParts | null;
  readonly refusal: string;
  /** What it gave before, when that was something else. */
  readonly before: string;
  readonly tables: readonly TableContent[];
}

export interface TableContent {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly more: number;
}

/** A page for the cleaner. */
export interface GroupSheet {
  readonly title: string;
  readonly facts: string;
  readonly picture: Picture;
  readonly parts: string;
  readonly steps: readonly {
    readonly number: string;
    readonly what: string;
    readonly how: string;
    readonly strength: string;
    readonly heat: string;
    readonly time: string;
  }[];
  readonly hazards: readonly Row[];
  readonly breaches: readonly string[];
  readonly materials: readonly {
    readonly material: string;
    readonly medium: string;
    readonly verdict: string;
    readonly contact: string;
    readonly why: string;
  }[];
}

export interface CleaningContent {
  readonly takes: readonly NumberContent[];
  readonly notCounted: readonly string[];
  readonly uncleaned: string;
  readonly sheets: readonly GroupSheet[];
}

export interface RoundContent {
  readonly summary: string;
  readonly stops: readonly {
    readonly title: string;
    readonly rows: readonly { readonly question: string; readonly found: string; readonly who: string }[];
  }[];
  readonly open: readonly Row[];
}

export interface ProofContent {
  readonly validation: readonly NumberContent[];
  readonly points: readonly {
    readonly number: number;
    readonly name: string;
    readonly finding: number;
    readonly every: string;
    readonly tests: readonly string[];
  }[];
  readonly stages: readonly Row[];
}

export interface FileContent {
  readonly title: string;
  readonly machine: string;
  /** Machine and revision, short enough for one line at the head of a page. */
  readonly head: string;
  readonly revision: string;
  readonly invented: boolean;
  readonly date: string;
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly cover: Picture;
  readonly facts: readonly Row[];
  readonly brief: readonly { readonly title: string; readonly rows: readonly Row[] }[];
  readonly views: readonly Picture[];
  readonly health: readonly Row[];
  /** What is wrong with the model itself, and what the measures do about it. */
  readonly faults: readonly string[];
  readonly notes: readonly string[];
  readonly summary: string;
  readonly groups: readonly GroupContent[];
  readonly signs: Readonly<Record<string, string>>;
  readonly decided: string;
  readonly concessions: readonly ConcessionContent[];
  readonly requirementsSummary: string;
  /** How many requirements were settled in which way. */
  readonly coverage: readonly Row[];
  readonly requirements: readonly {
    readonly element: string;
    readonly rows: readonly RequirementContent[];
  }[];
  readonly round: RoundContent;
  readonly cleaning: CleaningContent;
  readonly proof: ProofContent;
  readonly kept: readonly KeptContent[];
  readonly workings: readonly WorkingContent[];
  readonly settings: readonly Row[];
  readonly site: readonly Row[];
  readonly surveyNotes: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly {
    readonly title: string;
    readonly edition: string;
    readonly kind: string;
    readonly seen: string;
  }[];
}
