import { version } from '../core/version';
import { checkCommand } from './check';
import { serveIfWorker } from './check-worker';
import { compareCommand } from './compare';
import { evaluateCommand } from './evaluate';
import { functionsCommand } from './functions';
import { helpOf, mainHelp } from './help';
import { nodeTerminal } from './node-terminal';
import { recomputeCommand } from './recompute';
import { tableCommand } from './table';
import { COULD_NOT_RUN, CouldNotRun, DONE, type Terminal, oneLine } from './terminal';

type Command = (args: readonly string[], terminal: Terminal) => Promise<number>;

const commands: Readonly<Record<string, Command>> = {
  evaluate: evaluateCommand,
  check: checkCommand,
  compare: compareCommand,
  recompute: recomputeCommand,
  table: tableCommand,
  functions: functionsCommand,
};

const wantsHelp = (word: string | undefined): boolean => word === '--help' || word === '-h' || word === 'help';

/** Runs one command; whatever goes wrong is said in words, never as a stack trace. */
export async function main(argv: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...args] = argv;
  try {
    if (name === undefined || wantsHelp(name)) {
      const about = name === undefined ? undefined : helpOf[args[0] ?? ''];
      terminal.out(about ?? mainHelp);
      return name === undefined ? COULD_NOT_RUN : DONE;
    }
    if (name === '--version') {
      terminal.out(version);
      return DONE;
    }
    const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
    if (!command) throw new CouldNotRun(`no command named ${oneLine(name)}; joulewright --help lists them`);
    if (args.some((arg) => arg === '--help' || arg === '-h')) {
      terminal.out(helpOf[name]!);
      return DONE;
    }
    return await command(args, terminal);
  } catch (thrown) {
    const words = thrown instanceof Error ? thrown.message : String(thrown);
    terminal.error(`joulewright: ${oneLine(words)}`);
    return COULD_NOT_RUN;
  }
}

/** Started by the program file. */
export async function start(): Promise<void> {
  process.exitCode = await main(process.argv.slice(2), nodeTerminal);
}

// Threads of a check start from this same file.
serveIfWorker();
