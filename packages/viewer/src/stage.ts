import type { Vec3 } from '@coveline/model';
import { ColorManagement, LinearSRGBColorSpace, Scene, Vector3, WebGLRenderer } from 'three';
import { type Sheet, type SheetName, sheets } from './look/sheet.ts';

// All colours here are plain sRGB numbers, blended as such: what the sheet says is what the screen shows.
ColorManagement.enabled = false;

/** What every layer of the view shares: where it draws, in which colours, and how it asks for a new frame. */
export class Stage {
  readonly scene = new Scene();
  readonly renderer: WebGLRenderer;
  /** Model point that lies at the origin of the scene; keeps 32-bit floats exact far from the model's zero. */
  origin: Vec3 = [0, 0, 0];
  sheetName: SheetName = 'light';
  width = 1;
  height = 1;
  private readonly ask: () => void;

  /** Throws when the browser gives no WebGL 2. */
  constructor(canvas: HTMLCanvasElement, antialias: boolean, ask: () => void) {
    this.renderer = new WebGLRenderer({ canvas, antialias, alpha: true, stencil: true });
    this.renderer.outputColorSpace = LinearSRGBColorSpace;
    this.renderer.localClippingEnabled = true;
    this.renderer.setClearColor(0, 0);
    this.ask = ask;
  }

  get sheet(): Sheet {
    return sheets[this.sheetName];
  }

  requestRender(): void {
    this.ask();
  }

  toScene(p: Vec3): Vector3 {
    return new Vector3(p[0] - this.origin[0], p[1] - this.origin[1], p[2] - this.origin[2]);
  }

  toModel(p: Vector3): Vec3 {
    return [p.x + this.origin[0], p.y + this.origin[1], p.z + this.origin[2]];
  }
}
