/** Typed arrays that double when full; `data` is valid up to `length`. */
export class Floats {
  data: Float64Array;
  length = 0;
  constructor(capacity: number) {
    this.data = new Float64Array(capacity);
  }
  push(value: number): void {
    if (this.length === this.data.length) {
      const wider = new Float64Array(this.data.length * 2);
      wider.set(this.data);
      this.data = wider;
    }
    this.data[this.length++] = value;
  }
  done(): Float64Array {
    return this.data.slice(0, this.length);
  }
}

export class Indices {
  data: Uint32Array;
  length = 0;
  constructor(capacity: number) {
    this.data = new Uint32Array(capacity);
  }
  push(value: number): void {
    if (this.length === this.data.length) {
      const wider = new Uint32Array(this.data.length * 2);
      wider.set(this.data);
      this.data = wider;
    }
    this.data[this.length++] = value;
  }
  done(): Uint32Array {
    return this.data.slice(0, this.length);
  }
}
