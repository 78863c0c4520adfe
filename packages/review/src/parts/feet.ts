import { elementOf, type Scene } from '../scene.ts';

/** Whether a part is a foot or castor by its name, or belongs to one: nuts and studs of a foot hang as low as they must. */
export function belongsToFoot(scene: Scene, part: number): boolean {
  const element = elementOf(scene, part);
  return (
    element === 'feet' ||
    element === 'castor' ||
    scene.known.model.parts[part].assembly.some((name) =>
      /\b(foot|feet|stellfu|fuß|fuss|pied|castor|leg)\b/i.test(name),
    )
  );
}
