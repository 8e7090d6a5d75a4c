import type { IncomingMessage } from 'node:http';

/** The whole body of a request; reading stops where it would be longer than `mostBytes`, or breaks off. */
export function readBody(request: IncomingMessage, mostBytes: number): Promise<Buffer | 'too-large' | 'cut-short'> {
  return new Promise((done) => {
    if (Number(request.headers['content-length'] ?? 0) > mostBytes) return done('too-large');
    const chunks: Buffer[] = [];
    let length = 0;
    request.on('data', (chunk: Buffer) => {
      length += chunk.length;
      chunks.push(chunk);
      if (length <= mostBytes) return;
      request.removeAllListeners('data').pause();
      done('too-large');
    });
    request.on('end', () => done(Buffer.concat(chunks)));
    request.on('error', () => done('cut-short'));
  });
}
