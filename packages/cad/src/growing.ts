/** Numbers that arrive one by one, kept in one typed array that doubles. */
export class Growing {
  #data = new Float64Array(1024);
  length = 0;

  push(x: number): void {
    if (this.length === this.#data.length) {
      const larger = new Float64Array(this.length * 2);
      larger.set(this.#data);
      this.#data = larger;
    }
    this.#data[this.length++] = x;
  }

  at(i: number): number {
    return this.#data[i];
  }

  /** A view; valid until the next push. */
  floats(): Float64Array {
    return this.#data.subarray(0, this.length);
  }

  integers(): Uint32Array {
    return Uint32Array.from(this.#data.subarray(0, this.length));
  }
}
