import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder with the given files, gone when the test is done; objects are written as JSON. */
export function folderWith(files: Readonly<Record<string, unknown>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), 'fettle-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, content] of Object.entries(files)) {
    const path = join(folder, name);
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(
      path,
      typeof content === 'string' || content instanceof Uint8Array ? content : JSON.stringify(content),
    );
  }
  return folder;
}
