/** Proposes a material from the name, from what the part is, and from its colour. */
import type { Catalogue } from '@coveline/catalogue';
import type { Vec3 } from '@coveline/model';
import type { Proposal } from './area.ts';
import type { Known } from './known.ts';

/** Proposes by index of the part. */
export function materialProposals(
  known: Known,
  { materials }: Catalogue,
): (part: number) => Proposal<string> {
  const hints = [...materials.values()]
    .flatMap((m) => m.nameHints.map((hint) => ({ hint, id: m.id, name: m.name })))
    // The longer hint first: "316l" before "316", "ffkm" before "fkm".
    .sort((a, b) => b.hint.length - a.hint.length || (a.hint < b.hint ? -1 : 1));
  return (part) => {
    const { name, color } = known.model.parts[part];
    const text = ` ${name.toLowerCase().replace(/[^a-z0-9.-]+/g, ' ')} `;
    const hit = hints.find(({ hint }) => text.includes(` ${hint} `));
    if (hit) return { value: hit.id, reason: `${hit.name}: its name says "${hit.hint}".` };
    const noun = known.is[part]?.noun;
    if (noun === 'gasket')
      return { value: 'unknown', reason: 'Material not known: a seal, but its compound is not in the name.' };
    if (noun === 'cable' || noun === 'hose')
      return {
        value: 'unknown',
        reason: `Material not known: a ${noun}, but its jacket is not in the name.`,
      };
    if (color && isGrey(color))
      return {
        value: '1.4301',
        reason: 'Stainless steel 1.4301 assumed: it is drawn in grey and nothing says otherwise.',
      };
    return { value: 'unknown', reason: 'Material not known: neither name nor colour tells it.' };
  };
}

/** Metals are drawn in grey, neither black nor white. */
function isGrey(color: Vec3): boolean {
  const [least, most] = [Math.min(...color), Math.max(...color)];
  return most - least < 0.12 && least > 0.25 && most < 0.97;
}
