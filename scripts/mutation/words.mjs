import { PluginKind, declareValuePlugin } from '@stryker-mutator/api/plugin';

const WORDS = new Set(['tasks', 'basis', 'examples']);
/** Marks that are true or not there: the types allow nothing else. */
const MARKS = new Set(['datum', 'optional', 'errors', 'unitLeftAway']);

/** What a declaration says in words, for help and search: a test of it would only say the same words again. And marks that cannot be false. */
const words = {
  shouldIgnore(path) {
    if (!path.isObjectProperty() || path.node.key.type !== 'Identifier') return undefined;
    const { key: { name }, value } = path.node;
    if (WORDS.has(name)) return 'words of a declaration';
    return MARKS.has(name) && value.type === 'BooleanLiteral' ? 'a mark that is true or not there' : undefined;
  },
};

export const strykerPlugins = [declareValuePlugin(PluginKind.Ignore, 'words', words)];
