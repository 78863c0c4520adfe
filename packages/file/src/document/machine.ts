import { triangleCount } from '@coveline/model';
import { formatQuantity } from '@coveline/quantity';
import { cameraOnBox } from '../picture/camera.ts';
import { toPng } from '../picture/image.ts';
import { directionOf } from '../picture/place-view.ts';
import { renderImage } from '../picture/render.ts';
import type { FileRequest } from '../request.ts';
import type { FileContent, Picture, Row } from './content.ts';
import type { Printer } from './printable.ts';
import type { Scene } from './scene.ts';

const coverSize = [1200, 1000] as const;
const viewSize = [760, 760] as const;

const views = [
  { file: 'front.png', azimuth: 0, elevation: 0, caption: 'From the front' },
  { file: 'left.png', azimuth: -90, elevation: 0, caption: 'From the left' },
  { file: 'top.png', azimuth: 0, elevation: 90, caption: 'From above' },
] as const;

/** Pictures, dimensions and the state of the model. */
export function machineContent(
  { model, outcome, project, revisionId }: FileRequest,
  scene: Scene,
  { text, short }: Printer,
  keep: (name: string, png: Uint8Array) => string,
): Pick<FileContent, 'cover' | 'views' | 'health' | 'faults' | 'notes'> {
  const picture = (
    file: string,
    azimuth: number,
    elevation: number,
    size: readonly [number, number],
    caption: string,
  ): Picture => {
    const camera = cameraOnBox(scene.bounds[0], scene.bounds[1], directionOf(azimuth, elevation), size);
    const png = toPng(renderImage(model, scene.tree, { camera, size }));
    return { file: keep(file, png), alt: text(`${project.name}, ${caption.toLowerCase()}.`), caption };
  };
  const [low, high] = scene.bounds;
  const size = [0, 1, 2].map((axis) => formatQuantity(high[axis] - low[axis], 'mm', { digits: 4 }));
  const revision = project.revisions.find((r) => r.id === revisionId);
  const cad = model.shapes.filter((shape) => shape.cad).length;
  const rows: Row[] = [
    { label: 'File', value: text(revision?.file ?? 'not stated') },
    { label: 'Width, depth, height', value: size.join(' × ') },
    { label: 'Parts, shapes', value: `${model.parts.length} parts from ${model.shapes.length} shapes` },
    { label: 'Triangles', value: String(triangleCount(model)) },
    {
      label: 'Exact faces',
      value:
        cad === model.shapes.length
          ? `all shapes; triangles stay within ${formatQuantity(model.deviation_mm, 'mm')} of them`
          : cad === 0
            ? 'none: the file carries triangles only'
            : `${cad} of ${model.shapes.length} shapes; the rest is triangles only`,
    },
    ...(outcome.result.health
      ? [
          {
            label: 'Closed parts',
            value: `${outcome.result.health.closedParts} of ${outcome.result.health.parts}; the others have no inside that could be measured`,
          },
        ]
      : []),
    { label: 'Unit of the file', value: model.unit },
    { label: 'Measures computed', value: Object.keys(outcome.result.measures).length.toString() },
  ];
  return {
    cover: picture('cover.png', -35, 28, coverSize, 'Seen from the front left'),
    views: views.map((v) => picture(v.file, v.azimuth, v.elevation, viewSize, v.caption)),
    health: rows,
    faults: (outcome.result.health?.faults ?? []).map((fault) => text(fault.text)),
    notes: model.notes.map((note) => text(note.part ? `${note.text} (${short(note.part, 120)})` : note.text)),
  };
}
