/** Checks the steps of a programme against the rules of the catalogue; one small function a rule. */
import {
  disinfectionPoints,
  type MediumGroup,
  mediumById,
  type OrderRule,
  orderRuleById,
  type Soil,
} from '@coveline/catalogue';
import type { CleaningStep, SurfaceGroup } from '@coveline/project';

export interface Breach {
  readonly rule: OrderRule;
  /** Index of the step at which it happens; null where something is missing. */
  readonly step: number | null;
  /** What is wrong here, one sentence. */
  readonly text: string;
}

export interface Conditions {
  /** Any part of the group is of stainless steel. */
  readonly stainless: boolean;
  readonly allergens: boolean;
}

type Found = readonly (readonly [step: number | null, text: string])[];
type Check = (steps: readonly Step[], group: SurfaceGroup, on: Conditions) => Found;
/** A step with what does the work in it. */
type Step = CleaningStep & { readonly group: MediumGroup; readonly at: number };

/** All breaches, those that hurt people or ruin material first. An unknown medium is a breach of every rule on it. */
export function breachesOf(group: SurfaceGroup, on: Conditions): readonly Breach[] {
  const steps = group.steps.map((s, at) => ({ ...s, at, group: mediumById.get(s.medium)?.group ?? 'none' }));
  const out = Object.entries(checks).flatMap(([id, check]) =>
    check(steps, group, on).map(([step, text]): Breach => ({ rule: orderRuleById.get(id)!, step, text })),
  );
  return out.sort((a, b) => Number(b.rule.danger) - Number(a.rule.danger));
}

const wet = (s: Step) => s.group !== 'none' && s.group !== 'oil' && s.group !== 'alcohol';
const isRinse = (s: Step) => (s.group === 'water' || s.group === 'hotWater') && s.kind !== 'disinfect';
const chlorine = (s: Step) => s.group === 'hypochlorite' || s.group === 'chlorinatedAlkali';
const chemical = (s: Step) => !['none', 'water', 'hotWater', 'steam', 'oil'].includes(s.group);
const cleans = (s: Step) => s.kind === 'detergent' || s.kind === 'acid';
const degrees = (s: Step) => `${s.temperature_degC} °C`;
/** What sets when it gets hot; fat alone does not. */
const sets: ReadonlySet<Soil> = new Set(['proteinCold', 'proteinHeated', 'starch', 'allergen']);

/** The chemical step before this one, unless water flowed between. */
function chemicalBefore(steps: readonly Step[], at: number): Step | undefined {
  for (let i = at - 1; i >= 0; i--) {
    if (isRinse(steps[i])) return undefined;
    if (chemical(steps[i])) return steps[i];
  }
  return undefined;
}

