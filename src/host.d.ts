// The few globals that Node and every browser share and these rooms use; anything else belongs to the edge.

declare class TextDecoder {
  constructor(label?: string, options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean });
  decode(input?: ArrayBuffer | ArrayBufferView): string;
}

declare class TextEncoder {
  encode(input: string): Uint8Array;
}

declare function btoa(latin1: string): string;

declare const crypto: {
  readonly subtle: { digest(algorithm: 'SHA-256', data: Uint8Array): Promise<ArrayBuffer> };
};

interface HostStream {
  pipeThrough(through: CompressionStream): HostStream;
}

declare class CompressionStream {
  constructor(format: 'gzip');
}

declare class Blob {
  constructor(parts: readonly string[]);
  stream(): HostStream;
}

declare class Response {
  constructor(body: HostStream);
  arrayBuffer(): Promise<ArrayBuffer>;
}
