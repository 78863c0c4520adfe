/** What Node and browsers share beyond the language itself, as far as this package uses it. */
declare global {
  interface TextEncoder {
    encode(text: string): Uint8Array<ArrayBuffer>;
  }
  var TextEncoder: new () => TextEncoder;
  interface TextDecoder {
    decode(bytes: Uint8Array): string;
  }
  var TextDecoder: new () => TextDecoder;
}

export {};
