/** Typed arrays that grow when full; `data` is valid up to `length`. */
abstract class Growing<T extends Float64Array | Uint32Array> {
  data: T;
  length = 0;

  constructor(data: T) {
    this.data = data;
  }

  push(value: number): void {
    if (this.length === this.data.length) this.#widen(this.length + 1);
    this.data[this.length++] = value;
  }

  append(values: T): void {
    const length = this.length + values.length;
    if (length > this.data.length) this.#widen(length);
    this.data.set(values, this.length);
    this.length = length;
  }

  /** The values, without the room for more. */
  done(): T {
    if (this.length < this.data.length) this.data = this.data.slice(0, this.length) as T;
    return this.data;
  }

  protected abstract wider(length: number): T;

  #widen(least: number): void {
    const wider = this.wider(Math.max(least, Math.ceil(this.data.length * 1.5)));
    wider.set(this.data);
    this.data = wider;
  }
}

export class Floats extends Growing<Float64Array> {
  constructor(capacity: number) {
    super(new Float64Array(capacity));
  }
  protected wider(length: number): Float64Array {
    return new Float64Array(length);
  }
}

export class Indices extends Growing<Uint32Array> {
  constructor(capacity: number) {
    super(new Uint32Array(capacity));
  }
  protected wider(length: number): Uint32Array {
    return new Uint32Array(length);
  }
}
