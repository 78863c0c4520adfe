import {
  AlwaysStencilFunc,
  BackSide,
  type BufferGeometry,
  Color,
  DecrementWrapStencilOp,
  DoubleSide,
  FrontSide,
  IncrementWrapStencilOp,
  Mesh,
  MeshBasicMaterial,
  NotEqualStencilFunc,
  Plane,
  PlaneGeometry,
  ReplaceStencilOp,
  ShaderMaterial,
  Vector3,
} from 'three';
import type { Stage } from '../stage.ts';

export type SectionAxis = 'x' | 'y' | 'z';

/** A cut at right angles to an axis. */
export interface SectionSetting {
  readonly axis: SectionAxis;
  /** Coordinate of the cut in the frame of the model, mm. */
  readonly at_mm: number;
  /** False takes away what lies beyond the cut (higher coordinate), true what lies before it. */
  readonly flipped: boolean;
}

const hatch = {
  vertex: 'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
  // Lines at 45° on the screen, one in six pixels, as on a drawing.
  fragment: `uniform vec3 fill; uniform vec3 line; uniform float ratio;
    void main() { float s = mod(gl_FragCoord.x + gl_FragCoord.y, 7.0 * ratio);
      gl_FragColor = vec4(mix(fill, line, s < ratio ? 0.55 : 0.0), 1.0); }`,
};

/**
 * The section plane and its filled cut. Where a ray to the eye leaves more back faces than front faces of closed
 * bodies behind it, the plane lies inside material: the stencil counts, the cap is drawn where it is not zero.
 * Bodies with open shells are filled wrongly; the reader notes such bodies.
 */
export class Section {
  readonly plane = new Plane(new Vector3(-1, 0, 0), 0);
  private setting: SectionSetting | null = null;
  private readonly stage: Stage;
  private readonly counters: Mesh[];
  private readonly cap: Mesh<PlaneGeometry, ShaderMaterial>;
  private readonly center: Vector3;

  /** `body`: geometry of the solid parts, shared with the layer that draws them. */
  constructor(stage: Stage, body: BufferGeometry, center: Vector3, radius: number) {
    this.stage = stage;
    this.center = center;
    this.counters = [
      this.counter(body, BackSide, IncrementWrapStencilOp),
      this.counter(body, FrontSide, DecrementWrapStencilOp),
    ];
    this.cap = new Mesh(
      new PlaneGeometry(radius * 4, radius * 4),
      new ShaderMaterial({
        vertexShader: hatch.vertex,
        fragmentShader: hatch.fragment,
        uniforms: { fill: { value: new Color() }, line: { value: new Color() }, ratio: { value: 1 } },
        side: DoubleSide,
        stencilWrite: true,
        stencilFunc: NotEqualStencilFunc,
        stencilRef: 0,
        stencilFail: ReplaceStencilOp,
        stencilZFail: ReplaceStencilOp,
        stencilZPass: ReplaceStencilOp,
      }),
    );
    this.cap.renderOrder = 2;
    this.cap.onAfterRender = (renderer) => renderer.clearStencil();
    for (const mesh of [...this.counters, this.cap]) {
      mesh.visible = false;
      mesh.frustumCulled = false;
      stage.scene.add(mesh);
    }
    this.restyle();
  }

  get current(): SectionSetting | null {
    return this.setting;
  }

  /** The plane while it cuts; what lies on its positive side is left standing. */
  get active(): Plane | null {
    return this.setting ? this.plane : null;
  }

  set(setting: SectionSetting | null): void {
    this.setting = setting;
    for (const mesh of [...this.counters, this.cap]) mesh.visible = setting !== null;
    if (setting) {
      const index = { x: 0, y: 1, z: 2 }[setting.axis];
      const offset = setting.at_mm - this.stage.origin[index];
      const side = setting.flipped ? 1 : -1;
      this.plane.normal.set(0, 0, 0).setComponent(index, side);
      this.plane.constant = -side * offset;
      this.cap.position.copy(this.center).setComponent(index, offset);
      this.cap.lookAt(this.cap.position.clone().add(this.plane.normal));
    }
    this.stage.requestRender();
  }

  restyle(): void {
    const { uniforms } = this.cap.material;
    uniforms.fill.value.setRGB(...this.stage.sheet.cap);
    uniforms.line.value.setRGB(...this.stage.sheet.capHatch);
    uniforms.ratio.value = this.stage.renderer.getPixelRatio();
  }

  dispose(): void {
    for (const mesh of [...this.counters, this.cap]) {
      mesh.removeFromParent();
      (mesh.material as MeshBasicMaterial).dispose();
    }
    this.cap.geometry.dispose();
  }

  private counter(
    body: BufferGeometry,
    side: typeof BackSide | typeof FrontSide,
    op: typeof IncrementWrapStencilOp | typeof DecrementWrapStencilOp,
  ): Mesh {
    const material = new MeshBasicMaterial({
      side,
      colorWrite: false,
      depthWrite: false,
      depthTest: false,
      stencilWrite: true,
      stencilFunc: AlwaysStencilFunc,
      stencilFail: op,
      stencilZFail: op,
      stencilZPass: op,
      clippingPlanes: [this.plane],
    });
    const mesh = new Mesh(body, material);
    mesh.renderOrder = 1;
    return mesh;
  }
}
