// The few globals that Node and every browser share and these rooms use; anything else belongs to the edge.

declare class TextDecoder {
  constructor(label?: string, options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean });
  decode(input?: ArrayBuffer | ArrayBufferView): string;
}
