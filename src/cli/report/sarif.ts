import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { version } from '../../core/version';
import { type FindingClass, allRules } from '../../sheet/check';
import type { CheckedFile, FileFinding } from '../checked-file';
import { shownCell } from './cell';

const LEVELS: Readonly<Record<FindingClass, 'error' | 'warning' | 'note'>> = { A: 'error', B: 'warning', C: 'note' };

/** The result of a check in SARIF 2.1.0, the form that code hosts and editors read. */
export const sarifReport = (files: readonly CheckedFile[]): object => ({
  $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
  version: '2.1.0',
  runs: [{
    tool: {
      driver: {
        name: 'joulewright', version,
        rules: allRules.map(({ kind, class: of, looksFor }) => ({ id: kind, shortDescription: { text: looksFor }, defaultConfiguration: { level: LEVELS[of] } })),
      },
    },
    invocations: [{
      executionSuccessful: files.every(({ error }) => error === undefined),
      toolExecutionNotifications: files.flatMap(({ file, error }) => (error === undefined ? [] : [{ level: 'error', message: { text: `${file}: ${error}` }, locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(file) } } }] }])),
    }],
    artifacts: files.map(({ file, sha256 }) => ({ location: { uri: uriOf(file) }, ...(sha256 === undefined ? {} : { hashes: { 'sha-256': sha256 } }) })),
    results: files.flatMap(({ file, findings }) => findings.map((finding) => resultOf(file, finding))),
  }],
});

/** A path below the working folder stays relative, so that the report can move with the files. */
function uriOf(file: string): string {
  const relative = path.relative('.', file);
  return relative.startsWith('..') || path.isAbsolute(relative) ? pathToFileURL(file).href : relative.split(path.sep).map(encodeURIComponent).join('/');
}

function resultOf(file: string, { class: of, kind, sheet, cell, formula, stored, computed, difference, reason, clause }: FileFinding): object {
  const where = [sheet, cell].filter((part) => part !== '').join('!');
  const values = computed === null ? '' : `; stored ${shownCell(stored)}, computed ${shownCell(computed)}`;
  return {
    ruleId: kind, ruleIndex: allRules.findIndex((rule) => rule.kind === kind), level: LEVELS[of],
    message: { text: `${where === '' ? '' : `${where}: `}${reason}${values}` },
    locations: [{
      physicalLocation: { artifactLocation: { uri: uriOf(file) } },
      ...(where === '' ? {} : { logicalLocations: [{ fullyQualifiedName: where, kind: cell === '' ? 'sheet' : 'cell' }] }),
    }],
    properties: { class: of, sheet, cell, formula, stored, computed, difference, clause },
  };
}
