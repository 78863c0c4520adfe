/** Writes the tree as a STEP file (AP242, mm): assemblies, shared shapes, names and colours stay what they are. */
import { kernel } from './kernel.ts';
import type { Assembly, Body, Motion } from './tree.ts';

/** Ours, because the kernel writes the clock and counts on from its last file: every run would differ. */
const header = (name: string): string =>
  [
    'HEADER;',
    "FILE_DESCRIPTION(('Invented demo machine'),'2;1');",
    `FILE_NAME('${name}','2026-01-01T00:00:00',('Invented author'),('Invented builder'),'porridge-doser','porridge-doser','');`,
  ].join('\n');

/**
 * The text of the file. Throws when two different shapes carry one name, because part ids are made of names, and
 * when the kernel cannot write.
 */
export function writeStep(root: Assembly, fileName: string): string {
  const k = kernel();
  const doc = new k.TDocStd_Document(text('XmlOcaf'));
  k.XCAFDoc_ShapeTool.SetAutoNaming(false);
  k.XCAFDoc_DocumentTool.SetLengthUnit(doc, 0.001);
  const shapes = k.XCAFDoc_DocumentTool.ShapeTool(doc.Main());
  const colors = k.XCAFDoc_DocumentTool.ColorTool(doc.Main());

  type Label = ReturnType<typeof shapes.NewShape>;
  const labels = new Map<Body | Assembly, Label>();
  const owners = new Map<string, Body | Assembly>();

  const labelOf = (what: Body | Assembly): Label => {
    const known = labels.get(what);
    if (known) return known;
    const owner = owners.get(what.name);
    if (owner) throw new Error(`Two different shapes are called "${what.name}".`);
    owners.set(what.name, what);
    const label = shapes.NewShape();
    labels.set(what, label);
    if (what.kind === 'body') {
      shapes.SetShape(label, what.shape.wrapped);
      colors.SetColor(label, color(what.color), k.XCAFDoc_ColorType.XCAFDoc_ColorSurf);
    } else {
      for (const child of what.children) {
        const placed = shapes.AddComponent(label, labelOf(child.what), location(child.motion));
        k.TDataStd_Name.Set(placed, text(child.what.name));
      }
    }
    k.TDataStd_Name.Set(label, text(what.name));
    return label;
  };
  labelOf(root);
  shapes.UpdateAssemblies();

  const writer = new k.STEPCAFControl_Writer(new k.XSControl_WorkSession(), false);
  writer.SetColorMode(true);
  writer.SetNameMode(true);
  k.Interface_Static.SetCVal('write.step.unit', 'MM');
  k.Interface_Static.SetIVal('write.surfacecurve.mode', 0);
  k.Interface_Static.SetIVal('write.precision.mode', 0);
  k.Interface_Static.SetIVal('write.step.schema', 5);
  const path = 'machine.step';
  if (!writer.Perform(doc, path, new k.Message_ProgressRange()))
    throw new Error(`The kernel could not write ${fileName}.`);
  const bytes = k.FS.readFile(`/${path}`) as Uint8Array;
  k.FS.unlink(`/${path}`);
  return reproducible(new TextDecoder().decode(bytes), fileName);
}

function reproducible(step: string, fileName: string): string {
  const start = step.indexOf('HEADER;');
  const schema = step.indexOf('FILE_SCHEMA');
  if (start < 0 || schema < 0) throw new Error('The kernel wrote a STEP file without a header.');
  let use = 0;
  return `${step.slice(0, start)}${header(fileName)}\n${step.slice(schema)}`
    .replace(/\n +/g, '')
    .replace(/(NEXT_ASSEMBLY_USAGE_OCCURRENCE\(')\d+'/g, (_, head: string) => `${head}${++use}'`)
    .replace(/[^ -~\n\r]+/g, inBasicAlphabet);
}

/** ISO 10303-21, 6.4.3.3: characters outside the basic alphabet, four hexadecimal digits each. */
function inBasicAlphabet(letters: string): string {
  const codes = Array.from({ length: letters.length }, (_, i) =>
    letters.charCodeAt(i).toString(16).toUpperCase().padStart(4, '0'),
  );
  return `\\X2\\${codes.join('')}\\X0\\`;
}

function text(value: string): InstanceType<ReturnType<typeof kernel>['TCollection_ExtendedString']> {
  const k = kernel();
  return new k.TCollection_ExtendedString(value, true);
}

function color(hex: string): InstanceType<ReturnType<typeof kernel>['Quantity_Color']> {
  const k = kernel();
  const made = new k.Quantity_Color();
  if (!k.Quantity_Color.ColorFromHex(hex, made)) throw new Error(`"${hex}" is not a colour.`);
  return made;
}

const axes = { x: [1, 0, 0], y: [0, 1, 0], z: [0, 0, 1] } as const;

function location({ move, turn }: Motion): InstanceType<ReturnType<typeof kernel>['TopLoc_Location']> {
  const k = kernel();
  const shift = new k.gp_Trsf();
  shift.SetTranslation(new k.gp_Vec(move[0], move[1], move[2]));
  if (turn) {
    const rotation = new k.gp_Trsf();
    const [x, y, z] = axes[turn.axis];
    const axis = new k.gp_Ax1(new k.gp_Pnt(0, 0, 0), new k.gp_Dir(x, y, z));
    rotation.SetRotation(axis, (turn.deg * Math.PI) / 180);
    shift.Multiply(rotation);
  }
  return new k.TopLoc_Location(shift);
}
