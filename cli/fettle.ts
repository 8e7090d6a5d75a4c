#!/usr/bin/env node
import nodeModule from 'node:module';
import { exitCodes } from './exit.ts';
import { say } from './terminal.ts';

// A reader that has read enough (`| head`) is no fault; the exit code still tells the answer.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') return;
    if (stream === process.stdout) say(`fettle: the answer could not be written (${error.code ?? error.message}).`);
    process.exitCode = exitCodes.inputWrong;
  });
}

// From 22.1 on, Node keeps what it compiled for the next call; what is imported after this is.
const { enableCompileCache } = nodeModule as { readonly enableCompileCache?: () => unknown };
enableCompileCache?.();

const { run } = await import('./run.ts');
const code = await run(process.argv.slice(2));
process.exitCode ??= code;
