import { main } from '../../src/cli/main';
import type { Terminal } from '../../src/cli/terminal';

export interface Ran {
  status: number;
  out: string[];
  error: string[];
}

/** Runs the command line in this process with a terminal of its own. */
export async function joulewright(argv: readonly string[], input = ''): Promise<Ran> {
  const ran: Ran = { status: -1, out: [], error: [] };
  const terminal: Terminal = {
    out: (line) => void ran.out.push(...line.split('\n')),
    error: (line) => void ran.error.push(line),
    input: async () => input,
  };
  ran.status = await main(argv, terminal);
  return ran;
}
