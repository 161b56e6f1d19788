import { type ParseArgsConfig, parseArgs } from 'node:util';
import { CouldNotRun } from './terminal';

/** Options and words of a command; an unknown option is said in our words. */
export function optionsOf<const T extends NonNullable<ParseArgsConfig['options']>>(args: readonly string[], options: T) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true });
  } catch (error) {
    const words = (error as Error).message.split(/\. |\n/)[0]!.replace(/\.$/, '');
    throw new CouldNotRun(`${words.charAt(0).toLowerCase()}${words.slice(1)}`);
  }
}
