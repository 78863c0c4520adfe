import type { Kind } from './kind.ts';
import { signs } from './paths.ts';

const svg = 'http://www.w3.org/2000/svg';

/** The sign as a plain element, for the view, which knows nothing of React. */
export function signElement(kind: Kind): SVGSVGElement {
  const root = document.createElementNS(svg, 'svg');
  for (const [name, value] of Object.entries({ width: '20', height: '20', viewBox: '0 0 20 20' }))
    root.setAttribute(name, value);
  root.setAttribute('class', `sign sign-${kind}`);
  const path = document.createElementNS(svg, 'path');
  path.setAttribute('d', signs[kind].d);
  path.setAttribute('fill', signs[kind].filled ? 'currentColor' : 'none');
  path.setAttribute('stroke', 'currentColor');
  path.setAttribute('stroke-width', '1.9');
  root.append(path);
  return root;
}
