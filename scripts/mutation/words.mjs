import { PluginKind, declareValuePlugin } from '@stryker-mutator/api/plugin';

const WORDS = new Set(['tasks', 'basis', 'examples']);

/** What a declaration says in words, for help and search: a test of it would only say the same words again. */
const words = {
  shouldIgnore(path) {
    return path.isObjectProperty() && path.node.key.type === 'Identifier' && WORDS.has(path.node.key.name) ? 'words of a declaration' : undefined;
  },
};

export const strykerPlugins = [declareValuePlugin(PluginKind.Ignore, 'words', words)];