const checks: Readonly<Record<string, Check>> = {
  'chlorine-gas': (steps) =>
    steps.flatMap((s) => {
      const before = chemicalBefore(steps, s.at);
      const clash = before && ((isAcid(s) && chlorine(before)) || (chlorine(s) && isAcid(before)));
      return clash ? [[s.at, 'Acid and chlorine meet: put a rinse between the two steps.'] as const] : [];
    }),
  'peracid-organic': (steps) =>
    steps.flatMap((s) =>
      (s.group === 'peracid' || s.group === 'peroxide') && !steps.slice(0, s.at).some(cleans)
        ? [[s.at, 'It goes onto faces that no step has cleaned.'] as const]
        : [],
    ),
  'alcohol-hot': (steps) =>
    steps.flatMap((s): Found => {
      if (s.group !== 'alcohol') return [];
      if ((s.temperature_degC ?? 20) >= 30) return [[s.at, `Alcohol at ${degrees(s)} can catch fire.`]];
      return s.action === 'spray' || s.action === 'foam'
        ? [[s.at, 'Sprayed alcohol burns and explodes: use a moist cloth.']]
        : [];
    }),
  secured: (steps, { way }) =>
    way === 'inPlace' || way === 'outOfPlace' || steps.some((s) => s.kind === 'clear')
      ? []
      : [[null, 'No step empties the machine and locks it out.']],
  'gross-soil-first': (steps) => {
    const first = steps.findIndex(wet);
    const clear = steps.findIndex((s) => s.kind === 'clear' || s.kind === 'dryClean');
    return clear > first && first >= 0 ? [[first, 'Water flows before coarse soil is cleared.']] : [];
  },
  'allergen-dry-first': (steps, { soil, way }, { allergens }) =>
    way !== 'inPlace' &&
    way !== 'outOfPlace' &&
    (soil === 'powder' || (soil === 'allergen' && allergens)) &&
    !steps.some((s) => s.kind === 'clear' || s.kind === 'dryClean')
      ? [[null, 'Nothing is taken up dry before the first water.']]
      : [],
  'cool-pre-rinse': (steps, { soil }) =>
    sets.has(soil)
      ? steps.flatMap((s) =>
          s.kind === 'preRinse' && (s.temperature_degC ?? 0) > 40
            ? [[s.at, `At ${degrees(s)} protein and starch set before they are rinsed off.`] as const]
            : [],
        )
      : [],
  'warm-pre-rinse': (steps, { soil }) =>
    soil === 'fat'
      ? steps.flatMap((s) =>
          s.kind === 'preRinse' && (s.temperature_degC ?? 20) < 45
            ? [[s.at, `At ${s.temperature_degC ?? 20} °C fat stays solid.`] as const]
            : [],
        )
      : [],
  'clean-before-disinfect': (steps) =>
    steps.flatMap((s) =>
      s.kind === 'disinfect' && !steps.slice(0, s.at).some((x) => cleans(x) || x.kind === 'dryClean')
        ? [[s.at, 'No step has cleaned before this one disinfects.'] as const]
        : [],
    ),
  'alkali-before-acid': (steps, { soil }) => {
    const acid = steps.findIndex((s) => s.kind === 'acid');
    const alkali = steps.findIndex((s) => s.group === 'alkali' || s.group === 'chlorinatedAlkali');
    return soil !== 'mineral' && acid >= 0 && alkali > acid
      ? [[acid, 'Acid comes first, though it is not mineral that rules.']]
      : [];
  },
  'rinse-between': (steps) => [
    ...steps.flatMap((s) => {
      const before = chemicalBefore(steps, s.at);
      return before && chemical(s) && before.group !== s.group
        ? [[s.at, `Nothing is rinsed between ${nameOf(before)} and ${nameOf(s)}.`] as const]
        : [];
    }),
    ...lastChemicalStays(steps),
  ],
  'foam-stays-wet': (steps) =>
    steps.flatMap((s) =>
      s.action === 'foam' && (s.time_min ?? 0) > 20
        ? [[s.at, `Foam dries within ${s.time_min} min.`] as const]
        : [],
    ),
  'look-before-disinfect': (steps, { way }) => {
    const disinfect = steps.findIndex((s) => s.kind === 'disinfect');
    if (disinfect < 0 || way === 'inPlace' || steps.slice(0, disinfect).some((s) => s.kind === 'inspect'))
      return [];
    return [[disinfect, 'Nobody looks before it is disinfected.']];
  },
  'contact-time': (steps) =>
    steps.flatMap((s) => (s.kind === 'disinfect' ? shortOf(s).map((text) => [s.at, text] as const) : [])),
  'oxidiser-on-steel': (steps, _, { stainless }) =>
    stainless
      ? steps.flatMap((s) =>
          s.group === 'hypochlorite' &&
          ((s.concentration_pct ?? 0) > 0.02 || (s.temperature_degC ?? 20) > 40 || (s.time_min ?? 0) > 30)
            ? [
                [
                  s.at,
                  `${Math.round((s.concentration_pct ?? 0) * 1e4)} ppm at ${s.temperature_degC ?? 20} °C for ${s.time_min ?? 0} min pits stainless steel.`,
                ] as const,
              ]
            : [],
        )
      : [],
  'drinking-water': (steps) => {
    const last = steps.filter((s) => s.group === 'water').at(-1);
    return last?.medium === 'recoveredWater' ? [[last.at, `The last water is ${nameOf(last)}.`]] : [];
  },
  'ends-dry': (steps) =>
    steps.some(wet) && !steps.some((s) => s.kind === 'dry' || s.kind === 'drain')
      ? [[null, 'No step drains or dries it.']]
      : [],
  'no-high-pressure': (steps, { way }) =>
    way === 'inPlace'
      ? []
      : steps.flatMap((s) =>
          (s.pressure_bar ?? 0) > 25
            ? [[s.at, `A jet of ${s.pressure_bar} bar spreads germs as aerosol.`] as const]
            : [],
        ),
};

const isAcid = (s: Step) => s.group === 'acid' || s.group === 'peracid';
const nameOf = (s: Step) => mediumById.get(s.medium)?.name ?? s.medium;

/** Disinfectants may stay where their label says so; cleaners never. */
function lastChemicalStays(steps: readonly Step[]): Found {
  const last = steps.filter((s) => s.group !== 'none').at(-1);
  return last && chemical(last) && last.kind !== 'disinfect'
    ? [[last.at, `${nameOf(last)} is not rinsed off before product.`]]
    : [];
}

/** What a disinfection step lacks against the published point that it comes nearest to. */
function shortOf(s: Step): string[] {
  const points = disinfectionPoints.filter((p) => p.medium === s.medium);
  if (points.length === 0)
    return [`No published contact time for ${nameOf(s)} is known here: the label decides.`];
  const lacks = points.map((p) => {
    const out: string[] = [];
    if ((s.time_min ?? 0) < p.atLeast_min) out.push(`${p.atLeast_min} min`);
    if (p.atLeast_degC !== undefined && (s.temperature_degC ?? 20) < p.atLeast_degC)
      out.push(`${p.atLeast_degC} °C`);
    if (p.concentration_pct && (s.concentration_pct ?? 0) < p.concentration_pct[0])
      out.push(`${p.concentration_pct[0]} %`);
    return { p, out };
  });
  const nearest = lacks.reduce((a, b) => (b.out.length < a.out.length ? b : a));
  return nearest.out.length === 0 ? [] : [`It misses ${nearest.out.join(' and ')}. ${nearest.p.text}`];
}
