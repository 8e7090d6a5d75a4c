import { execFile } from 'node:child_process';
import { rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { promisify } from 'node:util';

/** The command line built once for a file of tests: its program, in the checkout so that it finds its libraries. */
export class BuiltCli {
  readonly house = resolve(import.meta.dirname, '../..');
  readonly folder = join(this.house, 'out', `cli-${process.pid}`);
  readonly program = join(this.folder, 'fettle.js');

  async build(): Promise<void> {
    const vite = join(this.house, 'node_modules/vite/bin/vite.js');
    const args = [vite, 'build', '--outDir', this.folder, '--logLevel', 'warn'];
    await promisify(execFile)(process.execPath, args, { cwd: this.house });
  }

  remove(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }
}
