import { text } from 'node:stream/consumers';
import type { Terminal } from './terminal';

// A reader that goes away (`| head`) is no fault of the command.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

export const nodeTerminal: Terminal = {
  out: (line) => void process.stdout.write(`${line}\n`),
  error: (line) => void process.stderr.write(`${line}\n`),
  input: () => text(process.stdin),
  ...(process.stderr.isTTY ? { status: (line: string) => void process.stderr.write(`\r\u001b[2K${line}`) } : {}),
};
