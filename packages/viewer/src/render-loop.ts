/** Draws a frame when somebody asked for one, and never otherwise. */
export class RenderLoop {
  /** Frames drawn so far; a view at rest adds none. */
  frames = 0;
  private pending = 0;
  private readonly draw: () => void;

  constructor(draw: () => void) {
    this.draw = draw;
  }

  request(): void {
    if (this.pending) return;
    this.pending = requestAnimationFrame(() => {
      this.pending = 0;
      this.frames++;
      this.draw();
    });
  }

  stop(): void {
    cancelAnimationFrame(this.pending);
    this.pending = 0;
  }
}
